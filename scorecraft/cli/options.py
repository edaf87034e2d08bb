"""Options that many commands share."""

from collections.abc import Callable
from typing import Any, TypeVar

import click

from scorecraft.errors import UsageError

Command = TypeVar("Command", bound=Callable[..., Any])


def shipped_names(ctx: click.Context, param: click.Parameter, incomplete: str) -> list[str]:
    """Complete the names of shipped patterns."""
    from scorecraft.shelf import shelf

    return [name for name in shelf() if name.startswith(incomplete)]


def pattern_options(command: Command) -> Command:
    """Add PATTERN, --set, --loaf, --bake and -q to a command."""
    for option in (
        click.option("-q", "--quiet", is_flag=True, help="Say only what must be said."),
        click.option("--bake", metavar="WORDS", help='Another oven, like "spring 1.5 steam no".'),
        click.option(
            "--loaf", metavar="WORDS", help='Another loaf, like "round width 180mm height 80mm".'
        ),
        click.option(
            "--set", "knobs", multiple=True, metavar="KNOB=VALUE", help="Turn a knob (repeatable)."
        ),
        click.argument("pattern", shell_complete=shipped_names),
    ):
        command = option(command)
    return command


def turned(knobs: tuple[str, ...]) -> dict[str, str]:
    """Read KNOB=VALUE settings; raises UsageError where there is no `=`."""
    found = {}
    for knob in knobs:
        name, sign, value = knob.partition("=")
        if not sign or not name.strip() or not value.strip():
            raise UsageError(f'"{knob}" turns no knob', None, "write --set leaves=9")
        found[name.strip()] = value.strip()
    return found
