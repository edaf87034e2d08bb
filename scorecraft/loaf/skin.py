"""The skin of the loaf, as far as bakes can teach it."""

from scorecraft.frozen import dataclass
from scorecraft.practice import INSIDE_PER_SKIN, SKIN_MM, SKIN_OFF


@dataclass(frozen=True, slots=True)
class Skin:
    """What a baker's own bakes teach of the skin, the dough under it, and how the loaf grows.

    Its thickness (mm), the stiffness of the inside over the skin's (0 for none), and the growth
    over the assumed growth. `unsettled_by` names the baker file whose openings do not settle them;
    then they are the usual ones. `unsure` and `growth_unsure` are the shares by which the
    thickness and the growth may be off, two times in three.
    """

    thickness_mm: float = SKIN_MM.value
    inside: float = INSIDE_PER_SKIN.value
    growth: float = 1.0
    unsettled_by: str = ""
    unsure: float = SKIN_OFF.value
    growth_unsure: float = 0.0
