"""The plan of the bench as data: steps of the turntable, runs of steps alike, times."""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from scorecraft.bench.hands import Bench

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
    """Steps alike, told once: the same figures, the table turned by the same angle in between."""

    number: int
    steps: tuple[Step, ...]
    turn_each_rad: float

    @property
    def first(self) -> Step:
        """The step that is shown."""
        return self.steps[0]

    @property
    def times(self) -> int:
        """How often it is done."""
        return len(self.steps)

    @property
    def seconds(self) -> float:
        """How long all of it takes."""
        return sum(step.seconds for step in self.steps)


@dataclass(frozen=True, slots=True)
class Work:
    """What an order of the cuts takes: seconds with string marks, and radians of turning."""

    seconds: float
    turned_rad: float
    settings: int


@dataclass(frozen=True, slots=True)
class Plan:
    """The order of work at the bench.

    `in_file_order` is what the same cuts take figure by figure as the pattern lists them.
    Beyond cutting itself no order costs less than `bound_s`; this one costs `cost_s`, and is the
    best where `proven`. The order of the file has no bound: 0.
    """

    bench: Bench
    marks: int
    marks_seconds: float
    runs: tuple[Run, ...]
    work: Work
    in_file_order: Work
    allowed_s: float
    cost_s: float
    bound_s: float
    proven: bool

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
        return self.cost_s - self.bound_s

    @property
    def saved_s(self) -> float:
        """Seconds saved over the order of the file."""
        return self.in_file_order.seconds - self.work.seconds
