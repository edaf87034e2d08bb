"""Other ways to look at the loaf on the page."""

from scorecraft.designing import Design
from scorecraft.drawing.bloom.view import view
from scorecraft.drawing.picture import Picture
from scorecraft.web.asked import Data, choice_of, number_of

STEEPEST_DEG = 90.0


def seen(design: Design, request: Data) -> Picture:
    """Draw the way of looking a request asks for."""
    look = choice_of(request, "look", ("side", "guide", "tension"))
    if look == "guide":
        return design.printed("guide", "svg").pages[0]
    if look == "tension":
        return design.printed("bloom", "svg", tension=True).pages[0]
    return view(design.layout, number_of(request, "elevation", 25.0, 0.0, STEEPEST_DEG))
