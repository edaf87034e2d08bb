"""The one path through the house: from a pattern and its knobs to a checked design."""

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path

from scorecraft.checks import run
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.expand import expand
from scorecraft.groups import Group, groups
from scorecraft.language.evaluate import evaluate
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern
from scorecraft.shelf import Source, find_source
from scorecraft.units import Quantity

Turned = str | float | int | Quantity


@dataclass(frozen=True)
class Design:
    """A pattern on a loaf, with all that can be told about it; each part is made when asked for."""

    source: Source
    tree: Pattern
    layout: Layout

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """The cuts on the dough sheet."""
        return self.layout.cuts

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """What the checks found, the weightiest first."""
        return run(self.layout)

    @cached_property
    def groups(self) -> tuple[Group, ...]:
        """The cuts as a table tells them: like cuts of one statement together, numbered."""
        return groups(self.layout)

    @property
    def stops(self) -> bool:
        """Whether a finding says that the design cannot be cut as it is."""
        return any(finding.severity == "stop" for finding in self.findings)


def make(
    pattern: str | Path | Source,
    *,
    loaf: str | None = None,
    bake: str | None = None,
    knobs: Mapping[str, Turned] | None = None,
) -> Design:
    """Design a pattern on its loaf, or on another one.

    `pattern` is a file, a shipped name, `-`, or a text of several lines; `loaf` and `bake` are
    written as in a pattern (`round width 180mm`); `knobs` turns knobs by name. Raises
    PatternError or UsageError, each a ScorecraftError.
    """
    source = pattern if isinstance(pattern, Source) else find_source(pattern)
    tree = parse(source.text, source.name)
    turned = {name: turn(name, value) for name, value in (knobs or {}).items()}
    layout = expand(tree, source.text, loaf=loaf, bake=bake, knobs=turned, folder=source.folder)
    return Design(source, tree, layout)


def turn(name: str, value: Turned) -> Quantity:
    """Read the value a knob is turned to: a number, or a text with a unit such as `60mm`."""
    if isinstance(value, Quantity):
        return value
    text = str(value)
    try:
        (statement,) = parse(f"let {name} {text}", "--set").statements
        return evaluate(statement.arguments[1].value, {})  # type: ignore[arg-type]
    except (ScorecraftError, ValueError, IndexError) as error:
        hint = "like --set leaves=9 or --set leaf_length=60mm"
        raise UsageError(f'"{text}" is no value for the knob {name}', None, hint) from error
