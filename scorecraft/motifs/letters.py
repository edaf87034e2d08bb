"""Letters and numbers in single strokes, from an open data set of stroke fonts.

The strokes are those of the Hershey fonts (A. V. Hershey, U.S. National Bureau of Standards,
1967), as the package Hershey-Fonts gives them; LICENSE-Hershey.txt stands beside this file.
"""

from collections.abc import Iterator
from functools import cache
from unicodedata import normalize

import numpy as np

from scorecraft.arrays import Line
from scorecraft.cuts import Stroke
from scorecraft.errors import UsageError
from scorecraft.motifs.pen import drawn, joined

FONTS = {"plain": "futural", "script": "cursive"}
CAP = 21.0
"""Height of a capital in units of the data: from its cap line at 12 to its base line at -9."""
BASE = 9
MARKS = {
    "\u0300": "\\", "\u0301": "/", "\u0302": "^", "\u0303": "~", "\u0308": '"', "\u030c": "^",
    "\u030a": "o", "\u0327": ",",
}  # fmt: skip
"""The accents by the sign of the data that stands for each; others are told."""
MARK_WIDE, MARK_HIGH, MARK_UP = 6.0, 4.0, 2.5
"""The most an accent is wide and high, and how far above its letter it stands, in units."""
SPACE = 10.0
"""Width of a space between words (units): less than on paper, where there is more room."""
MOST_LETTERS = 60
DOT = 2.5
"""Shapes no larger are dots, and cut as a tick (units)."""

Glyph = tuple[tuple[Line, ...], float]
"""The strokes of a letter (units, y up from the base line, x from its left), and its width."""


def letters(*, text: str, height: float, style: str, spacing: float) -> list[Stroke]:
    """Write a text along +x, centred on the origin; a capital is `height` (mm) high.

    Strokes that run on from one another are joined and rounded. `spacing` (mm) is added between
    letters. Raises UsageError for a letter the data set does not have, and for too long a text.
    """
    if not 0 < len(text.strip()) <= MOST_LETTERS:
        raise UsageError(f"letters takes a text of 1 to {MOST_LETTERS} letters")
    pieces: list[Line] = []
    x, scale = 0.0, height / CAP
    for letter in normalize("NFC", text):
        strokes, wide = glyph(letter, style)
        pieces += [(stroke + np.array([x, 0])) * scale for stroke in strokes]
        x += (wide if letter != " " else SPACE) + spacing / scale
    middle = ((x * scale - spacing) / 2, height / 2)
    return [Stroke("stroke", line - middle) for line in drawn(joined(pieces), scale)]


@cache
def glyph(letter: str, style: str) -> Glyph:
    """Give a letter with its accents; raises UsageError where the data set has none of it."""
    base, *marks = list(normalize("NFD", letter))
    known = _font(style)
    unknown = [each for each in marks if each not in MARKS]
    if base not in known or unknown:
        raise UsageError(
            f'letters cannot write "{letter}"',
            None,
            "it knows A to Z, a to z, 0 to 9, English punctuation, and à é î ñ ö å ç š",
        )
    strokes, wide = known[base]
    if marks and base in "ij":
        strokes = tuple(each for each in strokes if each[:, 1].max() < 15)  # without its dot
    accents = [line for mark in marks for line in _accent(mark, strokes, known[MARKS[mark]][0])]
    return (*strokes, *accents), wide


def _accent(mark: str, letter: tuple[Line, ...], sign: tuple[Line, ...]) -> Iterator[Line]:
    """Scale a sign of the data to an accent, and set it over (or under) a letter."""
    points, whole = np.concatenate(sign), np.concatenate(letter)
    low, high = points.min(axis=0), points.max(axis=0)
    wide = MARK_HIGH if mark == "\u030a" else MARK_WIDE
    scale = min(np.array([wide, MARK_HIGH]) / np.maximum(high - low, 1e-9))
    at = np.array([whole[:, 0].min() + whole[:, 0].max(), 0]) / 2
    at[1] = -0.5 * MARK_UP - MARK_HIGH if mark == "\u0327" else whole[:, 1].max() + MARK_UP
    for line in sign:
        set_ = (line - ((low[0] + high[0]) / 2, low[1])) * scale
        if mark == "\u030c":
            set_ = set_ * (1, -1) + (0, MARK_HIGH)
        yield set_ + at


@cache
def _font(style: str) -> dict[str, Glyph]:
    """Read a font of the data set, by its letters."""
    from HersheyFonts import HersheyFonts

    font = HersheyFonts()
    font.load_default_font(FONTS[style])
    return {
        letter: (
            tuple(
                _undotted(np.array(stroke, dtype=np.float64), each.left_offset)
                for stroke in each.strokes
                if len(stroke) > 1
            ),
            float(each.char_width),
        )
        for letter, each in font.all_glyphs.items()
    }


def _undotted(stroke: Line, left: float) -> Line:
    """Turn y up from the base line; a dot becomes a tick."""
    line = (stroke - (left, BASE)) * (1, -1)
    low, high = line.min(axis=0), line.max(axis=0)
    if max(high - low) > DOT:
        return line
    middle, half = (low + high) / 2, np.array([0.5, 1.5])
    return np.array([middle + half, middle - half])
