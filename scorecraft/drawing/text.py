"""Letters as outlines, from the fonts bundled beside this file.

A print must look the same on every machine, and a renderer without the right font prints boxes
without a word. So labels are drawn as outlines; what the fonts do not hold is known beforehand
(`missing`) and printed as a question mark.
"""

import unicodedata
from collections.abc import Callable, Iterable, Mapping, Sequence
from functools import lru_cache
from pathlib import Path
from typing import TYPE_CHECKING

from scorecraft.frozen import dataclass

if TYPE_CHECKING:
    from fontTools.ttLib.ttGlyphSet import _TTGlyphSet

FONTS = Path(__file__).with_name("fonts")
CAP_HEIGHT = 0.729
"""Height of a capital of DejaVu Sans as a part of the size: 1493 of 2048 font units."""
REPLACEMENT = "?"

Point = tuple[float, float]
Segment = tuple[str, tuple[Point, ...]]
"""A piece of an outline: `M` or `L` with a point, `Q` with control and end point, `Z` alone."""


@dataclass(frozen=True, slots=True)
class Outline:
    """The filled outline of a line of text: starts at (0, 0) on the baseline, mm, y down."""

    segments: tuple[Segment, ...]
    width_mm: float


def outline(text: str, size_mm: float, *, bold: bool = False) -> Outline:
    """Draw a line of text as filled outlines (nonzero rule); `size_mm` is the size of the em."""
    face = _face(bold)
    scale = size_mm / face.units
    segments: list[Segment] = []
    at = 0.0
    for glyph, kern in face.run(printable(text)):
        at += kern
        for op, points in face.glyph(glyph):
            segments.append((op, tuple([((x + at) * scale, -y * scale) for x, y in points])))
        at += face.advance[glyph]
    return Outline(tuple(segments), at * scale)


def width_mm(text: str, size_mm: float, *, bold: bool = False) -> float:
    """Measure how far a line of text runs, in mm."""
    face = _face(bold)
    advance = sum(kern + face.advance[glyph] for glyph, kern in face.run(printable(text)))
    return advance * size_mm / face.units


def largest(text: str, room_mm: float, sizes: Sequence[float]) -> float:
    """Choose the first of sizes (mm) in which a bold line fits, or the last."""
    fits = (size for size in sizes if width_mm(text, size, bold=True) <= room_mm)
    return next(fits, sizes[-1])


def missing(text: str) -> tuple[str, ...]:
    """List the characters the fonts do not hold, each once, in order of appearance."""
    held = _face(False).characters
    return tuple(dict.fromkeys(c for c in cleaned(text) if ord(c) not in held))


def printable(text: str) -> str:
    """Clean a text and put `?` for every character the fonts do not hold."""
    held = _face(False).characters
    return "".join(c if ord(c) in held else REPLACEMENT for c in cleaned(text))


@lru_cache(maxsize=4096)
def cleaned(text: str) -> str:
    """Make a text one line without control, invisible, forbidden or lone surrogate characters."""
    one_line = " ".join(unicodedata.normalize("NFC", text).split())
    return "".join(c for c in one_line if not _invisible(c))


def _invisible(character: str) -> bool:
    """Tell control, format, surrogate and unassigned characters and variation selectors."""
    hidden = unicodedata.category(character) in {"Cc", "Cf", "Cs", "Cn"}
    return hidden or "\ufe00" <= character <= "\ufe0f"


def wrapped(text: str, room_mm: float, size_mm: float, *, bold: bool = False) -> tuple[str, ...]:
    """Break a text between words into lines no wider than `room_mm`.

    A word that is wider by itself is broken between letters.
    """
    lines: list[str] = []
    for word in _pieces(cleaned(text).split(), room_mm, size_mm, bold):
        longer = f"{lines[-1]} {word}" if lines else word
        if lines and width_mm(longer, size_mm, bold=bold) <= room_mm:
            lines[-1] = longer
        else:
            lines.append(word)
    return tuple(lines)


def _pieces(words: Iterable[str], room_mm: float, size_mm: float, bold: bool) -> Iterable[str]:
    """Yield the words, the too wide ones in pieces that fit."""
    for word in words:
        piece = ""
        for letter in word:
            if piece and width_mm(piece + letter, size_mm, bold=bold) > room_mm:
                yield piece
                piece = ""
            piece += letter
        yield piece


def shortened(text: str, room_mm: float, size_mm: float, *, bold: bool = False) -> str:
    """Cut a text that is wider than `room_mm` and end it with an ellipsis."""
    text = cleaned(text)
    if width_mm(text, size_mm, bold=bold) <= room_mm:
        return text
    while text and width_mm(f"{text}…", size_mm, bold=bold) > room_mm:
        text = text[:-1].rstrip()
    return f"{text}…"


@dataclass(frozen=True, slots=True)
class _Face:
    """A font, read once: lengths in font units, y up."""

    units: float
    characters: Mapping[int, str]
    advance: Mapping[str, float]
    kerning: Mapping[tuple[str, str], float]
    glyph: Callable[[str], tuple[Segment, ...]]

    def run(self, text: str) -> Iterable[tuple[str, float]]:
        """Yield each glyph of a text with the kerning before it."""
        before = ""
        for character in text:
            glyph = self.characters[ord(character)]
            yield glyph, self.kerning.get((before, glyph), 0.0)
            before = glyph


@lru_cache(maxsize=2)
def _face(bold: bool) -> _Face:
    from fontTools.ttLib import TTFont

    font = TTFont(FONTS / ("DejaVuSans-Bold.ttf" if bold else "DejaVuSans.ttf"))
    glyphs = font.getGlyphSet()
    return _Face(
        units=float(font["head"].unitsPerEm),
        characters=font.getBestCmap(),
        advance={name: float(wide) for name, (wide, _) in font["hmtx"].metrics.items()},
        kerning=font["kern"].kernTables[0].kernTable,
        glyph=lru_cache(maxsize=None)(lambda name: _segments(glyphs, name)),
    )


def _segments(glyphs: "_TTGlyphSet", name: str) -> tuple[Segment, ...]:
    """Read one glyph as lines and quadratic curves."""
    from fontTools.pens.basePen import decomposeQuadraticSegment
    from fontTools.pens.recordingPen import DecomposingRecordingPen

    pen = DecomposingRecordingPen(glyphs)
    glyphs[name].draw(pen)
    segments: list[Segment] = []
    for verb, points in pen.value:
        if verb == "qCurveTo":
            segments += [("Q", pair) for pair in decomposeQuadraticSegment(points)]
        else:
            op = {"moveTo": "M", "lineTo": "L", "closePath": "Z"}[verb]
            segments.append((op, tuple(points)))
    return tuple(segments)
