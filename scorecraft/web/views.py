"""Other ways to look at the loaf on the page."""

from collections.abc import Mapping
from typing import Any

from scorecraft.designing import Design
from scorecraft.drawing.bloom.showing import Wanted
from scorecraft.drawing.bloom.view import view
from scorecraft.drawing.picture import Picture
from scorecraft.web.asked import choice_of, number_of

STEEPEST_DEG = 90.0


def seen(design: Design, request: Mapping[str, Any]) -> Picture:
    """Draw the way of looking a request asks for."""
    look = choice_of(request, "look", ("side", "guide", "tension"))
    if look == "guide":
        return design.guide_pages(one_sheet=True)[0]
    if look == "tension":
        return design.bloom(Wanted(tension=True))
    return view(design.layout, number_of(request, "elevation", 25.0, 0.0, STEEPEST_DEG))
