"""Other ways to look at the loaf on the page."""

from dataclasses import replace

from scorecraft.designing import Design
from scorecraft.drawing.bloom.bloom import CRUSTS, FLOURS
from scorecraft.drawing.bloom.showing import Look
from scorecraft.drawing.picture import Picture
from scorecraft.web.asked import Data, choice_of, flag_of, number_of
from scorecraft.web.telling import baked_words

STEEPEST_DEG = 90.0
PIXELS = 700


def seen(design: Design, request: Data) -> Picture:
    """Draw the way of looking a request asks for."""
    look = choice_of(request, "look", ("side", "guide", "tension"))
    if look == "guide":
        return design.printed("guide", "svg").pages[0]
    if look == "tension":
        return design.printed("bloom", "svg", tension=True).pages[0]
    elevation = number_of(request, "elevation", 25.0, 0.0, STEEPEST_DEG)
    wanted = Look(
        proofed=not flag_of(request, "baked"),
        view=f"{elevation:g}",
        crust=choice_of(request, "crust", ("golden", *CRUSTS)),
        flour=choice_of(request, "flour", ("", *FLOURS)) or None,
        pixels=PIXELS,
    )
    drawn = design.bloom(wanted)
    return drawn if wanted.proofed else replace(drawn, desc=baked_words(design.ranges.widest_mm))
