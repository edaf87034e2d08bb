"""Who cuts, and in what kitchen: the hand, the order asked for, the dough's state."""

import math
from dataclasses import dataclass
from typing import Literal, cast

from scorecraft.cuts import Layout
from scorecraft.errors import UsageError
from scorecraft.practice import BENCH_TIME_AT_C, BENCH_TIME_AT_WATER, PULL_ASIDE_DEG
from scorecraft.units import from_turntable

Hand = Literal["right", "left"]
Order = Literal["planned", "file"]


@dataclass(frozen=True, slots=True)
class Bench:
    """The hand that holds the blade, the order asked for, temperature (C) and water per flour."""

    hand: Hand = "right"
    order: Order = "planned"
    temperature_c: float = BENCH_TIME_AT_C.value
    hydration: float = BENCH_TIME_AT_WATER.value

    @property
    def way(self) -> int:
        """Which way the table usually turns: 1 clockwise, -1 counter-clockwise."""
        return 1 if self.hand == "right" else -1

    @property
    def drift_rad(self) -> float:
        """Direction in which a free pull drifts (radians from +x): toward the cutter and aside."""
        return from_turntable(math.pi - self.way * math.radians(PULL_ASIDE_DEG.value))


def bench_of(layout: Layout, hand: str | None = None) -> Bench:
    """Read a layout's bench statement; `hand` stands in for its own.

    Raises UsageError for a hand that is neither right nor left.
    """
    values = {**layout.settings.get("bench", {})}
    if hand is not None:
        values["hand"] = hand
    if values.get("hand", "right") not in ("right", "left"):
        raise UsageError(f'"{values["hand"]}" is no hand', None, "it is right or left")
    plain = Bench()
    return Bench(
        hand=cast(Hand, values.get("hand", plain.hand)),
        order=cast(Order, values.get("order", plain.order)),
        temperature_c=float(values.get("temperature", plain.temperature_c)),
        hydration=float(values.get("hydration", plain.hydration)),
    )
