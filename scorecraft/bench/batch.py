"""Many equal loaves scored in a row, board by board from the cold."""

from math import ceil

from scorecraft.bench.pace import between, pace
from scorecraft.bench.steps import Work
from scorecraft.frozen import dataclass
from scorecraft.practice import COLD_C, NEXT_LOAF_S

Times = tuple[float, float]
"""The least and the most of a time (s)."""


@dataclass(frozen=True, slots=True)
class Batch:
    """Equal loaves in a row, the loaves on each of their boards, and a loaf's time.

    A loaf's time holds the change to the next. All of a board are scored within the holding time
    even where each takes the most; `in_time` is False where that is not so of a single loaf.
    `cold` tells whether they come out of the cold.
    """

    boards: tuple[int, ...]
    loaf_s: Times
    in_time: bool
    cold: bool

    @property
    def loaves(self) -> int:
        """How many loaves there are."""
        return sum(self.boards)

    @property
    def board_s(self) -> Times:
        """How long the fullest board takes: then the next one comes out of the cold."""
        least, most = self.loaf_s
        return self.boards[0] * least, self.boards[0] * most

    @property
    def all_s(self) -> Times:
        """How long all loaves take one person."""
        least, most = self.loaf_s
        return self.loaves * least, self.loaves * most

    @property
    def shared_s(self) -> Times:
        """How long all loaves take two people."""
        least, most = self.all_s
        return least / 2, most / 2


def batch_of(work: Work) -> Batch | None:
    """Share the loaves at a bench out over its boards, as evenly as can be; None for one loaf."""
    bench = work.bench
    if bench.loaves == 1:
        return None
    change = NEXT_LOAF_S.value * pace(bench.skill)
    least, most = between(work.effort.seconds + change, bench.skill)
    _, slowest_change = between(change, bench.skill)
    fit = int((work.allowed_s + slowest_change) // most)
    boards = ceil(bench.loaves / max(fit, 1))
    each, more = divmod(bench.loaves, boards)
    shared = (each + 1,) * more + (each,) * (boards - more)
    return Batch(shared, (least, most), fit > 0, work.dough.temperature_c <= COLD_C.value)
