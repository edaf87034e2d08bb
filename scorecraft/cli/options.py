"""Options that many commands share."""

from collections.abc import Callable
from dataclasses import dataclass
from functools import wraps
from typing import TYPE_CHECKING

import click

from scorecraft.errors import UsageError

if TYPE_CHECKING:
    from scorecraft.designing import Design

Command = Callable[..., int]


def shipped_names(ctx: click.Context, param: click.Parameter, incomplete: str) -> list[str]:
    """Complete the names of shipped patterns."""
    from scorecraft.shelf import shelf

    return [name for name in shelf() if name.startswith(incomplete)]


@dataclass(frozen=True, slots=True)
class Given:
    """What a command was given of its pattern: where it is, and what to change of it."""

    pattern: str
    knobs: tuple[str, ...]
    loaf: str | None
    bake: str | None
    baker: str | None
    quiet: bool

    def design(self) -> "Design":
        """Make the design; raises ScorecraftError where that cannot be done."""
        from scorecraft import design

        knobs = turned(self.knobs)
        return design(self.pattern, loaf=self.loaf, bake=self.bake, knobs=knobs, baker=self.baker)


def pattern_options(command: Command) -> Command:
    """Add PATTERN, --set, --loaf, --bake, --baker and -q; the command takes them as `given`."""

    @wraps(command)
    def bundled(
        pattern: str,
        knobs: tuple[str, ...],
        loaf: str | None,
        bake: str | None,
        baker: str | None,
        quiet: bool,
        **others: object,
    ) -> int:
        return int(command(Given(pattern, knobs, loaf, bake, baker, quiet), **others))

    for option in (
        click.option("-q", "--quiet", is_flag=True, help="Say only what must be said."),
        click.option("--baker", metavar="FILE", help="What `tune` learned from bakes of yours."),
        click.option("--bake", metavar="WORDS", help='Another oven, like "spring 1.5 steam no".'),
        click.option(
            "--loaf", metavar="WORDS", help='Another loaf, like "round width 180mm height 80mm".'
        ),
        click.option(
            "--set", "knobs", multiple=True, metavar="KNOB=VALUE", help="Turn a knob (repeatable)."
        ),
        click.argument("pattern", shell_complete=shipped_names),
    ):
        bundled = option(bundled)
    return bundled


def turned(knobs: tuple[str, ...]) -> dict[str, str]:
    """Read KNOB=VALUE settings; raises UsageError where there is no `=`."""
    found = {}
    for knob in knobs:
        name, sign, value = knob.partition("=")
        if not sign or not name.strip() or not value.strip():
            raise UsageError(f'"{knob}" turns no knob', None, "write --set leaves=9")
        found[name.strip()] = value.strip()
    return found
