"""Options that many commands share."""

from collections.abc import Callable
from functools import wraps
from typing import TYPE_CHECKING, Any

import click

import scorecraft.cli.telling as telling
from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass, fields

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
    dough: str | None
    loaves: int | None
    baker: str | None
    quiet: bool

    @property
    def options(self) -> tuple[str, ...]:
        """The options as they are typed, for another command on the same design."""
        loaves = str(self.loaves) if self.loaves else None
        named = (
            ("--loaf", self.loaf),
            ("--dough", self.dough),
            ("--bake", self.bake),
            ("--loaves", loaves),
            ("--baker", self.baker),
        )
        knobs = (("--set", knob) for knob in self.knobs)
        return tuple(part for name, value in (*knobs, *named) if value for part in (name, value))

    def design(self) -> "Design":
        """Make the design; raises ScorecraftError where that cannot be done."""
        from scorecraft import design

        return design(
            self.pattern,
            loaf=self.loaf,
            bake=self.bake,
            dough=self.dough,
            loaves=self.loaves,
            knobs=turned(self.knobs),
            baker=self.baker,
        )


def pattern_options(command: Command) -> Command:
    """Add PATTERN and the options about it, from --set to -q; the command takes them as `given`."""

    @wraps(command)
    def bundled(**options: Any) -> int:  # click gives each its type
        given = Given(**{field.name: options.pop(field.name) for field in fields(Given)})
        return command(given, **options)

    for option in (
        click.option("-q", "--quiet", is_flag=True, help=telling.QUIET),
        click.option("--baker", metavar="FILE", help=telling.BAKER),
        click.option("--loaves", type=int, metavar="COUNT", help=telling.LOAVES),
        click.option("--bake", metavar="WORDS", help=telling.BAKE),
        click.option("--dough", metavar="WORDS", help=telling.DOUGH),
        click.option("--loaf", metavar="WORDS", help=telling.LOAF),
        click.option("--set", "knobs", multiple=True, metavar="KNOB=VALUE", help=telling.SET),
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
            raise UsageError(f'"{knob}" is not KNOB=VALUE', None, "write --set leaves=9")
        found[name.strip()] = value.strip()
    return found
