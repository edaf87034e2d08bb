"""The tray of figures: every motif of the language, to be laid on the dough."""

from functools import lru_cache

import numpy as np

from scorecraft.check_data import rounded
from scorecraft.drawing.plan import on_paper
from scorecraft.drawing.svg import path_data
from scorecraft.editing.making import tray, usual
from scorecraft.json_data import JsonObject
from scorecraft.language.words import WORDS

FIRST = ("slash", "arc", "leaf", "petal", "wheat", "star")
"""What bakers cut most stands first; the others follow as in the table of words."""


FIRST_STEPS = (
    ("Tap Leaf, then tap the dough two thirds of the way to the edge.", "new"),
    ("Drag the dot beyond the leaf’s tip until it is about 50 mm long.", "handle"),
    ("Drag the ringed dot: turn the leaf to about 60°.", "turn"),
    ("Tap Repeat, then × 6: six leaves around the crown.", "repeat"),
    ("A loaf needs room to spring: tap Depth, then 6mm.", "set"),
    ("A wreath. Save it, then print its guide. Undo goes back step by step.", ""),
)
"""The first design: what to do, and the gesture that has done it."""


@lru_cache(maxsize=1)
def tray_data() -> JsonObject:
    """Tell every figure of the tray: its word, what it is, and its lines on the dough.

    Lines are as it is laid on a loaf that is not small, SVG path data in mm with y down, around
    where it stands; `box` is what they fill: left, top, width, height (mm).
    """
    names = tray()
    return {
        "first": [{"text": text, "done": done} for text, done in FIRST_STEPS],
        "figures": [figure_data(each) for each in (*FIRST, *(n for n in names if n not in FIRST))],
    }


def figure_data(word: str) -> JsonObject:
    """Tell one figure."""
    lines = [on_paper(line, (0.0, 0.0)) for line in usual(word, {})]
    every = np.vstack(lines)
    low, high = every.min(axis=0), every.max(axis=0)
    return {
        "word": word,
        "title": word.replace("_", " ").capitalize(),
        "help": WORDS[word].help,
        "path": path_data(lines, closed=False),
        "box": [rounded(float(each)) for each in (*low, *(high - low))],
    }
