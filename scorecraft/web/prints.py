"""What can be printed from the page: pages to look at, or one file to keep."""

import os
from collections.abc import Callable, Mapping
from pathlib import PurePath
from typing import Any

from scorecraft.designing import Design
from scorecraft.drawing.guide import guide_pages
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.sheet import PAPERS, home_paper
from scorecraft.drawing.svg import svg
from scorecraft.drawing.write import encoded
from scorecraft.report import rounded
from scorecraft.web.answer import SVG, Answer, json_answer
from scorecraft.web.asked import Data, choice_of

PDF = "application/pdf"
Pages = tuple[Picture, ...]


def guide(design: Design, request: Data, paper: str) -> Pages:
    """Draw the guide, on several sheets where one does not hold it."""
    return guide_pages(design.layout, paper=paper, tiled=True, findings=design.findings)


PRINTS: Mapping[str, Callable[[Design, Data, str], Pages]] = {
    "guide": guide,
}
"""Everything that is printed on paper, by name."""


def printed(design: Design, request: Data) -> Answer:
    """Make the print a request asks for: its pages as data, or a PDF or SVG file."""
    what = choice_of(request, "what", tuple(PRINTS))
    form = choice_of(request, "form", ("pages", "pdf", "svg"))
    home = home_paper(os.environ).name
    paper = choice_of(request, "paper", (home, *(each.name for each in PAPERS)))
    pages = PRINTS[what](design, request, paper)
    name = f"{PurePath(design.source.name).stem}-{what}"
    if form == "pdf":
        return Answer(encoded(pages, "pdf", design.layout.title), PDF, name=f"{name}.pdf")
    if form == "svg":
        return Answer(encoded(pages, "svg"), SVG, name=f"{name}.svg")
    return json_answer({"ok": True, "paper": paper, "pages": [page_data(*p) for p in counted(pages)]})


def counted(pages: Pages) -> list[tuple[int, Picture]]:
    """Number the pages from 1."""
    return list(enumerate(pages, start=1))


def page_data(number: int, page: Picture) -> dict[str, Any]:
    """Tell a page: its size and its picture."""
    return {
        "width_mm": rounded(page.width_mm),
        "height_mm": rounded(page.height_mm),
        "title": page.title,
        "svg": svg(page, ids=f"page{number}-"),
    }
