"""The skin of the loaf, as far as bakes can teach it."""

from dataclasses import dataclass

from scorecraft.practice import SKIN_MM


@dataclass(frozen=True, slots=True)
class Skin:
    """What a baker's own bakes teach: thickness (mm), and growth over the assumed growth.

    `unsettled_by` names the baker file whose openings do not settle it; then it is the usual one.
    """

    thickness_mm: float = SKIN_MM.value
    growth: float = 1.0
    unsettled_by: str = ""
