import io

import numpy as np
import pytest
import shapely
from PIL import Image
from support.drawing_layouts import cut, make_layout

from scorecraft.drawing.bloom.view import MARGIN_MM, view
from scorecraft.drawing.pdf import png
from scorecraft.drawing.picture import Shape, walk
from scorecraft.drawing.plan import cut_plans
from scorecraft.drawing.svg import svg
from scorecraft.errors import UsageError


def cuts_of(picture):
    shapes = [each for each in walk(picture.items) if isinstance(each, Shape)]
    return {int(each.data["cut"]): each for each in shapes if each.data}


def test_from_the_top_every_cut_lies_on_its_plan(petal_layout):
    picture = view(petal_layout, "top")
    shown = cuts_of(picture)
    assert set(shown) == set(range(len(petal_layout.cuts)))
    centre = np.array([picture.width_mm, picture.height_mm]) / 2
    for index, plan in enumerate(cut_plans(petal_layout)):
        expected = shapely.LineString(centre + plan * [1, -1])
        (line,) = shown[index].lines
        assert shapely.hausdorff_distance(expected, shapely.LineString(line)) < 0.6
        assert expected.buffer(0.05).covers(shapely.LineString(line))


def test_from_the_front_the_near_flank_is_seen_and_the_far_one_is_not():
    """Two cuts at the same height on either flank of a round loaf, and one across the crown."""
    lines = [[[-20, -100], [20, -100]], [[-20, 100], [20, 100]], [[0, -60], [0, 60]]]
    shown = cuts_of(view(make_layout([cut(each) for each in lines]), "front"))
    assert set(shown) == {0, 2}
    (over,) = shown[2].lines
    top = cuts_of(view(make_layout([cut(each) for each in lines]), "top"))[2].lines[0]
    assert np.ptp(over[:, 1]) < 0.8 * np.ptp(top[:, 1])


def test_the_side_shows_the_right_flank():
    lines = [[[100, -20], [100, 20]], [[-100, -20], [-100, 20]]]
    assert set(cuts_of(view(make_layout([cut(each) for each in lines]), "side"))) == {0}


@pytest.mark.parametrize("which", ["top", "front", "side", 45, "70deg"])
def test_everything_lies_within_the_loaf_and_the_paper(long_layout, which):
    picture = view(long_layout, which)
    shapes = [each for each in walk(picture.items) if isinstance(each, Shape)]
    crust = np.concatenate([each.lines[0] for each in shapes if each.css == "crust"])
    low, high = crust.min(axis=0), crust.max(axis=0)
    assert low == pytest.approx((MARGIN_MM, MARGIN_MM), abs=0.2)
    assert high == pytest.approx(
        (picture.width_mm - MARGIN_MM, picture.height_mm - MARGIN_MM), abs=0.2
    )
    for each in cuts_of(picture).values():
        points = np.concatenate(each.lines)
        assert (points >= low - 0.1).all() and (points <= high + 0.1).all()


def test_deeper_cuts_are_wider_and_on_top(petal_layout):
    shown = cuts_of(view(petal_layout, "top"))
    depths = [petal_layout.cuts[index].depth_mm for index in shown]
    widths = [each.ink.width for each in shown.values()]
    assert depths == sorted(depths) and widths == sorted(widths) and widths[0] < widths[-1]


def test_dough_is_pale_and_darker_away_from_the_light(petal_layout):
    data = png(view(petal_layout, "front"), dpi=60)
    pixels = np.asarray(Image.open(io.BytesIO(data)).convert("RGB")).astype(int)
    high, wide, _ = pixels.shape
    left, right = (pixels[int(0.6 * high), int(part * wide)].sum() for part in (0.15, 0.87))
    assert left > right + 60
    assert pixels[int(0.7 * high), wide // 2].min() > 120


def test_the_width_of_the_picture_can_be_chosen(petal_layout):
    picture = view(petal_layout, "front", width_mm=70.0)
    full = view(petal_layout, "front")
    assert picture.width_mm == pytest.approx(70.0)
    assert picture.height_mm / 70.0 == pytest.approx(full.height_mm / full.width_mm)


def test_the_same_view_is_the_same_text(small_layout):
    assert svg(view(small_layout, 30)) == svg(view(small_layout, 30))


def test_an_unknown_view_is_refused(small_layout):
    with pytest.raises(UsageError, match='viewed from "back"'):
        view(small_layout, "back")
