import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, ellipses, make_layout

from scorecraft.drawing.bloom.bloom import bloom
from scorecraft.drawing.bloom.ear import ear_side
from scorecraft.drawing.picture import Layer, walk


def ears(blade, wide, line=((30, -60), (30, 60))):
    layout = make_layout([cut(line, blade=blade, depth=9, kind="expansion")])
    picture = bloom(layout, ellipses([wide]))
    found = [each for each in walk(picture.items) if isinstance(each, Layer) and each.css == "ear"]
    return picture, found


@pytest.mark.parametrize(("blade", "wide", "count"), [(35, 14, 1), (90, 14, 0), (35, 2, 0)])
def test_an_ear_lifts_from_a_slanted_cut_that_opens(blade, wide, count):
    _, found = ears(blade, wide)
    assert len(found) == count
    assert all(each.data["cut"] == "0" for each in found)


def test_the_ear_stands_outside_the_opening_on_the_crowns_side():
    picture, (ear,) = ears(35, 14)
    middle = picture.width_mm / 2
    lips = [each.lines[0] for each in ear.items if each.css == "lip"]
    (opening,) = (each for each in walk(picture.items) if getattr(each, "css", "") == "opening")
    hole = shapely.Polygon(opening.lines[0])
    for lip in lips:
        area = shapely.Polygon(lip).buffer(0)
        assert area.intersection(hole).area < 0.05 * area.area
        assert abs(area.centroid.x - middle) < abs(hole.centroid.x - middle)


@pytest.mark.parametrize("turn", range(0, 360, 45))
@pytest.mark.parametrize("way", [1, -1])
def test_the_flap_is_on_the_higher_side_whatever_the_strokes_direction(turn, way):
    angle = np.radians(turn)
    out = np.array([np.cos(angle), np.sin(angle)])
    aside = np.array([-out[1], out[0]]) * way
    stroke = cut([40 * out - 30 * aside, 40 * out + 30 * aside], blade=40)
    left = np.array([-aside[1], aside[0]])
    assert ear_side(stroke) == (1 if left @ out < 0 else -1)


def test_through_the_crown_the_flap_is_on_the_left_of_a_right_handed_cutter():
    assert ear_side(cut([[0, -50], [0, 50]], blade=40)) == 1
    assert ear_side(cut([[0, 50], [0, -50]], blade=40)) == -1
