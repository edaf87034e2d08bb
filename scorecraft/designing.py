"""The one path through the house: from a pattern and its knobs to a design that draws itself.

The bench, the opening model and the drawings are loaded when they are asked for: a quick check
needs none of them.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING

from scorecraft.checks import Found, found, ranked
from scorecraft.checks.finding import Finding
from scorecraft.checks.known import Known
from scorecraft.cuts import Cut, Layout
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.expand import expand
from scorecraft.frozen import dataclass, field, replace
from scorecraft.groups import Group, groups
from scorecraft.language.evaluate import evaluate
from scorecraft.language.fingerprint import fingerprints
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern, as_expression
from scorecraft.limits import MOST_LOAVES
from scorecraft.loaf.skin import Skin
from scorecraft.shelf import Source, find_source
from scorecraft.units import Quantity

if TYPE_CHECKING:
    from scorecraft.bench import Work
    from scorecraft.drawing.bloom.showing import Look
    from scorecraft.drawing.picture import Picture
    from scorecraft.opening import Opening
    from scorecraft.opening.predict import Model
    from scorecraft.opening.ranges import Ranges
    from scorecraft.opening.room import Room
    from scorecraft.opening.wishes import Met
    from scorecraft.prints.row import Printed

Turned = str | float | int | Quantity


@dataclass(frozen=True, eq=False)
class Design:
    """A pattern on a loaf, with all that can be told and drawn of it, made when asked for.

    >>> import scorecraft
    >>> crown = scorecraft.design("leaf-crown", knobs={"leaves": 9})
    >>> last = crown.groups[-1]  # in the order of cutting
    >>> last.number, last.key, last.count
    (6, 'leaf midrib', 9)
    >>> crown.room.verdict
    'enough'
    >>> bool(crown.work.effort.seconds < crown.work.allowed_s)
    True

    `layout` has the depths that wished openings ask for, and `met` tells how far that went.
    """

    source: Source
    tree: Pattern
    layout: Layout
    skin: Skin = field(default_factory=Skin)
    met: Met | None = None

    @property
    def cuts(self) -> tuple[Cut, ...]:
        """The cuts on the dough sheet."""
        return self.layout.cuts

    @cached_property
    def groups(self) -> tuple[Group, ...]:
        """The cuts as a table tells them: like ones together, numbered in the order of cutting."""
        return groups(self.layout, self.work.order)

    @cached_property
    def fingerprints(self) -> Mapping[str, str]:
        """What the statement of each group says, in a short mark, by the group's key."""
        said = fingerprints(self.tree)
        return {group.key: said[group.place] for group in self.groups}

    @cached_property
    def work(self) -> Work:
        """The order of cuts, turns of the turntable, blade and time."""
        from scorecraft.bench import work_of

        return work_of(self.layout)

    @cached_property
    def _model(self) -> Model:
        from scorecraft.opening.predict import model_of

        return model_of(self.layout, self.skin)

    @cached_property
    def opening(self) -> Opening:
        """How wide each cut opens in the oven, by the slit-opening model."""
        return self._model.opened()

    @cached_property
    def room(self) -> Room:
        """Whether the cuts leave the loaf room to grow."""
        from scorecraft.opening.room import room

        return room(self.opening, self.layout.bake.strength)

    @cached_property
    def ranges(self) -> Ranges:
        """How far openings and room may be off."""
        from scorecraft.opening.ranges import ranges_of

        found = ranges_of(self.layout, self.skin, self._model, self.opening)
        self.__dict__.pop("_model", None)  # its equations take room, and nothing else asks for them
        return found

    @cached_property
    def room_words(self) -> str:
        """Whether there is room, in a sentence."""
        from scorecraft.opening.room import told

        return told(self.room, self.ranges.taken)

    @cached_property
    def _from_layout(self) -> Found:
        return found(self._known)

    @cached_property
    def _from_work(self) -> Found:
        return found(replace(self._known, level="work", work=self.work), self._from_layout)

    @property
    def _known(self) -> Known:
        return Known(self.layout, skin=self.skin, met=self.met)

    @property
    def checked(self) -> tuple[Finding, ...]:
        """What the drawing alone tells, the weightiest first; the quickest."""
        return ranked(self._from_layout)

    @property
    def drawn_findings(self) -> tuple[Finding, ...]:
        """What the drawing and the bench tell, the weightiest first; quick."""
        return ranked(self._from_work)

    @cached_property
    def findings(self) -> tuple[Finding, ...]:
        """Everything that was found, the opening model's findings too, the weightiest first."""
        all_known = replace(
            self._known, level="opening", work=self.work, opening=self.opening, room=self.room
        )
        return ranked(found(all_known, self._from_work))

    @property
    def stops(self) -> bool:
        r"""Whether a finding says that the design cannot be cut as it is; the model never does.

        >>> import scorecraft
        >>> made = scorecraft.design("loaf round width 220mm height 95mm\nslash 400mm depth 10mm")
        >>> found = made.findings[0]
        >>> made.stops, found.check, found.place.line, round(found.figures["over_mm"])
        (True, 'rim', 2, 39)
        """
        return any(finding.severity == "stop" for finding in self.checked)

    @cached_property
    def picture(self) -> Picture:
        """The loaf with its cuts, seen from above."""
        from scorecraft.drawing.loafview import loaf_picture

        return loaf_picture(self.layout, width_mm=120.0)

    def printed(self, name: str, form: str = "pdf", **options: object) -> Printed:
        """Make the print of a name for a form: its pages, and what is to be told of them.

        Options are those of the command of that name, lengths in mm (`slot_mm=3.0`). Raises
        UsageError for a print, form or option that is not there.

        >>> import scorecraft
        >>> len(scorecraft.design("leaf-crown").printed("guide", paper="A4").pages)
        3
        """
        from scorecraft.prints import PRINTS

        if name not in PRINTS:
            raise UsageError(f'no print is called "{name}"; there are: {", ".join(PRINTS)}')
        return PRINTS[name].printed(self, form, options)

    def print_to(self, name: str, path: str | Path, **options: object) -> Path:
        """Write a print in the form of its file's suffix, as `printed` makes it; give its path.

        >>> import scorecraft
        >>> slash = scorecraft.design("one-slash")
        >>> slash.print_to("stencil", "plate.dxf", slot_mm=3.0).stat().st_size > 1000
        True
        """
        from scorecraft.prints.forms import encoded
        from scorecraft.writing import write_whole

        target = Path(path)
        form = target.suffix.lower().lstrip(".")
        write_whole(target, encoded(self.printed(name, form, **options), form))
        return target

    def guide(self, path: str | Path, *, paper: str | None = None) -> Path:
        """Write the full-size guide as SVG, PDF or PNG, by the file's suffix; give its path.

        A loaf too large for the paper is spread over the pages of a PDF, the first of which tells
        how to join the others; SVG and PNG without a paper are one sheet as large as it takes.
        """
        return self.print_to("guide", path, paper=paper)

    def bloom(self, wanted: Look | None = None, *, width_mm: float | None = None) -> Picture:
        """Draw the loaf as it will be after baking, its cuts opened as the model predicts."""
        from scorecraft.drawing.bloom.showing import Look, picture

        wanted = wanted or Look()
        opening = None if wanted.proofed else self.opening
        return picture(self.layout, wanted, opening=opening, width_mm=width_mm)

    def _repr_svg_(self) -> str:
        from scorecraft.drawing.svg import svg

        return svg(self.picture)


def make(
    pattern: str | Path | Source,
    *,
    loaf: str | None = None,
    bake: str | None = None,
    dough: str | None = None,
    loaves: int | None = None,
    knobs: Mapping[str, Turned] | None = None,
    baker: str | Path | None = None,
    standing: Path | None = None,
) -> Design:
    """Design a pattern on its loaf, or on another one.

    `pattern` is a file, a shipped name, `-`, or a text of several lines; `loaf` and `bake` are
    written as in a pattern (`round width 180mm`); `dough` (`over temperature 5C`) changes only
    what it says; `loaves` is how many equal ones are scored in a row; `knobs` turns knobs by name;
    `baker` is a file that `tune` wrote. Where the words of `loaf` are the user's own, `standing` is
    the folder that a drawing they name is looked up from, wherever it lies; else it must lie in the
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
        dough=dough,
        knobs=turned,
        folder=source.folder,
        standing=standing,
    )
    layout = layout if loaves is None else in_a_row(layout, loaves)
    skin = skin_of(baker)
    if all(cut.opens_mm is None for cut in layout.cuts):
        return Design(source, tree, layout, skin)
    from scorecraft.opening.wishes import meet

    met = meet(layout, skin)
    return Design(source, tree, met.layout, skin, met)


def in_a_row(layout: Layout, loaves: int) -> Layout:
    """Score so many equal loaves in a row; raises UsageError for none or too many."""
    if not 1 <= loaves <= MOST_LOAVES:
        raise UsageError(f"a bench takes 1 to {MOST_LOAVES} loaves in a row, not {loaves}")
    return replace(layout, bench=replace(layout.bench, loaves=loaves))


def skin_of(baker: str | Path | None) -> Skin:
    """Take the skin that a baker's own bakes have taught, or the default."""
    if baker is None:
        return Skin()
    from scorecraft.tune.baker import read_baker

    known = read_baker(baker)
    taught = Skin(known.skin_mm, known.inside, known.growth)
    if not known.settled:
        return replace(taught, unsettled_by=str(baker))
    return replace(taught, unsure=known.skin_unsure, growth_unsure=known.growth_unsure)


def turn(name: str, value: Turned) -> Quantity:
    """Read the value a knob is turned to: a number, or a text with a unit such as `60mm`.

    Raises UsageError for anything else.

    >>> turn("leaf_length", "6cm").value  # lengths inside are mm
    60.0
    """
    if isinstance(value, Quantity):
        return value
    text = str(value)
    try:
        (statement,) = parse(f"let {name} {text}", "--set").statements
        return evaluate(as_expression(statement.arguments[1].value), {})
    except (ScorecraftError, ValueError, IndexError, TypeError) as error:
        hint = "like --set leaves=9 or --set leaf_length=60mm"
        raise UsageError(f'"{text}" does not fit the knob {name}', None, hint) from error
