"""The full-size plan of a loaf with its cuts, marks, ring of degrees and cut numbers."""

from collections.abc import Mapping, Sequence, Set

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.curves import length
from scorecraft.cuts import Layout
from scorecraft.drawing.arrow import arrow
from scorecraft.drawing.crown import crown_cross, crown_mark
from scorecraft.drawing.guide.dial import dial
from scorecraft.drawing.guide.numbers import Number, frame, place_numbers
from scorecraft.drawing.inks import MARK_INK, NUMBER_MM, RIM_INK, cut_ink
from scorecraft.drawing.lean import lean_bars
from scorecraft.drawing.picture import BLACK, Ink, Item, Label, Layer, Shape, ring
from scorecraft.drawing.plan import cut_layer, cut_plans, mark_plans, on_paper, rim_plans
from scorecraft.groups import Group
from scorecraft.units import to_turntable

LABELLED_AT = np.radians(15)
"""Of many copies the one nearest to half past twelve carries the number."""
MOST_TRIED = 8
LONG_PART = 0.7
"""Of a figure's cuts, so many that are nearly as long as the longest may carry the number."""
Centre = tuple[float, float]


def guide_plan(
    layout: Layout, groups: Sequence[Group], centre: Centre, against: Set[int] = frozenset()
) -> Layer:
    """Draw the plan at full size, the crown at `centre` (paper mm).

    Cuts `against` their drawn direction are shown to be pulled that way.
    """
    cuts = [on_paper(each, centre) for each in cut_plans(layout)]
    marks = tuple(on_paper(each, centre) for each in mark_plans(layout))
    rims = tuple(on_paper(rim, centre) for rim in rim_plans(layout.loaf))
    numbers = _numbers(layout, groups, cuts, marks, centre)
    return Layer(
        "plan",
        (
            Layer("string lines", (Shape(marks, ink=MARK_INK),) if marks else ()),
            cut_layer(layout, cuts, lambda depth_mm, line: cut_ink(depth_mm, length(line))),
            Layer("rim", (Shape(rims, closed=True, ink=RIM_INK),)),
            crown_mark(centre),
            dial(layout.loaf, centre),
            Layer("lean", tuple(lean_bars(layout, cuts, avoid=_kept_free(numbers, centre)))),
            Layer("pull", tuple(_arrows(layout, cuts, numbers, against))),
            Layer("numbers", tuple(_number_items(numbers))),
        ),
    )


def representatives(
    layout: Layout, group: Group, lines: Sequence[Line], centre: Centre
) -> list[int]:
    """Choose the cuts that may carry a group's number: of the figure nearest to 12:30.

    All groups of one statement choose the same figure.
    """
    family = layout.cuts[group.cuts[0]].family
    figures: dict[int, list[int]] = {}
    for index, cut in enumerate(layout.cuts):
        if cut.family == family:
            figures.setdefault(cut.figure, []).append(index)
    own = set(group.cuts)
    having = [each for each in figures.values() if own.intersection(each)]
    nearest = min(having, key=lambda each: _turn_off(np.vstack([lines[i] for i in each]), centre))
    candidates = [index for index in nearest if index in own]
    longest = max(length(lines[index]) for index in candidates)
    long = [index for index in candidates if length(lines[index]) >= LONG_PART * longest]
    return sorted(long, key=lambda index: _turn_off(lines[index], centre))[:MOST_TRIED]


def _turn_off(points: Line, centre: Centre) -> float:
    """How far the middle of points on paper is turned from the place of the numbers (radians)."""
    x, y = points.mean(axis=0) - np.array(centre)
    turn = to_turntable(float(np.arctan2(-y, x)))
    return float(abs((turn - LABELLED_AT + np.pi) % (2 * np.pi) - np.pi))


def _numbers(
    layout: Layout,
    groups: Sequence[Group],
    cuts: Sequence[Line],
    others: Sequence[Line],
    centre: Centre,
) -> Mapping[str, Number]:
    """Place the numbers within the rim, clear of cuts, marks, rim and crown."""
    wanted = [(str(group.number), representatives(layout, group, cuts, centre)) for group in groups]
    rims = [on_paper(rim, centre) for rim in rim_plans(layout.loaf)]
    edges = [np.vstack([rim, rim[:1]]) for rim in rims]
    obstacles = [*others, *edges, *crown_cross(centre)]
    return place_numbers(wanted, cuts, obstacles, shapely.Polygon(rims[0], rims[1:]))


def _number_items(numbers: Mapping[str, Number]) -> list[Item]:
    items: list[Item] = []
    for number in numbers.values():
        start = number.leader[0]
        dot = Shape((ring(float(start[0]), float(start[1]), 0.6),), closed=True, fill=BLACK)
        items += [Shape((number.leader,), ink=Ink(0.18)), dot]
        items.append(Label(number.text, number.at, NUMBER_MM, "middle", "middle", bold=True))
    return items


def _texts(numbers: Mapping[str, Number]) -> shapely.Geometry:
    """Cover the numbers with their frames."""
    return shapely.union_all(
        [frame(each.text, np.array([each.at]))[0] for each in numbers.values()]
    )


def _kept_free(numbers: Mapping[str, Number], centre: Centre) -> shapely.Geometry:
    """Cover the numbers and the crown."""
    return shapely.union(_texts(numbers), shapely.MultiLineString(list(crown_cross(centre))))


def _arrows(
    layout: Layout, cuts: Sequence[Line], numbers: Mapping[str, Number], against: Set[int]
) -> list[Shape]:
    """Show on the numbered cuts which way the blade is pulled; what parts the dough is not."""
    texts = _texts(numbers)
    shown = [each.cut for each in numbers.values() if not layout.cuts[each.cut].severs]
    return [arrow(cuts[cut][::-1] if cut in against else cuts[cut], texts) for cut in shown]
