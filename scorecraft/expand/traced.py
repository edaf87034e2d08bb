"""Where every cut comes from: its statement, what that stands in, which copy, and its frame."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Unpack

from scorecraft.cuts import Layout
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.layout import Asked, laid_out
from scorecraft.expand.scope import Scope
from scorecraft.expand.walk import Walk
from scorecraft.language.tree import Pattern, Statement


@dataclass(eq=False, slots=True)
class Step:
    """One run of a statement, in its scope, within a step of the statement around it.

    `copy` is which of that statement's blocks it runs in, from 0; `drawn` the scope its figure was
    drawn in, turned as it says (itself for what draws nothing); `blocks` how many blocks ran in it.
    """

    statement: Statement
    scope: Scope
    around: "Step | None"
    copy: int = 0
    drawn: Scope = field(init=False)
    blocks: int = 0

    def __post_init__(self) -> None:
        self.drawn = self.scope

    @property
    def chain(self) -> "tuple[Step, ...]":
        """The steps it stands in, the outermost first, and itself."""
        return (*(self.around.chain if self.around else ()), self)


class TracedWalk(Walk):
    """A walk that keeps its steps, and for every cut the step that drew it."""

    def __init__(self, rules: Mapping[str, Statement], drawings: Drawings) -> None:
        super().__init__(rules, drawings)
        self.steps: list[Step] = []
        self.origins: list[Step] = []
        self.here: Step | None = None

    def statement(self, statement: Statement, scope: Scope) -> Scope:
        """Run one statement as a step within the one around it."""
        around = self.here
        self.here = Step(statement, scope, around, around.blocks - 1 if around else 0)
        self.steps.append(self.here)
        try:
            return super().statement(statement, scope)
        finally:
            self.here = around

    def inner(self, block: tuple[Statement, ...], scope: Scope) -> None:
        """Run a block as the next one of its step."""
        assert self.here is not None
        self.here.blocks += 1
        super().inner(block, scope)

    def kept(self, scope: Scope) -> None:
        """Keep the step that cuts come from."""
        assert self.here is not None
        self.here.drawn = scope
        self.origins += [self.here] * (len(self.cuts) - len(self.origins))


@dataclass(frozen=True, eq=False, slots=True)
class Traced:
    """A layout, all steps of the walk that made it, and for every cut the step that drew it."""

    layout: Layout
    steps: tuple[Step, ...]
    origins: tuple[Step, ...]


def traced(pattern: Pattern, text: str = "", **asked: Unpack[Asked]) -> Traced:
    """Lay a pattern out as `expand` does, and keep where every cut comes from.

    Raises PatternError and UsageError as `expand` does.
    """
    layout, walk = laid_out(TracedWalk, pattern, text, **asked)
    return Traced(layout, tuple(walk.steps), tuple(walk.origins))
