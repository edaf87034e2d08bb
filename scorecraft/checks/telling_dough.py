"""What the checks say of the dough and the oven."""

from scorecraft.units import mm_words

NO_STEAM = (
    "without steam the skin sets early: the cuts open less, and the growth that is left may burst "
    "at the side or the foot"
)
NO_STEAM_FIX = "bake with steam, or in a covered pot"
PROOF_LONGER = "proof it longer"
OVER_FIX = "cut it shallower, with fewer cuts, and bake it at once"


def underproofed(depth_mm: float) -> str:
    """Say that cuts are shallow for underproofed dough."""
    return (
        "underproofed dough springs most and bursts where it is not cut: "
        f"{mm_words(depth_mm)} is shallow for it"
    )


def under_cure(depth_mm: float) -> str:
    """Advise deeper cuts, or more proof."""
    return f"cut {mm_words(depth_mm)} deep, or proof it longer"


def overproofed(depth_mm: float) -> str:
    """Say that cuts are deep for overproofed dough."""
    return (
        "overproofed dough springs little: cuts barely open, and "
        f"{mm_words(depth_mm)} deep it may sag"
    )


def over_cure(depth_mm: float) -> str:
    """Advise shallower and fewer cuts."""
    return f"cut no deeper than {mm_words(depth_mm)}, with fewer cuts, and bake it at once"


def wants_more(stage: str, steam: bool) -> str:
    """Say why dough or oven make the room that is there count for less."""
    if not steam:
        return "; without steam the rest goes into a burst at the side or the foot"
    return "; underproofed dough asks for more" if stage == "under" else ""
