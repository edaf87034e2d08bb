"""The one path through the house: from a pattern and its knobs to a checked design.

The bench and the opening model are loaded when they are asked for: a quick check needs neither.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Self

from scorecraft.checks import run
from scorecraft.checks.balance import balance
from scorecraft.checks.finding import Finding
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.expand import expand
from scorecraft.groups import Group, groups
from scorecraft.language.evaluate import evaluate
from scorecraft.language.fingerprint import fingerprints
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern, as_expression
from scorecraft.loaf.skin import Skin
from scorecraft.practice import OPENING_PANELS_ROUGH
from scorecraft.shelf import Source, find_source
from scorecraft.units import Quantity

if TYPE_CHECKING:
    from scorecraft.bench import Plan
    from scorecraft.opening import Opening
    from scorecraft.opening.room import Room

ROUGHER = 1.1
"""A first look has panels that are longer by at least so many times, or is not worth it."""
Turned = str | float | int | Quantity


@dataclass(frozen=True)
class Design:
    """A pattern on a loaf, with all that can be told about it; each part is made when asked for.

    `layout` has the depths that wished openings ask for; `unmet` tells the wishes out of
    reach, and what a baker file does not settle;
    `panel_mm` is the length of the opening model's panels, None as long as suits the cuts.
    """

    source: Source
    tree: Pattern
    layout: Layout
    skin: Skin = field(default_factory=Skin)
    unmet: tuple[Finding, ...] = ()
    panel_mm: float | None = None

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """The cuts on the dough sheet."""
        return self.layout.cuts

    @cached_property
    def groups(self) -> tuple[Group, ...]:
        """The cuts as a table tells them: like ones together, numbered in the order of cutting."""
        return groups(self.layout, self.plan.order)

    @cached_property
    def fingerprints(self) -> Mapping[str, str]:
        """What the statement of each group says, in a short mark, by the group's key."""
        said = fingerprints(self.tree)
        return {group.key: said[group.place] for group in self.groups}

    @cached_property
    def plan(self) -> Plan:
        """The order of cuts, turns of the turntable, blade and time."""
        from scorecraft.bench import plan

        return plan(self.layout)

    @cached_property
    def opening(self) -> Opening:
        """How wide each cut opens in the oven, by the slit-opening model."""
        from scorecraft.opening.predict import predict

        return predict(self.layout, self.skin, panel_mm=self.panel_mm)

    @cached_property
    def rough(self) -> Self:
        """The same with longer panels in its opening model, for a first look.

        The design itself where few panels do anyway. On the patterns of the shelf what the guide
        tells of each number is then within 4 % of the full answer, room to a thousandth.
        """
        from scorecraft.opening.panel_size import panel_for

        lines = [cut.line for cut in self.cuts]
        longer = panel_for(lines, OPENING_PANELS_ROUGH.value)
        if longer <= ROUGHER * panel_for(lines):
            return self
        made = replace(self, panel_mm=longer)
        for name in ("groups", "plan", "checked", "drawn_findings"):  # the same without the model
            made.__dict__[name] = getattr(self, name)
        return made

    @cached_property
    def foreseen(self) -> Opening | None:
        """How wide each cut opens, or None where there are more cuts than the model can take."""
        try:
            return self.opening
        except UsageError:
            return None

    @cached_property
    def room(self) -> Room:
        """Whether the cuts leave the loaf room to grow."""
        from scorecraft.opening.room import room

        return room(self.opening, self.layout.loaf.sheet_rim())

    @cached_property
    def checked(self) -> tuple[Finding, ...]:
        """What the drawing alone tells, the weightiest first; the quickest."""
        return by_weight([*run(self.layout), *self.unmet, *remarked(self.layout)])

    @cached_property
    def drawn_findings(self) -> tuple[Finding, ...]:
        """What the drawing and the bench tell, the weightiest first; quick."""
        from scorecraft.bench.time_check import time_findings

        return by_weight([*self.checked, *time_findings(self.layout, self.plan)])

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Everything that was found, the opening model's findings too, the weightiest first."""
        from scorecraft.opening.room_check import room_findings

        if self.foreseen is None:
            return by_weight([*self.drawn_findings, too_many(self.layout)])
        drawn = [finding for finding in self.drawn_findings if finding.check != "balance"]
        evenly = balance(self.layout, self.opening.widest_mm)
        told = room_findings(self.layout, self.opening, self.skin)
        return by_weight([*drawn, *evenly, *told])

    @property
    def stops(self) -> bool:
        """Whether a finding says that the design cannot be cut as it is; the model never does."""
        return any(finding.severity == "stop" for finding in self.checked)


def remarked(layout: Layout) -> list[Finding]:
    """Tell what the expansion dropped on the way."""
    hint = "nothing to do, unless the edge looks ragged"
    return [Finding("expand", "note", said, hint, place) for said, place in layout.remarks]


def too_many(layout: Layout) -> Finding:
    """Tell that a layout has more cuts than the opening model can take."""
    message = f"{len(layout.cuts):,} cuts are too many for the opening model: no room is predicted"
    hint = "judge the room by the expansion cuts alone, in a file without the light ones"
    return Finding("room", "note", message, hint, None)


def by_weight(found: list[Finding]) -> tuple[Finding, ...]:
    """Put stops first, then warnings, then notes."""
    return tuple(sorted(found, key=lambda finding: finding.weight))


def make(
    pattern: str | Path | Source,
    *,
    loaf: str | None = None,
    bake: str | None = None,
    knobs: Mapping[str, Turned] | None = None,
    baker: str | Path | None = None,
    standing: Path | None = None,
) -> Design:
    """Design a pattern on its loaf, or on another one.

    `pattern` is a file, a shipped name, `-`, or a text of several lines; `loaf` and `bake` are
    written as in a pattern (`round width 180mm`); `knobs` turns knobs by name; `baker` is a file
    that `tune` wrote. Where the words of `loaf` are the user's own, `standing` is the folder
    that a drawing they name is looked up from, wherever it lies; else it must lie in the
    pattern's folder. Raises PatternError or UsageError, each a ScorecraftError.
    """
    source = pattern if isinstance(pattern, Source) else find_source(pattern)
    tree = parse(source.text, source.name)
    turned = {name: turn(name, value) for name, value in (knobs or {}).items()}
    layout = expand(
        tree,
        source.text,
        loaf=loaf,
        bake=bake,
        knobs=turned,
        folder=source.folder,
        standing=standing,
    )
    skin, doubts = taught(baker)
    if all(cut.opens_mm is None for cut in layout.cuts):
        return Design(source, tree, layout, skin, doubts)
    from scorecraft.opening.wishes import meet

    met = meet(layout, skin)
    return Design(source, tree, met.layout, skin, (*met.findings, *doubts))


def taught(baker: str | Path | None) -> tuple[Skin, tuple[Finding, ...]]:
    """Take the skin that a baker's own bakes have taught, or the default; tell which it is."""
    if baker is None:
        return Skin(), ()
    from scorecraft.tune.baker import TO_SETTLE, read_baker

    known = read_baker(baker)
    skin = Skin(known.skin_mm, known.growth)
    if known.settled:
        return skin, ()
    said = f'the openings in "{baker}" do not settle the skin: the usual {skin.thickness_mm:g} mm'
    return skin, (Finding("room", "note", f"{said} is used", TO_SETTLE, None),)


def turn(name: str, value: Turned) -> Quantity:
    """Read the value a knob is turned to: a number, or a text with a unit such as `60mm`."""
    if isinstance(value, Quantity):
        return value
    text = str(value)
    try:
        (statement,) = parse(f"let {name} {text}", "--set").statements
        return evaluate(as_expression(statement.arguments[1].value), {})
    except (ScorecraftError, ValueError, IndexError, TypeError) as error:
        hint = "like --set leaves=9 or --set leaf_length=60mm"
        raise UsageError(f'"{text}" is no value for the knob {name}', None, hint) from error
