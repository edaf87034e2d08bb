"""What can be printed from the page: pages to look at, or one file to keep."""

import os
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from pathlib import PurePath
from typing import Any

from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drape.drape import make_drape
from scorecraft.drawing.card.card import card
from scorecraft.drawing.paper.full_size import full_size_pages
from scorecraft.drawing.paper.sheet import PAPERS, home_paper
from scorecraft.drawing.paper.tiles import joined_words
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.svg import svg
from scorecraft.drawing.templates.cutter import cuts_cutter, plate_cutter
from scorecraft.drawing.templates.cutter_file import encoded_for_cutter
from scorecraft.drawing.templates.drape import drape_figure
from scorecraft.drawing.templates.stencil import stencil
from scorecraft.drawing.templates.turn_ring import turn_ring
from scorecraft.drawing.write import encoded
from scorecraft.plate.plate import Plate, make_plate
from scorecraft.practice import LEAST_SLOT_MM, MOST_SLOT_MM
from scorecraft.report import rounded
from scorecraft.web.answer import SVG, Answer, json_answer
from scorecraft.web.asked import Data, choice_of, flag_of, number_of

TYPES = {"pdf": "application/pdf", "svg": SVG, "dxf": "image/vnd.dxf"}
FORMS = ("pages", *TYPES)


@dataclass(frozen=True, slots=True)
class Print:
    """The pages of a print, what is to be said about it, and the flat drawing for a cutter."""

    pages: tuple[Picture, ...]
    remark: str = ""
    flat: Picture | None = None


def on_sheets(pages: tuple[Picture, ...], remark: str = "") -> Print:
    """Give a print with a word on its sheets, where there are several."""
    return Print(pages, ". ".join(filter(None, (remark, joined_words(pages).capitalize()))))


def guide(design: Design, request: Data, paper: str) -> Print:
    """Draw the guide, on several sheets where one does not hold it."""
    return on_sheets(design.guide_pages(paper=paper))


def bench_card(design: Design, request: Data, paper: str) -> Print:
    """Draw the bench card."""
    return Print(tuple(card(design.layout, design.work, design.groups, paper=paper)))


def plate_sheets(design: Design, request: Data, paper: str) -> Print:
    """Draw the stencil."""
    plate = plate_of(design.layout, request)
    pages = full_size_pages(stencil(plate, design.layout), name=paper)
    return on_sheets(pages, left_out(plate))


def drape(design: Design, request: Data, paper: str) -> Print:
    """Draw the sheet that lies on the dome."""
    figure = drape_figure(make_drape(design.layout), design.layout)
    return on_sheets(full_size_pages(figure, name=paper))


def ring(design: Design, request: Data, paper: str) -> Print:
    """Draw the ring for the turntable."""
    return on_sheets(full_size_pages(turn_ring(design.layout, design.groups), name=paper))


def cutter(design: Design, request: Data, paper: str) -> Print:
    """Draw the stencil, or the cuts themselves, for a cutting machine."""
    if choice_of(request, "follow", ("stencil", "cuts")) == "cuts":
        drawn = cuts_cutter(design.layout)
        return Print((drawn,), flat=drawn)
    plate = plate_of(design.layout, request)
    drawn = plate_cutter(plate, design.layout.title)
    return Print((drawn,), left_out(plate), flat=drawn)


PRINTS: Mapping[str, Callable[[Design, Data, str], Print]] = {
    "guide": guide,
    "card": bench_card,
    "stencil": plate_sheets,
    "drape": drape,
    "ring": ring,
    "cutter": cutter,
}
"""Everything that is printed, by name."""


def plate_of(layout: Layout, request: Data) -> Plate:
    """Make the stencil a request asks for; without a slot width it is as usual."""
    least, most = LEAST_SLOT_MM.value, MOST_SLOT_MM.value
    slot = None
    if request.get("slot_mm") is not None:
        slot = number_of(request, "slot_mm", least, least, most)
    return make_plate(layout, slot_mm=slot, mirrored=flag_of(request, "mirrored"))


def left_out(plate: Plate) -> str:
    """Say which parts are too fine for a stencil."""
    return f"Too fine, left out: {', '.join(plate.left_out)}" if plate.left_out else ""


def printed(design: Design, request: Data) -> Answer:
    """Make the print a request asks for: its pages as data, or a file to keep."""
    what = choice_of(request, "what", tuple(PRINTS))
    form = choice_of(request, "form", FORMS)
    paper = choice_of(request, "paper", (home_paper(os.environ).name, *(p.name for p in PAPERS)))
    made = PRINTS[what](design, request, paper)
    if form == "pages":
        pages = [page_data(page, number) for number, page in enumerate(made.pages, start=1)]
        return json_answer({"ok": True, "paper": paper, "remark": made.remark, "pages": pages})
    name = f"{PurePath(design.source.name).stem}-{what}.{form}"
    if made.flat:
        return Answer(encoded_for_cutter(made.flat, form), TYPES[form], name=name)
    return Answer(encoded(made.pages, form, design.layout.title), TYPES[form], name=name)


def page_data(page: Picture, number: int) -> dict[str, Any]:
    """Tell a page: its size and its picture."""
    return {
        "width_mm": rounded(page.width_mm),
        "height_mm": rounded(page.height_mm),
        "title": page.title,
        "svg": svg(page, ids=f"page{number}-"),
    }
