"""Plates for a bed that is too small: turned, refused with advice, or parted."""

import math

import numpy as np
import pytest
import shapely
from support.plate_layouts import circle, cut, layout

from scorecraft.errors import UsageError
from scorecraft.loaf.dome import make_loaf
from scorecraft.plate.parts import Limit, limit_of, parted, turned, turned_to_fit
from scorecraft.plate.plate import make_plate

LONG = make_loaf("long", 90.0, 300.0, 60.0)


@pytest.fixture(scope="module")
def made():
    return layout(circle(30), cut([[-60, -60], [60, -60]]))


@pytest.fixture(scope="module")
def plate(made):
    return make_plate(made)


@pytest.mark.parametrize(("text", "size"), [("300x200mm", (300, 200)), ("12x10in", (304.8, 254)),
                                            ("300X200", (300, 200))])  # fmt: skip
def test_the_size_of_a_plate_is_read(text, size):
    limit = limit_of(text)
    assert (limit.width_mm, limit.height_mm) == pytest.approx(size)


@pytest.mark.parametrize("text", ["", "300", "3x", "ax3mm", "30x30mm", "9000x300mm", "nanx300mm"])
def test_what_is_no_size_is_told(text):
    with pytest.raises(UsageError, match="is not the size of a plate"):
        limit_of(text)


def test_a_long_plate_lies_turned_on_a_bed():
    long = make_plate(layout(cut([[0, -90], [0, 90]]), loaf=LONG))
    assert turned_to_fit(long, LONG, Limit(400, 400)) == (long, 0)
    lying, degrees = turned_to_fit(long, LONG, Limit(400, 170))
    assert degrees == 90
    left, low, right, high = lying.polygon.bounds
    assert right - left <= 400 and high - low <= 170
    aslant, degrees = turned_to_fit(long, LONG, Limit(300, 300))
    assert 0 < abs(degrees) < 90 and aslant.polygon.area == pytest.approx(long.polygon.area)


def test_a_plate_that_is_too_large_is_refused_with_the_loaf_that_fits(plate, made):
    with pytest.raises(UsageError, match="does not hold it") as caught:
        turned_to_fit(plate, made.loaf, Limit(220, 240))
    width = float(caught.value.hint.split("up to ")[1].split(" mm")[0])
    loaf = make_loaf("round", width, None, 60.0)
    smaller = make_plate(layout(cut([[-20, 0], [20, 0]]), loaf=loaf))
    assert turned_to_fit(smaller, loaf, Limit(220, 240))[1] == 0


def test_a_plate_that_no_loaf_fits_is_refused_without_a_loaf(plate, made):
    with pytest.raises(UsageError, match="does not hold it") as caught:
        turned_to_fit(plate, made.loaf, Limit(60, 60))
    assert "loaf" not in caught.value.hint and caught.value.hint.startswith("give a larger plate")


@pytest.mark.parametrize(("size", "many"), [((300, 200), 2), ((160, 150), 4), ((125, 125), 6)])
def test_parts_are_one_piece_each_and_make_the_whole(plate, size, many):
    limit = Limit(*size)
    made = parted(plate, limit)
    assert [each.part for each in made] == [f"{k} of {many}" for k in range(1, many + 1)]
    for part in made:
        assert part.polygon.geom_type == "Polygon" and limit.turn_deg(part.polygon) is not None
    whole = shapely.union_all([part.polygon for part in made], grid_size=1e-6)
    assert whole.area == pytest.approx(plate.polygon.area, rel=1e-6)
    assert sum(len(part.slots) for part in made) >= len(plate.slots)
    for letter in {joint.letter for part in made for joint in part.joints}:
        one, other = [
            (part, joint.line) for part in made for joint in part.joints if joint.letter == letter
        ]
        assert one[1][0] == pytest.approx(other[1][0])  # they meet at the seam
        for part, line in (one, other):
            assert part.polygon.intersects(shapely.Point(line.mean(axis=0)))
            assert any(np.array_equal(line, each) for each in part.score_lines)


def test_parts_for_a_cutter_lie_as_they_fit(plate):
    limit = Limit(300, 200)
    for part in parted(plate, limit, turn=True):
        left, low, right, high = part.polygon.bounds
        assert right - left <= 300 and high - low <= 200
        assert all(
            part.polygon.boundary.distance(shapely.Point(j.line[0])) < 0.01 for j in part.joints
        )


def test_what_no_seams_can_part_is_told(plate):
    with pytest.raises(UsageError, match="no straight seam"):
        parted(plate, Limit(50, 50))


def test_a_plate_turned_and_back_is_the_same(plate):
    again = turned(turned(plate, 0.7), -0.7)
    assert again.polygon.symmetric_difference(plate.polygon).area < 1e-6
    tip = turned(plate, math.pi / 2).polygon.bounds
    assert tip == pytest.approx((-plate.polygon.bounds[3], plate.polygon.bounds[0],
                                 -plate.polygon.bounds[1], plate.polygon.bounds[2]))  # fmt: skip
