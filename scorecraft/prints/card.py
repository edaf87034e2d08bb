"""The bench card: the order of cuts, to stand by the loaf."""

from scorecraft.prints.row import Drawn, Option, Print, Printed
from scorecraft.prints.sheets import home


def card(design: Drawn, form: str, *, paper: str | None = None, hand: str | None = None) -> Printed:
    """Draw the bench card, its pages side by side where a file holds only one; or write it."""
    from scorecraft.bench import work_of
    from scorecraft.drawing.card.card import card as drawn
    from scorecraft.drawing.card.card import joined
    from scorecraft.drawing.card.text import card_text

    layout, groups = design.layout, design.groups
    made = work_of(layout, hand) if hand else design.work
    if form == "txt":
        return Printed(text=card_text(layout, made, groups))
    pages = drawn(layout, made, groups, paper=paper, home=home())
    return Printed(tuple(pages) if form == "pdf" else (joined(pages),))


CARD = Print(
    "card",
    "print the bench card: which cut comes next, and how",
    "Print the bench card of PATTERN: which cut comes next, how deep, and how far to turn.",
    ("txt", "svg", "pdf", "png"),
    (
        Option("paper", "words", "A4 or Letter; larger ones work too.", "NAME"),
        Option("hand", "choice", "The hand that holds the blade.", choices=("right", "left")),
    ),
    card,
    example="--hand left -o card.pdf",
)
