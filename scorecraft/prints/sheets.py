"""What large prints share: the options of their paper, and how they are laid out on it."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING

from scorecraft.prints.row import Option, Printed

if TYPE_CHECKING:
    from scorecraft.drawing.paper.full_size import FullSize
    from scorecraft.drawing.paper.sheet import Paper

PAPER = Option("paper", "words", "A4, A3, Letter or Tabloid.", "NAME")
TILED = Option("tiled", "flag", "Spread over as many sheets of A4 or Letter as it takes.")


def home() -> Paper:
    """Choose the paper of the house by its locale."""
    from scorecraft.drawing.paper.sheet import home_paper

    return home_paper(os.environ)


def on_sheets(made: FullSize, form: str, paper: str | None, *, tiled: bool) -> Printed:
    """Lay a figure out; only a PDF is spread over sheets without being asked."""
    from scorecraft.drawing.paper.full_size import full_size_pages
    from scorecraft.drawing.paper.telling import joined_words

    pages = full_size_pages(made, name=paper, home=home(), tiled=tiled, one_sheet=form != "pdf")
    return Printed(pages, sheets=joined_words(pages))
