"""What the page offers to print: the rows of the table of prints, and files for a cutter."""

from dataclasses import asdict

from scorecraft.json_data import JsonObject
from scorecraft.prints import PRINTS
from scorecraft.prints.row import Option

TITLES = {
    "card": "Bench card",
    "ring": "Turntable ring",
    "practise": "Practice sheets",
    "cutter": "Cutter file",
}
"""What a print is called on the page, where that is not its name."""
HINTS = {
    "guide": "The loaf at full size, its cuts numbered and listed. Keep it beside you while you "
    "score.",
    "card": "The cuts in order, large enough to read with floury hands: how far to turn, how "
    "deep, which blade angle.",
    "stencil": "A stencil in one piece, to dust flour or cocoa through. Cut out the grey parts.",
    "drape": "The pattern at its true length, on paper that folds along its darts and lies on the "
    "dome.",
    "ring": "Degrees, and where each figure begins. It goes under the loaf on the turntable.",
    "practise": "Strokes at full size to trace and then to do freehand, the hardest of this "
    "pattern among them. With a pen first, then with a blade.",
    "cutter": "Plain lines in millimetres for a craft cutter or a laser, saved as SVG or DXF.",
}
"""What each is for, as the page says it."""
FOLLOWED = {"stencil": "stencil", "cuts": "guide"}
"""What a cutter follows, and the print that draws it."""
FOLLOW = Option(
    "follow",
    "choice",
    "What the machine follows.",
    choices=tuple(FOLLOWED),
    default="stencil",
    label="What the machine follows",
)


ONE_PLATE = ("layer", "part")
"""Options that choose one plate, for files that hold no more; a PDF holds them all."""


def offered() -> JsonObject:
    """List the prints as data: names, what they are, the forms a file is kept in, options."""
    prints = [
        _offer(
            row.name,
            row.help,
            ("pdf",),
            tuple(each for each in row.options if each.name not in ONE_PLATE),
        )
        for row in PRINTS.values()
        if row.on_page
    ]
    cutter = (FOLLOW, *PRINTS["stencil"].options)
    lines = _offer("cutter", "Plain lines for a cutter or laser.", ("svg", "dxf"), cutter)
    return {"prints": [*prints, lines | {"paper": False}]}


def _offer(name: str, help: str, forms: tuple[str, ...], options: tuple[Option, ...]) -> JsonObject:
    shown = [asdict(each) | {"key": each.key} for each in options if each.on_page]
    paper = any(each.name == "paper" for each in options)
    title = TITLES.get(name, name.capitalize())
    help = HINTS.get(name, help)
    return {
        "name": name, "title": title, "help": help, "forms": forms, "paper": paper, "options": shown
    }  # fmt: skip
