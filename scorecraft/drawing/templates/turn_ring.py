"""The turntable ring: degrees and the start angles of a pattern, to lie under the loaf."""

from collections import defaultdict
from collections.abc import Mapping, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.inks import HAIR_INK, RIM_INK, TICK_INK
from scorecraft.drawing.paper.cautions import RING
from scorecraft.drawing.paper.full_size import FullSize
from scorecraft.drawing.picture import BLACK, Ink, Item, Label, Layer, Shape, ring
from scorecraft.drawing.plan import on_paper, plan_lines, rim_plans
from scorecraft.drawing.templates.telling import RING_SIZE, RING_USE, starts_words
from scorecraft.drawing.text import CAP_HEIGHT, width_mm
from scorecraft.frozen import dataclass
from scorecraft.groups import Group, spans
from scorecraft.units import turntable_degrees

SAME_START_DEG = 0.5
"""Figures begin at one mark if they are nearer than this."""
GAP_MM = 4.0
"""Between the loaf and the ring: dough spreads."""
STARTS_MM = 9.5
"""Depth of the band of start marks; the band of degrees lies outside it."""
DEGREES_MM = 12.0
BORDER_MM = 2.0
DIGITS_MM = 3.2
LETTER_MM = 2.6
TICKS_MM = {30: 5.0, 10: 3.6, 5: 2.4, 1: 1.3}
"""Length of the tick at every so many degrees."""
LEAST_DEGREE_MM = 0.9
"""Single degrees are drawn where they are so far apart."""


@dataclass(frozen=True, slots=True)
class Start:
    """A turntable angle (degrees) at which figures begin, with the numbers of their cuts."""

    degrees: float
    numbers: tuple[int, ...]


Named = Mapping[tuple[int, ...], str]
"""What each statement of the pattern draws, by the numbers of its cuts."""


def starts(layout: Layout, numbered: Sequence[Group]) -> tuple[tuple[Start, ...], Named]:
    """Find the angles at which figures begin, rising, and what the statements draw.

    A figure begins where its first cut begins, seen from above; a figure that begins at the
    crown has no angle. The numbers are those of the guide.
    """
    numbers: dict[int, list[int]] = defaultdict(list)
    for group in numbered:
        numbers[layout.cuts[group.cuts[0]].family].append(group.number)
    names: dict[int, str] = {}
    first: dict[int, int] = {}
    for index, cut in enumerate(layout.cuts):
        names.setdefault(cut.family, cut.word)
        first.setdefault(cut.figure, index)
    lines = plan_lines(layout.loaf, [layout.cuts[index].line for index in first.values()])
    found: dict[float, set[int]] = {}
    for index, line in zip(first.values(), lines, strict=True):
        x, y = line[0]
        if np.hypot(x, y) > GAP_MM:
            at = turntable_degrees(float(np.arctan2(y, x)))
            place = (round(at / SAME_START_DEG) * SAME_START_DEG) % 360
            found.setdefault(place, set()).update(numbers[layout.cuts[index].family])
    listed = tuple(Start(at, tuple(sorted(found[at]))) for at in sorted(found))
    named = {tuple(sorted(numbers[family])): name for family, name in names.items()}
    return listed, dict(sorted(named.items()))


def turn_ring(layout: Layout, numbered: Sequence[Group]) -> FullSize:
    """Draw the ring at full size around the loaf's rim, with what its marks mean.

    `numbered` are the groups of cuts with the numbers of the guide.
    """
    plans = rim_plans(layout.loaf)
    inner = float(np.hypot(*plans[0].T).max()) + GAP_MM
    outer = inner + STARTS_MM + DEGREES_MM
    half = outer + BORDER_MM
    centre = (half, half)
    marks, names = starts(layout, numbered)
    middle = inner + STARTS_MM
    rims = tuple(on_paper(rim, centre) for rim in plans)
    items: tuple[Item, ...] = (
        Layer("ring", tuple(
            Shape((ring(*centre, radius),), closed=True, ink=ink)
            for radius, ink in ((inner, TICK_INK), (middle, HAIR_INK), (outer, Ink(0.35)))
        )),
        Layer("loaf", (Shape(rims, closed=True, ink=RIM_INK),)),
        Layer("degrees", (*_ticks(middle, centre), *_numbers(middle, centre))),
        Layer("starts", tuple(_start_items(marks, inner, centre))),
        Layer("axes", (Shape(tuple(_axes(inner, centre)), ink=HAIR_INK),)),
    )  # fmt: skip
    return FullSize(
        items,
        ring(*centre, outer),
        2 * half,
        2 * half,
        f"{layout.title}: turntable ring",
        RING_SIZE.format(across_mm=max(layout.loaf.width_mm, layout.loaf.length_mm)),
        told(marks, names),
        "ring",
        centre,
        RING,
    )


def told(marks: Sequence[Start], names: Named) -> tuple[str, ...]:
    """Say how to use the ring, and list the angles of each figure."""
    lines = [RING_USE]
    for numbers, name in names.items():
        own = [f"{mark.degrees:g}°" for mark in marks if numbers[0] in mark.numbers]
        if own:
            lines.append(starts_words(spans(numbers), name, own))
    return tuple(lines)


def _at(radius: float, degrees: float, centre: tuple[float, float]) -> Line:
    """Point on the paper at a turntable angle in degrees."""
    angle = np.radians(degrees)
    return on_paper(radius * np.array([np.sin(angle), np.cos(angle)]), centre)


def _ticks(middle: float, centre: tuple[float, float]) -> list[Shape]:
    finest = 1 if np.radians(1) * middle >= LEAST_DEGREE_MM else 5
    ticks = []
    for degree in range(0, 360, finest):
        long = next(size for every, size in TICKS_MM.items() if degree % every == 0)
        ticks.append(np.stack([_at(middle + far, degree, centre) for far in (0.0, long)]))
    return [Shape(tuple(ticks), ink=TICK_INK)]


def _numbers(middle: float, centre: tuple[float, float]) -> list[Label]:
    """Numbers every 10 degrees, read from the middle; those of every 30 are bold."""
    radius = middle + TICKS_MM[30] + 1.2 + DIGITS_MM / 2
    return [
        _around(f"{degree}°" if degree % 30 == 0 else f"{degree}", radius, degree, centre,
                DIGITS_MM / CAP_HEIGHT * (1.0 if degree % 30 == 0 else 0.8), degree % 30 == 0)
        for degree in range(0, 360, 10)
    ]  # fmt: skip


def _around(
    text: str, radius: float, degrees: float, centre: tuple[float, float], size: float, bold: bool
) -> Label:
    """Set a text along the ring; below the middle it is turned over to be read upright."""
    x, y = _at(radius, degrees, centre).tolist()
    turn = np.radians(degrees) + (np.pi if 90 < degrees % 360 < 270 else 0.0)
    return Label(text, (x, y), size, "middle", "middle", bold, BLACK, float(turn))


def _start_items(marks: Sequence[Start], inner: float, centre: tuple[float, float]) -> list[Item]:
    """Arrowheads that point at the loaf, each with the numbers of its cuts."""
    items: list[Item] = []
    last = -360.0
    for mark in marks:
        wide = np.degrees(1.1 / inner)
        tip = _at(inner, mark.degrees, centre)
        feet = [_at(inner + 3.2, mark.degrees + side * wide, centre) for side in (-1, 1)]
        items.append(Shape((np.stack([tip, *feet]),), closed=True, fill=BLACK))
        text = spans(mark.numbers)
        room = np.degrees((width_mm(text, LETTER_MM / CAP_HEIGHT) + 1.0) / inner)
        if mark.degrees - last >= room:
            size = LETTER_MM / CAP_HEIGHT
            items.append(_around(text, inner + 6.2, mark.degrees, centre, size, False))
            last = mark.degrees
    return items


def _axes(inner: float, centre: tuple[float, float]) -> list[Line]:
    """Lines across the middle at 12, 3, 6 and 9 o'clock, to lay the loaf by."""
    return [
        np.stack([_at(inner, degree, centre), _at(inner, degree + 180, centre)])
        for degree in (0, 90)
    ]
