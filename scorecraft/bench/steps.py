"""The work at the bench as data: steps of the turntable, runs of steps alike, times."""

import math
from collections.abc import Iterator
from typing import Literal

from scorecraft.bench.order import Route
from scorecraft.cuts import Bench
from scorecraft.frozen import dataclass
from scorecraft.loaf.dough import Dough

LEVEL_TILT_DEG = 8.0
"""A handle tilted less than this is called upright."""
EVEN_RAD = math.radians(0.1)
"""Turns that differ by less are one and the same."""
Stage = Literal["light", "deep", "all"]


@dataclass(frozen=True, slots=True)
class Pull:
    """One stroke at the bench: the cut's index, and whether it is pulled against its drawing.

    Depths (mm) are those at its start, middle and end as pulled. The handle tilts from upright
    by `tilt_rad` at the middle and leans to `lean_rad`, as the cutter sees it (mathematical).
    """

    cut: int
    backward: bool
    depths_mm: tuple[float, float, float]
    tilt_rad: float
    lean_rad: float
    seconds: float


@dataclass(frozen=True, slots=True)
class Step:
    """What is cut at one setting of the table.

    `table_rad` says how far the table stands turned clockwise from where 12 o'clock of the
    pattern is farthest from the cutter, `turn_rad` how far it is turned to get there (clockwise
    positive), `spin_rad` how far it turns under the blade meanwhile.
    """

    number: int
    stage: Stage
    pulls: tuple[Pull, ...]
    families: frozenset[int]
    figures: tuple[int, ...]
    table_rad: float
    turn_rad: float
    spin_rad: float
    seconds: float


@dataclass(frozen=True, slots=True)
class Run:
    """Steps told in one row of the card.

    With `copies` every step is the first one again, after a turn of the table; else the steps
    make the same sorts of cuts, each in its own way.
    """

    number: int
    steps: tuple[Step, ...]
    copies: bool = True

    @property
    def first(self) -> Step:
        """The step that is shown."""
        return self.steps[0]

    @property
    def letter(self) -> str:
        """What the row is called: a letter, since numbers are those of the cuts."""
        letters = ""
        number = self.number
        while number:
            number, last = divmod(number - 1, 26)
            letters = chr(ord("A") + last) + letters
        return letters

    @property
    def times(self) -> int:
        """How often the first step is done: once where the others are no copies of it."""
        return len(self.steps) if self.copies else 1

    @property
    def turn_each_rad(self) -> float | None:
        """The turn between copies (radians, clockwise positive), None where it differs."""
        turns = [step.turn_rad for step in self.steps[1:]]
        even = self.copies and turns and max(turns) - min(turns) < EVEN_RAD
        return sum(turns) / len(turns) if even else None

    @property
    def seconds(self) -> float:
        """How long all of it takes."""
        return sum(step.seconds for step in self.steps)


@dataclass(frozen=True, slots=True)
class Effort:
    """What an order of the cuts takes: seconds with string lines, and radians of turning."""

    seconds: float
    turned_rad: float


@dataclass(frozen=True, slots=True)
class Work:
    """The order of work at the bench.

    `in_file_order` is what the same cuts take figure by figure as the pattern lists them.
    Times are those that are usual for the hand at the bench, who takes `times` as long as the
    `route` tells; `marks` counts the strings.
    """

    bench: Bench
    dough: Dough
    marks: int
    runs: tuple[Run, ...]
    effort: Effort
    in_file_order: Effort
    allowed_s: float
    route: Route
    times: float = 1.0

    @property
    def steps(self) -> Iterator[Step]:
        """All steps in order."""
        return (step for run in self.runs for step in run.steps)

    @property
    def order(self) -> tuple[int, ...]:
        """The cuts, as indexes in the layout, in the order of cutting."""
        return tuple(pull.cut for step in self.steps for pull in step.pulls)

    @property
    def against(self) -> frozenset[int]:
        """The cuts that are pulled against the direction they are drawn in."""
        return frozenset(pull.cut for step in self.steps for pull in step.pulls if pull.backward)

    @property
    def gap_s(self) -> float:
        """How far from the best the order can be at the most (s)."""
        return self.times * (self.route.cost_s - self.route.bound_s)

    @property
    def saved_s(self) -> float:
        """Seconds saved over the order of the file."""
        return self.in_file_order.seconds - self.effort.seconds
