"""`scorecraft rules`: the rules of thumb it goes by, and where each comes from."""

from itertools import chain
from textwrap import wrap

import click

import scorecraft.cli.telling as telling
from scorecraft.errors import UsageError
from scorecraft.loaf import forms
from scorecraft.practice import COMMON, Rule, table

SIGNS = {"deg": "°", "C": " °C", "cm2": " cm²", "deg/s": "°/s", "mm/cm2": " mm/cm²",
         "g/cm3": " g/cm³"}  # fmt: skip


@click.command("rules", epilog=telling.EXAMPLE.format(command=telling.EXAMPLES["rules"]))
@click.argument("word", required=False)
def command(word: str | None) -> int:
    """List the rules of thumb behind the checks, with sources; or those that mention WORD."""
    sought = (word or "").lower()
    told = [
        (subject, rule)
        for subject, rule in chain(table(), forms.table())
        if sought in f"{subject} {written(rule)} {rule.says} {rule.source}".lower()
    ]
    if not told:
        raise UsageError(f'no rule mentions "{word}"', None, "scorecraft rules lists them all")
    click.echo(f"Where no source is named: {COMMON}.")
    last = ""
    for subject, rule in told:
        if subject != last:
            click.echo(f"\n{subject}:")
        last = subject
        click.echo(told_in_lines(rule, "" if rule.source == COMMON else rule.source))
    return 0


def written(rule: Rule) -> str:
    """Write a rule's value with its unit; a share in per cent."""
    if rule.unit.startswith("of "):
        return f"{100 * rule.value:g} % {rule.unit}"
    return f"{rule.value:g}" + SIGNS.get(rule.unit, f" {rule.unit}".rstrip())


def told_in_lines(rule: Rule, source: str) -> str:
    """Write a rule as lines of 100 characters: its value, what it says, and its source."""
    first = f"  {written(rule):<17} "
    indent = " " * 20
    lines = wrap(rule.says, 100, initial_indent=first, subsequent_indent=indent)
    lines += wrap(source, 100, initial_indent=f"{indent}source: ", subsequent_indent=indent)
    return "\n".join(lines)
