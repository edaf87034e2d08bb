"""The exercises everyone needs, in the sizes, depths and blade angles of the pattern."""

import math
from collections import Counter
from collections.abc import Mapping, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.bench.steps import Work
from scorecraft.cuts import Cut, Kind, Layout, Stroke
from scorecraft.drawing.practise.exercise import Exercise, Held
from scorecraft.drawing.practise.own import held_of, lying
from scorecraft.groups import called
from scorecraft.motifs.leaf import leaf
from scorecraft.motifs.slash import slash
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DECORATIVE_DEPTH_MM,
    EAR_BLADE_DEG,
    EXPANSION_BLADE_DEG,
    EXPANSION_DEPTH_MM,
    SLANTED_DEG,
)

SHORTEST_MM, LONGEST_MM = 30.0, 45.0
"""Straight strokes are as long as the pattern's usually are, within these."""
BEND_APART_MM = 12.0
BEND = 0.18
"""How far a bend bulges, as a part of its length."""
LEAF_MM, LEAF_WIDE_MM, LEAF_VEINS, VEIN_DEG = 50.0, 22.0, 3, 38.0
"""The leaf for a pattern that has none."""


def basics(layout: Layout, made: Work, numbers: Mapping[int, int]) -> tuple[Exercise, ...]:
    """List straight strokes, slanted ones, bends and a leaf for a pattern.

    `numbers` are those of its cuts on the guide.
    """
    long = usual_length(layout)
    right = made.bench.hand == "right"
    light = _usual(layout, "decorative", right)
    deep = _usual(layout, "expansion", right)
    return (
        Exercise("Straight strokes", ("Even and straight, without a stop.", light.words), light,
                 (_down(slash(length=long, bend=0.0)),), ("",)),
        Exercise("Slanted blade", (_slanted(deep), deep.words), deep,
                 (_down(slash(length=long, bend=0.0)),), ("",)),
        Exercise("Bends", ("Both ways; let the arm swing, not the wrist.", light.words), light,
                 _bends(long), ("1", "2")),
        own_leaf(layout, made, numbers) or plain_leaf(light),
    )  # fmt: skip


def _slanted(held: Held) -> str:
    """Say what a slanted blade is for."""
    ear = held.blade_rad < math.radians(EAR_BLADE_DEG.value)
    return "Keep the blade as drawn, from dot to bar" + (": it lifts an ear." if ear else ".")


def usual_length(layout: Layout) -> float:
    """Give the usual length of the pattern's cuts (mm), in fives and within the limits."""
    usual = float(np.median(layout.lengths_mm)) if layout.cuts else LONGEST_MM
    return min(max(5.0 * round(usual / 5.0), SHORTEST_MM), LONGEST_MM)


def _usual(layout: Layout, kind: Kind, right: bool) -> Held:
    """Tell how cuts of a kind are held in the pattern: light ones upright, deep ones slanted.

    The handle leans to the side of the hand: to the `right`, or to the left.
    """
    light = kind == "decorative"
    depth = (DECORATIVE_DEPTH_MM if light else EXPANSION_DEPTH_MM).value
    blade = math.radians((DECORATIVE_BLADE_DEG if light else EXPANSION_BLADE_DEG).value)
    own = [cut for cut in layout.cuts if cut.kind == kind and (light or slanted(cut))]
    if own:
        depth = float(np.median([cut.depth_mm for cut in own]))
        blade = blade if light else min(cut.blade_rad for cut in own)
    return Held((depth, depth, depth), blade, right or light)


def slanted(cut: Cut) -> bool:
    """Tell whether a cut goes under the skin."""
    return cut.blade_rad < math.radians(SLANTED_DEG.value)


def _down(strokes: Sequence[Stroke]) -> Line:
    """Take the one stroke of a motif, from far to near."""
    line: Line = strokes[0].line[::-1]
    return line


def _bends(long: float) -> tuple[Line, ...]:
    """Draw a bend to either side, one beside the other."""
    bulge = BEND * long
    aside = np.array([BEND_APART_MM, 0.0])
    left, right = (_down(slash(length=long, bend=side * bulge)) for side in (-1, 1))
    return (left, right + aside)


def plain_leaf(light: Held) -> Exercise:
    """Draw a leaf for a pattern without one: veins, then outlines, then the midrib."""
    strokes = leaf(
        length=LEAF_MM, width=LEAF_WIDE_MM, veins=LEAF_VEINS, vein_angle=math.radians(VEIN_DEG)
    )
    parts = ("vein", "outline", "midrib")
    order = [stroke for part in parts for stroke in strokes if stroke.part == part]
    numbers = _once([str(parts.index(stroke.part) + 1) for stroke in order])
    told = (
        "Light cuts first: 1 the veins, 2 the outlines, 3 the midrib.",
        "The blade is drawn for the veins; outlines and midrib go deeper.",
    )
    return Exercise("Leaf", told, light, tuple(-stroke.line for stroke in order), numbers)


def own_leaf(layout: Layout, made: Work, numbers: Mapping[int, int]) -> Exercise | None:
    """Draw the first leaf of the pattern, in the order of cutting; None if it has none."""
    figures = [cut.figure for cut in layout.cuts if cut.word == "leaf"]
    if not figures:
        return None
    own = [index for index in made.order if layout.cuts[index].figure == figures[0]]
    deepest = max(own, key=lambda index: layout.cuts[index].depth_mm)
    strokes = lying(layout, made, own, deepest)
    counted = Counter(numbers[index] for index in own)
    parts = {numbers[index]: layout.cuts[index] for index in own}
    told = "; ".join(
        f"no. {number}, {_part(cut, counted[number])}" for number, cut in parts.items()
    )
    drawn = f"In the order of the guide: {told}. The blade is drawn for no. {numbers[deepest]}."
    held = held_of(layout, made, deepest)
    return Exercise("Leaf", (drawn,), held, strokes, _once([str(numbers[index]) for index in own]))


def _part(cut: Cut, count: int) -> str:
    """Name the strokes of a part of a leaf, and how deep they are cut."""
    return f"{called(cut, count)} {cut.depth_mm:.1f}".removesuffix(".0") + " mm deep"


def _once(numbers: Sequence[str]) -> tuple[str, ...]:
    """Keep the first of numbers that are the same."""
    return tuple(
        "" if number in numbers[:place] else number for place, number in enumerate(numbers)
    )
