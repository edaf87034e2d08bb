"""What the prints say about safety: each caution stands on the sheet where its danger is."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scorecraft.cuts import Cut  # with numpy, which who asks for words does without

USED_BLADES = "Used blades go into a rigid sharps container."
BLADE = (
    "Razor blades are very sharp. Cut away from your other hand and cap the blade whenever you "
    f"put it down. {USED_BLADES}"
)
KNIFE = (
    "Knives and dough cutters are sharp: press down, do not drag, and keep your other hand well "
    "beside the edge."
)
SCISSORS = (
    "Scissors are sharp and pinch: keep the fingers of your other hand away from between the "
    "blades and from their tips."
)
STICKING = "If the blade sticks, dip it in oil or water; never wipe it with a finger or cloth."
OVEN = (
    "The pot, its lid and the steam burn: wear dry oven gloves and long sleeves, and keep your "
    "face and arms clear of the lid."
)
SHEET = "Look at this sheet, do not lay it on dough: it is not food-safe."
TILE = "Keep this sheet off the dough."
FILM = (
    "Use only food-contact film. Check that it is safe for your cutter or laser: some plastics "
    "give off poisonous fumes or burn."
)
STENCIL = (
    f"{FILM} Polyester or polypropylene 0.2 to 0.5 mm thick is usual. A stencil of paper or card "
    "is for one bake, and never touches the dough."
)
DRAPE = (
    "Do not lay this sheet on dough. Trace it onto clean baking paper along a clean edge and cut "
    "that out; lay it on the loaf pencil side up, away from the dough."
)
RING = (
    "The ring lies under the baking paper and never touches the dough. Leave it on the bench when "
    "the loaf goes into the oven: paper burns."
)


def edges(cuts: Iterable[Cut]) -> str:
    """Say what to mind of all that is used to make some cuts: a blade, a knife, scissors."""
    parted = {"scissors" if cut.hinge_mm is not None else "knife" if cut.through else "blade"
              for cut in cuts} or {"blade"}  # fmt: skip
    told = (("blade", BLADE), ("knife", KNIFE), ("scissors", SCISSORS))
    return " ".join(text for tool, text in told if tool in parted)
