"""The practice sheets: strokes to trace and then to do freehand, for a blade or a pen on paper."""

from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import PAPER, home


def practise(
    design: Drawn, form: str, *, paper: str | None = None, hand: str | None = None
) -> Printed:
    """Draw the practice sheets, side by side where a file holds only one page."""
    from scorecraft.bench import work_of
    from scorecraft.drawing.card.card import joined
    from scorecraft.drawing.practise.sheets import practice_sheets

    made = work_of(design.layout, hand) if hand else design.work
    pages = practice_sheets(design.layout, made, design.groups, paper=paper, home=home())
    return Printed(pages if form == "pdf" else (joined(pages),))


PRACTISE = Print(
    "practise",
    "print practice sheets: strokes to trace, then freehand",
    "Print practice sheets for PATTERN at full size: basics and its own hardest strokes, to trace, "
    "to follow by fading guides, and to do freehand; with a pen first, then a blade.",
    ("svg", "pdf", "png"),
    (PAPER, Option("hand", "choice", "The hand that cuts.", choices=("right", "left"))),
    practise,
)
