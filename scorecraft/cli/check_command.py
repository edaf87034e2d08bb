"""`scorecraft check`: what is wrong with a design, and what to do."""

import json

import click

from scorecraft.cli.options import pattern_options, turned


@click.command("check")
@pattern_options
@click.option("--json", "as_json", is_flag=True, help="Print everything as JSON.")
@click.option("-v", "--verbose", is_flag=True, help="Show how the loaf's size was found.")
def command(
    pattern: str, knobs: tuple[str, ...], loaf: str | None, bake: str | None,
    quiet: bool, as_json: bool, verbose: bool,
) -> int:  # fmt: skip
    """Check PATTERN (a file, a shipped name, or -): exit 1 if it cannot be cut as it is."""
    from scorecraft.cli.output import colored
    from scorecraft.designing import make
    from scorecraft.report import as_data, report

    design = make(pattern, loaf=loaf, bake=bake, knobs=turned(knobs))
    if as_json:
        click.echo(json.dumps(as_data(design), indent=1, allow_nan=False))
    else:
        click.echo(colored(report(design, quiet=quiet, verbose=verbose)), nl=False)
    return 1 if design.stops else 0
