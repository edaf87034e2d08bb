"""Other ways to look at the loaf on the page."""

import os
from typing import Any

from scorecraft.designing import Design
from scorecraft.drawing.guide import guide_pages
from scorecraft.drawing.sheet import home_paper
from scorecraft.drawing.svg import svg
from scorecraft.drawing.view import view
from scorecraft.web.asked import choice_of, number_of

STEEPEST_DEG = 90.0


def seen(design: Design, request: dict[str, Any]) -> str:
    """Draw the way of looking a request asks for, as SVG."""
    if choice_of(request, "look", ("side", "guide")) == "guide":
        page = guide_pages(
            design.layout, home=home_paper(os.environ), findings=design.findings, tiled=False
        )[0]
        return svg(page, text="text", ids="guide")
    elevation = number_of(request, "elevation", 25.0, 0.0, STEEPEST_DEG)
    return svg(view(design.layout, elevation), text="text", ids="view")
