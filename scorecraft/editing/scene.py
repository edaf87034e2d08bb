"""A text with its loaf and cuts: which statement and which copy every cut comes from."""

from collections.abc import Mapping, Sequence
from functools import cached_property
from typing import TYPE_CHECKING, Unpack

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.cuts import Knob
from scorecraft.editing import telling as say
from scorecraft.editing.written import Written
from scorecraft.expand.layout import Asked, rule_name
from scorecraft.expand.traced import Step, Traced, traced
from scorecraft.frozen import dataclass
from scorecraft.language.tree import Statement
from scorecraft.language.words import WORDS
from scorecraft.loaf.dome import Loaf

if TYPE_CHECKING:
    from scorecraft.editing.handles import Handle


@dataclass(frozen=True)
class Scene:
    """A pattern as the hand meets it: what is written, and what that draws."""

    written: Written
    traced: Traced

    @property
    def loaf(self) -> Loaf:
        """The loaf the cuts lie on."""
        return self.traced.layout.loaf

    @cached_property
    def runs(self) -> Mapping[int, Sequence[Step]]:
        """The runs of every statement, by its line: its copies."""
        found: dict[int, list[Step]] = {line: [] for line in self.written.statements}
        for step in self.traced.steps:
            found[step.statement.place.line].append(step)
        return found

    @cached_property
    def cuts(self) -> Mapping[Step, Sequence[int]]:
        """The numbers of the cuts that each step, and what ran within it, has drawn."""
        found: dict[Step, list[int]] = {step: [] for step in self.traced.steps}
        for index, origin in enumerate(self.traced.origins):
            for step in origin.chain:
                found[step].append(index)
        return found

    @cached_property
    def handles(self) -> "dict[Step, list[Handle]]":
        """The handles of the runs that have been taken so far: a drag comes after a look."""
        return {}

    @cached_property
    def knobs(self) -> Mapping[str, Knob]:
        """The knobs of the pattern by name."""
        return {knob.name: knob for knob in self.traced.layout.knobs}

    @cached_property
    def rules(self) -> Mapping[str, Statement]:
        """The rules of the pattern by name."""
        found = (each for each in self.written.tree.statements if each.word == "define")
        return {rule_name(each): each for each in found}

    def statement(self, line: int) -> Statement:
        """Find a statement by its line; raises ScorecraftError where none begins there."""
        if line not in self.written.statements:
            raise say.NO_STATEMENT(line=line).error()
        return self.written.statements[line]

    def run(self, line: int, copy: int) -> Step:
        """Find one run of a statement; raises ScorecraftError where it has not run."""
        runs = self.runs.get(line, ())
        if not runs:
            statement = self.statement(line)
            raise say.NEVER_DRAWN(word=statement.word).error(statement.place)
        return runs[copy if 0 <= copy < len(runs) else 0]

    def chosen(self, cut: int) -> Step:
        """Tell what a tap on a cut selects: its statement, or the outermost call of a rule."""
        chain = self.traced.origins[cut].chain
        return next((step for step in chain if step.statement.word not in WORDS), chain[-1])

    def copy_of(self, step: Step) -> int:
        """Tell which copy of its statement a run is."""
        return self.runs[step.statement.place.line].index(step)

    def middle(self, step: Step) -> Floats:
        """Give the middle of what a run has drawn (sheet mm), or where its frame stands."""
        lines = [self.traced.layout.cuts[index].line for index in self.cuts[step]]
        if not lines:
            return step.drawn.frame.origin
        points = np.concatenate(lines)
        return np.asarray((points.min(axis=0) + points.max(axis=0)) / 2)

    def sheet(self, point: Floats) -> Floats:
        """Carry a point (2,) of the plan to the sheet (mm)."""
        return np.asarray(self.loaf.plan_to_sheet(np.asarray(point)[None])[0])

    def plan(self, point: Floats) -> Floats:
        """Carry a point (2,) of the sheet to the plan (mm)."""
        return np.asarray(self.loaf.sheet_to_plan(np.asarray(point)[None])[0])


def scene(text: str, name: str = "pattern", **asked: Unpack[Asked]) -> Scene:
    """Read a text and lay its cuts out, as `make` does; raises PatternError and UsageError so."""
    written = Written.read(text, name)
    return Scene(written, traced(written.tree, text, **asked))


def draws(statement: Statement) -> bool:
    """Tell whether a statement draws cuts itself: a motif, a fill, or the call of a rule."""
    word = WORDS.get(statement.word)
    return word is None or word.group == "motif" or statement.word == "fill"
