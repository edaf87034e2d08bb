"""What the checks say of the dough and the oven."""

from scorecraft.checks.telling import Sentence

NO_STEAM = (
    "without steam the skin sets early: the cuts open less, and the growth that is left may burst "
    "at the side or the foot"
)
NO_STEAM_FIX = "bake with steam, or in a covered pot"
PROOF_LONGER = "proof it longer"
OVER_FIX = "cut it shallower, with fewer cuts, and bake it at once"
UNDERPROOFED = Sentence(
    "underproofed dough springs most and bursts where it is not cut: {depth:mm} is shallow for it"
)
UNDER_CURE = Sentence("cut {depth:mm} deep, or proof it longer")
OVERPROOFED = Sentence(
    "overproofed dough springs little: cuts barely open, and {depth:mm} deep it may sag"
)
OVER_CURE = Sentence("cut no deeper than {depth:mm}, with fewer cuts, and bake it at once")


def wants_more(stage: str, steam: bool) -> str:
    """Say why dough or oven make the room that is there count for less."""
    if not steam:
        return "; without steam the rest goes into a burst at the side or the foot"
    return "; underproofed dough asks for more" if stage == "under" else ""
