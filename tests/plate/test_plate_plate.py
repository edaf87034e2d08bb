import re

import numpy as np
import pytest
import shapely
from support.plate_layouts import circle, cut, layout

from scorecraft.designing import make
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.plate.faults import faults, too_thin
from scorecraft.plate.plate import make_plate
from scorecraft.plate.sizes import Sizes


@pytest.fixture(scope="module")
def crown():
    return make("leaf-crown").layout


@pytest.fixture(scope="module")
def crown_plate(crown):
    return make_plate(crown)


def opened(polygon, width_mm):
    """Open a polygon by a disc, the other way round than the plate was made."""
    small = shapely.buffer(polygon, -(width_mm / 2 - 0.02), quad_segs=16)
    return small, shapely.buffer(small, width_mm / 2 - 0.01, quad_segs=16)


def test_the_crown_is_one_piece_with_webs_everywhere(crown_plate):
    polygon = crown_plate.polygon
    assert polygon.geom_type == "Polygon" and polygon.is_valid
    core, again = opened(polygon, crown_plate.sizes.web_mm)
    assert core.geom_type == "Polygon"
    assert polygon.difference(again).area < 0.2
    assert faults(polygon, crown_plate.bridges, crown_plate.sizes) == []


def test_the_crown_is_as_symmetric_as_its_pattern(crown_plate):
    slots = shapely.union_all(crown_plate.slots)
    turned = shapely.affinity.rotate(slots, 90, origin=(0, 0))
    assert slots.symmetric_difference(turned).area < 0.02 * slots.area


def test_slots_lie_over_their_cuts(crown, crown_plate):
    lines = [crown.loaf.sheet_to_plan(one.line) for one in crown.cuts]
    near = shapely.buffer(shapely.MultiLineString(lines), crown_plate.widths[1] / 2 + 0.1)
    assert shapely.union_all(crown_plate.slots).difference(near).area < 0.01


def test_the_plate_has_its_notch_tab_cross_hair_and_rim(crown_plate):
    polygon = crown_plate.polygon
    left, low, right, high = polygon.bounds
    assert (left, right, high) == pytest.approx((-126, 126, 126), abs=0.1)
    assert not polygon.contains(shapely.Point(0, 122)) and polygon.contains(shapely.Point(0, 117))
    assert polygon.contains(shapely.Point(15, low + 5)) and low < -150
    assert not polygon.contains(shapely.Point(3, 0)) and polygon.contains(shapely.Point(0, 0))
    rim = np.concatenate(crown_plate.score_lines)
    assert np.hypot(*rim.T) == pytest.approx(110, abs=0.05)


def test_mirrored_is_the_plate_turned_over(crown, crown_plate):
    over = make_plate(crown, mirrored=True)
    back = shapely.affinity.scale(over.polygon, -1, 1, origin=(0, 0))
    assert back.symmetric_difference(crown_plate.polygon).area < 1e-6
    assert over.mirrored and not crown_plate.mirrored


def test_only_some_parts(crown):
    made = make_plate(crown, only=["midrib"])
    assert made.shown == ("leaf midrib", "bud midrib")
    assert len(made.slots) == 16


def test_too_wide_a_slot_is_refused_with_one_that_works():
    rings = layout(circle(60, word="outer"), circle(54, word="inner"))
    both = ["outer", "inner"]
    with pytest.raises(ScorecraftError) as error:
        make_plate(rings, slot_mm=12.0, only=both)
    assert "12 mm" in error.value.message and "only 0%" in error.value.message
    works = float(re.search(r"--slot ([\d.]+)mm", error.value.hint).group(1))
    made = make_plate(rings, slot_mm=works, only=both)
    assert works > 4 and made.shown == ("outer", "inner")
    assert faults(made.polygon, made.bridges, made.sizes) == []
    with pytest.raises(ScorecraftError):
        make_plate(rings, slot_mm=works + 0.2, only=both)


def test_a_bridge_that_finds_no_room_is_refused_with_one_that_does():
    small = layout(circle(9), circle(60))
    with pytest.raises(ScorecraftError) as error:
        make_plate(small, bridge_mm=20.0)
    assert "fall out" in error.value.message and "o'clock" in error.value.message
    works = float(re.search(r"--bridge ([\d.]+)mm", error.value.hint).group(1))
    assert make_plate(small, bridge_mm=works).bridges


def test_without_a_slot_finer_patterns_get_narrower_slots():
    many = [circle(2.1, 5.0 * k - 30, 0, word=f"dot {k}") for k in range(13)]
    made = make_plate(layout(*many), bridge_mm=1.6)
    assert made.sizes.slot_mm < 2.5
    assert faults(made.polygon, made.bridges, made.sizes) == []


def test_parts_that_are_too_fine_are_left_out_but_not_if_asked_for():
    crumbs = [cut([[20 + 3 * k, 0], [20 + 3 * k, 6]], "crumb") for k in range(4)]
    slashes = [cut([[-60, y], [60, y]], "slash", depth=9.0) for y in (-40, -20, 30)]
    whole = layout(*slashes, *crumbs)
    made = make_plate(whole)
    assert made.left_out == ("crumb",) and made.shown == ("slash",)
    with pytest.raises(ScorecraftError):
        make_plate(whole, only=["crumb"], slot_mm=2.5)


@pytest.mark.parametrize(
    "wrong",
    [{"slot_mm": 0.0}, {"slot_mm": -3.0}, {"slot_mm": float("nan")}, {"slot_mm": 500.0},
     {"bridge_mm": 0.5}, {"web_mm": 0.0}],
)  # fmt: skip
def test_sizes_that_cannot_be_are_refused(wrong):
    with pytest.raises(UsageError, match="no stencil"):
        make_plate(layout(circle(40)), **wrong)


def test_a_long_loaf_has_its_tab_at_the_side():
    loaf = make_loaf("long", 100.0, 300.0, 70.0)
    made = make_plate(layout(cut([[0, -90], [0, 90]]), loaf=loaf))
    left, low, right, high = made.polygon.bounds
    assert right > -left + 25 and high == pytest.approx(-low, abs=0.1)


def test_the_check_sees_what_is_wrong():
    sizes = Sizes(2.5, 3.0, 1.6)
    two = shapely.box(0, 0, 10, 10).union(shapely.box(20, 0, 30, 10))
    assert "fall apart" in faults(two, (), sizes)[0]
    neck = shapely.union_all(
        [shapely.box(0, 0, 10, 10), shapely.box(20, 0, 30, 10), shapely.box(5, 4, 25, 5.2)]
    )
    assert any("thinner" in fault for fault in faults(neck, (), sizes))
    assert max(part.area for part in too_thin(neck, 1.6)) > 10
    assert max(part.area for part in too_thin(neck, 1.1)) < 0.2


def test_a_loaf_without_cuts_has_no_plate():
    bare = make('title "Bare"\nloaf round width 200mm height 80mm\n').layout
    with pytest.raises(UsageError, match="no cuts"):
        make_plate(bare)


def test_a_slot_that_cannot_hold_its_own_web_ends_in_a_plate_or_a_word():
    """The search for its ends never came to an end."""
    layout = make("bordered-square", loaf="round width 120mm height 55mm").layout
    with pytest.raises(ScorecraftError, match="leave no room"):
        make_plate(layout, slot_mm=3.5)


def crumbs(count, length):
    return [cut([[10 * k - 50, 20], [10 * k - 50, 20 + length]], "crumb") for k in range(count)]


@pytest.mark.parametrize(("length", "slot"), [(3.0, 2.1), (2.5, 1.7), (2.0, 1.3), (1.5, 1.0)])
def test_slots_get_no_narrower_than_they_must(length, slot):
    """A stroke shorter than 1.3 slots is a dot and goes; too many are too much to lose."""
    made = make_plate(layout(cut([[-40, 0], [40, 0]]), *crumbs(8, length)))
    assert made.sizes.slot_mm == pytest.approx(slot)
    assert made.left_out == () and made.shown == ("slash", "crumb")
    assert made.widths == pytest.approx((slot, slot))


@pytest.mark.parametrize(("count", "slot"), [(2, 2.5), (4, 2.1)])
def test_a_tenth_of_a_pattern_is_left_out_before_slots_get_narrower(count, slot):
    made = make_plate(layout(cut([[-40, 0], [40, 0]]), *crumbs(count, 3.0)))
    assert made.sizes.slot_mm == pytest.approx(slot)
    assert made.left_out == (("crumb",) if slot == 2.5 else ())


@pytest.mark.parametrize(("count", "well"), [(7, True), (10, False)])
def test_most_of_a_pattern_stays_or_there_is_no_plate(count, well):
    """Crumbs too short for any slot, beside a slash of 10 mm."""
    made = layout(cut([[-5, 0], [5, 0]]), *crumbs(count, 1.2))
    if well:
        assert make_plate(made).left_out == ("crumb",)
    else:
        with pytest.raises(ScorecraftError, match="only 0% of crumb"):
            make_plate(made)


@pytest.mark.parametrize(("off", "slits"), [(8.2, 0), (8.6, 4)])
def test_the_cross_hair_goes_where_slots_leave_no_web_beside_it(off, slits):
    """It reaches 5.5 mm out; a slot 2.5 mm wide needs 1.6 mm of web before it."""
    made = make_plate(layout(cut([[off, -40], [off, 40]])))
    assert len(made.hair) == slits
    assert len(made.slots) == 1


def test_the_rim_is_scored_but_not_into_slots():
    whole = make_plate(layout(cut([[0, -40], [0, 40]])))
    assert len(whole.score_lines) == 1
    made = make_plate(layout(cut([[0, -20], [0, 140]])))
    rim = shapely.MultiLineString(list(made.score_lines))
    assert rim.distance(shapely.union_all(made.slots)) == pytest.approx(0.8, abs=0.02)
    assert rim.length == pytest.approx(2 * np.pi * 100 - 2.5 - 1.6, abs=0.3)


def test_widths_are_those_of_light_and_deep_cuts():
    made = make_plate(layout(cut([[-40, 20], [40, 20]]), cut([[-40, -20], [40, -20]], depth=9.0)))
    assert made.widths == pytest.approx((2.5, 3.5))
