"""Other ways to look at the loaf on the page."""

import os
from typing import Any

from scorecraft.designing import Design
from scorecraft.drawing.guide import guide_pages
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.sheet import home_paper
from scorecraft.drawing.tension import tension_map
from scorecraft.drawing.view import view
from scorecraft.opening import Opening
from scorecraft.web.asked import choice_of, number_of

STEEPEST_DEG = 90.0


def seen(design: Design, request: dict[str, Any]) -> Picture:
    """Draw the way of looking a request asks for."""
    if choice_of(request, "look", ("side", "guide")) == "guide":
        home = home_paper(os.environ)
        return guide_pages(design.layout, home=home, findings=design.findings)[0]
    return view(design.layout, number_of(request, "elevation", 25.0, 0.0, STEEPEST_DEG))


def tension(design: Design, opening: Opening) -> Picture:
    """Map where the skin stays tight, and a loaf would burst."""
    return tension_map(design.layout, opening.tension_at)
