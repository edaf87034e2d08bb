"""The guide: the full-size sheet to hold beside the bench."""

from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, TILED, home


def guide(
    design: Drawn, form: str, *, paper: str | None = None, tiled: bool = False, cutter: bool = False
) -> Printed:
    """Draw the guide, with the predicted openings and the verdict on its room; or the cuts alone.

    A loaf too large for the paper is spread over the pages of a PDF, the first of which tells how
    to join the others; other forms without a paper are one sheet as large as it takes.
    """
    from scorecraft.drawing.guide.guide import guide_pages, one_sheet_paper
    from scorecraft.drawing.paper.cautions import FILM
    from scorecraft.drawing.paper.panel import Told
    from scorecraft.drawing.paper.telling import joined_words
    from scorecraft.drawing.templates.cutter import cuts_cutter

    if cutter or form == "dxf":
        flat = cuts_cutter(design.layout)
        return Printed((flat,), caution=FILM, flat=flat)
    widths, against = design.ranges.widest_mm.tolist(), design.work.against
    told = Told(design.layout, design.groups, design.findings, widths, design.room_words, against)
    pages = guide_pages(told, paper=paper, home=home(), tiled=tiled, one_sheet=form != "pdf")
    larger = one_sheet_paper(design.layout.loaf, home())
    return Printed(pages, sheets=joined_words(pages), larger=larger.name if larger else "")


GUIDE = Print(
    "guide",
    "print the full-size guide to hold beside the loaf",
    "Print the full-size guide of PATTERN: the loaf from above, its cuts numbered and listed.",
    ("svg", "pdf", "png", "dxf"),
    (
        PAPER,
        TILED,
        Option("cutter", "flag", "Only the cuts, as plain lines for a cutter (.svg)."),
    ),
    guide,
    predicts=True,
    example="--paper A4 -o guide.pdf",
)
