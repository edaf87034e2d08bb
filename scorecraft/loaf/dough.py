"""The dough as it is scored: how far proofed, how wet, how warm, and what that changes."""

from collections.abc import Mapping

import numpy as np

from scorecraft.baking import (
    DRY_SPRING,
    LEAST_PROOF,
    LOWER_PER_C,
    LOWER_PER_KITCHEN_C,
    LOWER_PER_WATER,
    OVEN_SPRINGS,
    PROOF_SHARES,
    READY_TIMES,
    SHRINKS_PER_C,
    STANDS,
    USUAL_C,
    USUAL_WATER,
)
from scorecraft.frozen import dataclass
from scorecraft.limits import MOST_PROOF
from scorecraft.loaf import telling as say
from scorecraft.rules import Rule

STAGES = ("under", "ready", "over")
"""The stages of proofing that have a name."""
STAND_LIMITS = (0.5, 1.3)
"""No dough stands lower or higher than this many times the usual height."""


@dataclass(frozen=True, slots=True)
class Dough:
    """The dough of a loaf when it is scored.

    `proof` is a stage or the volume over the mixed volume; what is ready depends on the culture.
    `hydration` is water over flour; temperatures are those of the loaf and of the kitchen (C).
    Raises UsageError for a proof that is none.

    >>> Dough("ready").times, Dough("ready", "yeasted").times
    (1.9, 2.1)
    >>> [round(Dough(stage).spring(), 2) for stage in ("under", "ready", "over")]
    [1.65, 1.4, 1.15]
    """

    proof: str | float = "ready"
    culture: str = "sourdough"
    hydration: float = USUAL_WATER.value
    temperature_c: float = USUAL_C.value
    kitchen_c: float = USUAL_C.value

    def __post_init__(self) -> None:
        if isinstance(self.proof, str):
            if self.proof not in STAGES:
                raise say.UNKNOWN_PROOF(proof=self.proof).usage()
        elif not LEAST_PROOF.value <= self.proof <= MOST_PROOF:
            hint = f"use {LEAST_PROOF.value:g} to {MOST_PROOF:g} times the volume"
            raise say.OUT_OF_RANGE(what=f"a proof of {self.proof:g}", hint=hint).usage()

    @property
    def times(self) -> float:
        """Volume when scored over the mixed volume, before any chilling."""
        return self.share * READY_TIMES[self.culture].value

    @property
    def share(self) -> float:
        """Volume when scored over that of a ready dough."""
        if isinstance(self.proof, str):
            return PROOF_SHARES[self.proof].value
        return self.proof / READY_TIMES[self.culture].value

    @property
    def stage(self) -> str:
        """The stage of proofing: under, ready or over."""
        if self.share < PROOF_SHARES["ready from"].value:
            return "under"
        return "ready" if self.share <= PROOF_SHARES["ready to"].value else "over"

    def spring(self, *, steam: bool = True) -> float:
        """Baked volume over proofed volume that this dough may be trusted with."""
        with_steam = _between(OVEN_SPRINGS, self.share)
        return with_steam if steam else 1 + DRY_SPRING.value * (with_steam - 1)

    @property
    def stand(self) -> float:
        """Height over the usual height: wetter, warmer and further proofed dough stands lower."""
        wetter = LOWER_PER_WATER.value * (self.hydration - USUAL_WATER.value)
        warmer = LOWER_PER_C.value * (self.temperature_c - USUAL_C.value)
        kitchen = LOWER_PER_KITCHEN_C.value * (self.kitchen_c - USUAL_C.value)
        stands = _between(STANDS, self.share) * (1 - wetter) * (1 - warmer) * (1 - kitchen)
        return float(np.clip(stands, *STAND_LIMITS))

    @property
    def shrunk(self) -> float:
        """Share of the volume that is left of a chilled loaf; 1 where it is not chilled."""
        chilled = max(USUAL_C.value - self.temperature_c, 0.0)
        return 1 - SHRINKS_PER_C.value * chilled


def _between(rules: Mapping[str, Rule], share: float) -> float:
    """Read a number at a share of the ready volume from the rules of the stages around it."""
    at = [PROOF_SHARES[stage].value for stage in rules]
    return float(np.interp(share, at, [rule.value for rule in rules.values()]))
