import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, make_layout

from scorecraft.drawing.bloom.mouths import predicted
from scorecraft.drawing.picture import Label, Layer, Shape, walk
from scorecraft.drawing.tension.tension import LEVELS, MAP, tension_grid, tension_map


def shapes(picture, css):
    found = [each for each in walk(picture.items) if isinstance(each, Shape)]
    return [each for each in found if each.css == css]


def slope(points):
    """0 at the left of a 220 mm loaf, 1.3 at its right, told as a scalar field."""
    return 0.65 + points[:, 0] / 250


def test_every_level_is_filled_darker_drawn_and_labelled(petal_layout):
    picture = tension_map(petal_layout, slope)
    assert [each.fill for each in shapes(picture, "tension")] == [*MAP]
    assert len(shapes(picture, "contour")) == len(LEVELS)
    texts = [each.text for each in walk(picture.items) if isinstance(each, Label)]
    assert texts[: len(LEVELS)] == ["20", "40", "60", "80", "100", "120"]
    assert {"20 %", "120 %"} <= set(texts)


def test_contours_lie_where_the_field_has_their_value(petal_layout):
    picture = tension_map(petal_layout, slope)
    centre = np.array([picture.width_mm / 2, petal_layout.loaf.length_mm / 2 + 12])
    for contour, level in zip(shapes(picture, "contour"), LEVELS, strict=True):
        points = (np.concatenate(contour.lines) - centre) * [1, -1]
        inside = np.hypot(*points.T) < 95
        values = slope(petal_layout.loaf.plan_to_sheet(points[inside]))
        assert values == pytest.approx(np.full(inside.sum(), level), abs=0.012)


def test_labels_stand_on_their_contours_and_off_the_cuts(petal_layout):
    picture = tension_map(petal_layout, slope)
    (group,) = (
        each for each in picture.items if isinstance(each, Layer) and each.name == "tension"
    )
    labels = [each for each in group.items if isinstance(each, Label)]
    cuts = shapely.union_all([shapely.LineString(e.lines[0]) for e in shapes(picture, "cut")])
    for label, contour in zip(labels, shapes(picture, "contour"), strict=True):
        at = shapely.Point(label.at)
        assert shapely.MultiLineString([*contour.lines]).distance(at) < 0.2
        assert cuts.distance(at) > 2


def test_a_tensor_is_told_by_its_greatest_pull():
    layout = make_layout([cut([[-10, 0], [10, 0]])])
    turned = np.array([[0.7, 0.3], [0.3, 0.7]])
    _, values = tension_grid(layout, lambda points: np.tile(turned, (len(points), 1, 1)))
    assert values == pytest.approx(np.full(len(values), 1.0))


def test_the_field_is_asked_for_places_on_the_loaf_only(long_layout):
    asked = []
    tension_grid(long_layout, lambda points: asked.append(points) or np.ones(len(points)))
    theta = np.arctan2(asked[0][:, 1], asked[0][:, 0])
    assert (np.hypot(*asked[0].T) <= long_layout.loaf.reach(theta) + 1e-6).all()


def test_beside_a_deep_slash_the_skin_is_slack_and_beyond_its_tips_it_is_tight():
    layout = make_layout([cut([[0, -60], [0, 60]], depth=11, kind="expansion")])
    plan, values = tension_grid(layout, predicted(layout).tension_at)

    def near(x, y):
        return values[np.hypot(*(plan - [x, y]).T).argmin()]

    assert near(14, 0) < near(80, 0)
    assert near(0, 70) > near(80, 0)


def test_an_even_skin_is_one_plain_field(petal_layout):
    picture = tension_map(petal_layout, lambda points: np.full(len(points), 0.5), width_mm=100)
    assert picture.width_mm == 100
    assert len(shapes(picture, "tension")) == 3
    assert not any(each.lines for each in shapes(picture, "contour"))
