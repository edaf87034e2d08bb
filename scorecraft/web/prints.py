"""What can be printed from the page: pages to look at, or one file to keep."""

import os
import re
from pathlib import PurePath

from scorecraft.check_data import rounded
from scorecraft.designing import Design
from scorecraft.drawing.paper.sheet import PAPERS, home_paper
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.svg import svg
from scorecraft.errors import UsageError
from scorecraft.json_data import JsonObject
from scorecraft.prints import PRINTS
from scorecraft.prints.forms import encoded
from scorecraft.prints.row import Print, Printed
from scorecraft.web.answer import SVG, Answer, json_answer
from scorecraft.web.asked import Data, choice_of, text_of
from scorecraft.web.offered import FOLLOWED

TYPES = {"pdf": "application/pdf", "svg": SVG, "dxf": "image/vnd.dxf"}
FORMS = ("pages", *TYPES)


def printed(design: Design, request: Data) -> Answer:
    """Make the print a request asks for: its pages as data, or a file to keep."""
    what = choice_of(request, "what", (*PRINTS, "cutter"))
    form = choice_of(request, "form", FORMS)
    paper = choice_of(request, "paper", (home_paper(os.environ).name, *(p.name for p in PAPERS)))
    made = print_of(design, {**request, "paper": paper}, what, "pdf" if form == "pages" else form)
    if form == "pages":
        pages = [page_data(page, number) for number, page in enumerate(made.pages, start=1)]
        return json_answer({"ok": True, "paper": paper, "remark": remark(made), "pages": pages})
    name = f"{PurePath(design.source.name).stem}-{what}.{form}"
    return Answer(encoded(made, form), TYPES[form], name=name)


def print_of(design: Design, request: dict[str, object], what: str, form: str) -> Printed:
    """Make a print with the options of a request; for a cutter, that of what it follows.

    Raises UsageError as the print does, in the words of the page.
    """
    if what == "cutter":
        what = FOLLOWED[choice_of(request, "follow", tuple(FOLLOWED))]
        request = request | {"cutter": True}
    row = PRINTS[what]
    try:
        return design.printed(what, form, **options_of(row, request))
    except UsageError as error:
        raise UsageError(error.message, error.place, as_labelled(row, error.hint)) from error


def as_labelled(row: Print, hint: str) -> str:
    """Call the options of a hint as the page does, not as the command line."""
    labels = {each.name: each.label for each in row.options if each.label}
    return re.sub(
        r"--(\w++)", lambda found: f"“{labels[found[1]]}”" if found[1] in labels else found[0], hint
    )


def options_of(row: Print, request: Data) -> dict[str, object]:
    """Read the options of a print that a request gives; texts are short."""
    given = {each.key: each.kind for each in row.options if request.get(each.key) is not None}
    texts = {key for key, kind in given.items() if kind in ("names", "words")}
    return {key: text_of(request, key) if key in texts else request[key] for key in given}


def remark(made: Printed) -> str:
    """Put what is to be said about a print into sentences."""
    said = filter(None, (made.remark, made.sheets, made.caution))
    return ". ".join(each[0].upper() + each[1:] for each in said)


def page_data(page: Picture, number: int) -> JsonObject:
    """Tell a page: its size and its picture."""
    return {
        "width_mm": rounded(page.width_mm),
        "height_mm": rounded(page.height_mm),
        "title": page.title,
        "svg": svg(page, ids=f"page{number}-"),
    }
