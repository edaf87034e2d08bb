"""Figures opened as whole shapes: what they enclose, what holds within them, what is refused."""

import math

import numpy as np
import pytest
import shapely
from support.plate_layouts import circle, cut, layout

from scorecraft.errors import UsageError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.plate.faults import faults
from scorecraft.plate.plate import make_plate
from scorecraft.plate.silhouettes import BAR_EVERY_MM, silhouettes
from scorecraft.plate.sizes import Sizes

SIZES = Sizes(2.5, 3.0, 1.6)
BOX = [[-60, -15], [60, -15], [60, 15], [-60, 15], [-60, -15]]


def test_a_closed_figure_is_opened_whole_and_has_no_slots_of_its_own():
    made = layout(circle(20), cut([[40, -30], [40, 30]]))
    plate = make_plate(made, fill=["ring"])
    disc = max(plate.slots, key=lambda slot: slot.area)
    assert disc.area == pytest.approx(math.pi * 20**2, rel=0.05)  # seen from above: a little less
    assert plate.bridges == () and len(plate.slots) == 2
    assert faults(plate.polygon, plate.bridges, plate.sizes) == []


def test_shapes_within_shapes_stay_and_are_held_all_around():
    rings = [circle(radius, figure=1) for radius in (50, 30)]
    plate = make_plate(layout(*rings), fill=["ring"])
    assert plate.polygon.contains(shapely.Point(0, 10)) and len(plate.bridges) == 4
    ways = np.sort([math.atan2(*each.at) % math.tau for each in plate.bridges])
    assert np.diff(ways) == pytest.approx([math.tau / 4] * 3, abs=0.1)
    assert faults(plate.polygon, plate.bridges, plate.sizes) == []


def test_a_long_shape_has_bars_across_it():
    found = silhouettes(layout(cut(BOX, "box")), ["box"], SIZES)
    (bar,) = found.bars
    assert bar.at[0] == pytest.approx(0, abs=1) and BAR_EVERY_MM < 120
    assert np.hypot(*(bar.span[1] - bar.span[0])) == pytest.approx(30, abs=1)
    assert len(shapely.get_parts(found.area)) == 2


def test_leaves_on_a_stem_are_all_opened_alike():
    text = "loaf round width 220mm height 95mm\nwreath 54mm\n"
    area = silhouettes(expand(parse(text), text), ["wreath"], SIZES).area
    right = shapely.clip_by_rect(area, 0, -99, 99, 99)
    assert area.area > 28 * 60 and right.area == pytest.approx(area.area / 2, rel=1e-3)


def test_two_shapes_keep_a_web_between_them():
    one, other = circle(20, x=-20, figure=1), circle(20, x=20.2, figure=2)
    found = silhouettes(layout(one, other), ["ring"], SIZES)
    first, second = shapely.get_parts(found.area)
    assert first.distance(second) == pytest.approx(SIZES.web_mm, abs=0.05)


def test_what_encloses_nothing_has_wide_slots_and_what_is_not_there_is_told():
    made = layout(cut([[0, -30], [0, 30]]), circle(15, x=50, figure=1))
    usual, filled = make_plate(made), make_plate(made, fill=["slash", "ring"])
    assert (usual.unfilled, filled.unfilled) == ((), ("slash",))
    thin, wide = (
        next(slot for slot in each.slots if slot.contains(shapely.Point(0, 20)))
        for each in (usual, filled)
    )
    assert np.ptp(wide.exterior.xy[0]) == pytest.approx(1.6 * np.ptp(thin.exterior.xy[0]), rel=0.02)
    assert any(slot.contains(shapely.Point(50, 0)) for slot in filled.slots)
    with pytest.raises(UsageError, match='no cut of this pattern is called "leaf"'):
        make_plate(made, fill=["leaf"])
