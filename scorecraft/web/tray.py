"""The tray of figures: every motif of the language, to be laid on the dough."""

from functools import lru_cache

import numpy as np

from scorecraft.check_data import rounded
from scorecraft.drawing.plan import cut_plans, on_paper
from scorecraft.drawing.svg import path_data
from scorecraft.expand import expand
from scorecraft.json_data import JsonObject
from scorecraft.language.keys import Word
from scorecraft.language.parse import parse
from scorecraft.language.words import MOTIFS

LOAF = "loaf round width 320mm height 95mm\n"
"""A loaf wide enough for every example to be drawn on."""
FIRST = ("slash", "arc", "leaf", "petal", "wheat", "star")
"""What bakers cut most stands first; the others follow as in the table of words."""
NOT_LAID = ("path", "trace")
"""What is drawn with the finger, or needs a file of its own."""


@lru_cache(maxsize=1)
def tray_data() -> JsonObject:
    """Tell every figure of the tray: its word, what it is, and its lines on the dough.

    Lines are those of its example in the table of words, as SVG path data in mm with y down,
    around where it stands; `box` is what they fill: left, top, width, height (mm).
    """
    rows = {word.name: word for word in MOTIFS if word.name not in NOT_LAID}
    names = [*FIRST, *(name for name in rows if name not in FIRST)]
    return {"figures": [figure_data(rows[name]) for name in names]}


def figure_data(word: Word) -> JsonObject:
    """Tell one figure."""
    text = LOAF + word.example + "\n"
    layout = expand(parse(text, "tray"), text)
    lines = [on_paper(line, (0.0, 0.0)) for line in cut_plans(layout)]
    every = np.vstack(lines)
    low, high = every.min(axis=0), every.max(axis=0)
    return {
        "word": word.name,
        "help": word.help,
        "path": path_data(lines, closed=False),
        "box": [rounded(float(each)) for each in (*low, *(high - low))],
    }
