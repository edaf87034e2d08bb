"""A drawing on paper, told without any file format.

Lengths are mm, x to the right and y DOWN from the top left corner of the paper; angles are
radians, clockwise as seen. Colours are `#rrggbb`. What is later in `items` lies on top.
"""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Literal, TypeAlias

import numpy as np

from scorecraft.arrays import Line, Pixels
from scorecraft.drawing.paint import Paint
from scorecraft.drawing.paint import moved as moved_paint
from scorecraft.frozen import dataclass, field, replace

BLACK = "#000000"
WHITE = "#ffffff"
NO_DATA: Mapping[str, str] = {}


@dataclass(frozen=True, slots=True)
class Ink:
    """How a line is stroked: width and dashes in mm (dash, gap, ...; a 0 dash makes a dot)."""

    width: float
    color: str = BLACK
    dash: tuple[float, ...] = ()
    opacity: float = 1.0
    cap: Literal["round", "butt", "square"] = "round"
    join: Literal["round", "miter", "bevel"] = "round"


@dataclass(frozen=True, slots=True, eq=False)
class Shape:
    """Lines or areas drawn in one go; filled by the even-odd rule, so inner subpaths are holes.

    `css` and `data` (`{"cut": "12"}` becomes `data-cut="12"`) are for a live page; `title` is
    shown there when the pointer rests on the shape.
    """

    lines: tuple[Line, ...]
    closed: bool = False
    ink: Ink | None = None
    fill: Paint | None = None
    fill_opacity: float = 1.0
    css: str = ""
    data: Mapping[str, str] = field(default_factory=lambda: NO_DATA)
    title: str = ""


@dataclass(frozen=True, slots=True)
class Label:
    """One line of text; `size` is the em in mm, `level` what of the text stands at `at`.

    `middle` is half the height of a capital, `top` its upper edge.
    """

    text: str
    at: tuple[float, float]
    size: float
    anchor: Literal["start", "middle", "end"] = "start"
    level: Literal["baseline", "middle", "top"] = "baseline"
    bold: bool = False
    color: str = BLACK
    turn: float = 0.0
    css: str = ""
    data: Mapping[str, str] = field(default_factory=lambda: NO_DATA)


@dataclass(frozen=True, slots=True, eq=False)
class Layer:
    """Things that belong together: a named layer.

    With `clip`, closed rings, only what lies inside one of them is shown.
    """

    name: str
    items: tuple["Item", ...]
    clip: tuple[Line, ...] = ()
    css: str = ""
    data: Mapping[str, str] = field(default_factory=lambda: NO_DATA)


Item: TypeAlias = Shape | Label | Layer


@dataclass(frozen=True, slots=True, eq=False)
class Picture:
    """A sheet of paper with a drawing; `title` and `desc` say in words what is to be seen.

    A `photo` fills the sheet, below all items.
    """

    width_mm: float
    height_mm: float
    title: str
    desc: str = ""
    items: tuple[Item, ...] = ()
    css: str = ""
    photo: Pixels | None = None


def line(x1: float, y1: float, x2: float, y2: float) -> Line:
    """Return the straight line between two points as a (2, 2) array."""
    return np.array([[x1, y1], [x2, y2]], dtype=np.float64)


def box(x: float, y: float, width: float, height: float) -> Line:
    """Return the four corners of an upright rectangle, for a closed shape."""
    right, bottom = x + width, y + height
    return np.array([[x, y], [right, y], [right, bottom], [x, bottom]], dtype=np.float64)


def ring(x: float, y: float, radius: float, *, chord_mm: float = 0.003) -> Line:
    """Return a circle as a closed polyline whose chords stay `chord_mm` close, unrepeated end."""
    around = max(12, int(np.ceil(np.pi / np.sqrt(2 * chord_mm / max(radius, 2 * chord_mm)))))
    angle = np.arange(around) * (2 * np.pi / around)
    return np.column_stack([x + radius * np.cos(angle), y + radius * np.sin(angle)])


def placed(item: Item, dx: float, dy: float, scale: float = 1.0) -> Item:
    """Return the item scaled about the paper's corner (ink and letters too), then shifted (mm)."""
    if isinstance(item, Layer):
        return replace(
            item,
            items=tuple(placed(each, dx, dy, scale) for each in item.items),
            clip=tuple(_moved(one, dx, dy, scale) for one in item.clip),
        )
    if isinstance(item, Label):
        x, y = item.at
        return replace(item, at=(x * scale + dx, y * scale + dy), size=item.size * scale)
    return replace(
        item,
        lines=tuple(_moved(one, dx, dy, scale) for one in item.lines),
        ink=item.ink and _scaled_ink(item.ink, scale),
        fill=moved_paint(item.fill, dx, dy, scale),
    )


def _moved(points: Line, dx: float, dy: float, scale: float) -> Line:
    moved: Line = points * scale + np.array([dx, dy])
    return moved


def _scaled_ink(ink: Ink, scale: float) -> Ink:
    return replace(ink, width=ink.width * scale, dash=tuple(d * scale for d in ink.dash))


def walk(items: Iterable[Item]) -> Iterator[Item]:
    """Yield every item, layers before what is in them, in drawing order."""
    for item in items:
        yield item
        if isinstance(item, Layer):
            yield from walk(item.items)


def words(items: Sequence[Item]) -> tuple[str, ...]:
    """List the texts of all labels in drawing order."""
    return tuple(item.text for item in walk(items) if isinstance(item, Label))
