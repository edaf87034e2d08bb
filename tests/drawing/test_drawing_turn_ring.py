import numpy as np
import pytest
from support.drawing_layouts import cut, make_layout, turned

from scorecraft.drawing.picture import Label, Shape, walk, words
from scorecraft.drawing.templates.turn_ring import starts as starts_of
from scorecraft.drawing.templates.turn_ring import told, turn_ring
from scorecraft.groups import groups


def rays(*degrees, **more):
    return [
        cut(turned([[0, 30], [0, 80]], at), figure=index, **more)
        for index, at in enumerate(degrees)
    ]


def starts(layout, order=()):
    return starts_of(layout, groups(layout, order))


def test_figures_begin_at_their_turntable_angles():
    marks, names = starts(make_layout(rays(0, 45, 200.2)))
    assert [mark.degrees for mark in marks] == [0, 45, 200]
    assert names == {(1,): "slash"}


def test_figures_at_one_angle_share_a_mark():
    other = [cut(turned([[0, 40], [0, 60]], 90), "star", figure=9, family=1)]
    marks, names = starts(make_layout(rays(90, 270) + other))
    assert [(mark.degrees, mark.numbers) for mark in marks] == [(90, (1, 2)), (270, (1,))]
    assert names == {(1,): "slash", (2,): "star"}


def test_the_numbers_are_those_of_the_guide_one_for_every_part_of_a_figure():
    """Petals are cut rib last: the guide numbers their edges and veins first."""
    petal = [
        cut([[0, y], [0, y + 9]], "petal", part, 9, 1) for y, part in ((30, "rib"), (50, "edge"))
    ]
    layout = make_layout(rays(90) + petal)
    marks, names = starts(layout, [2, 0, 1])
    assert [(mark.degrees, mark.numbers) for mark in marks] == [(0, (1, 3)), (90, (2,))]
    assert names == {(1, 3): "petal", (2,): "slash"}
    assert told(marks, names)[1] == "No. 1, 3, petal, 1 start: 0°"


def test_a_figure_at_the_crown_has_no_angle():
    assert starts(make_layout([cut([[0, 0], [0, 50]])]))[0] == ()


def test_a_start_just_before_twelve_is_zero_not_360():
    assert [mark.degrees for mark in starts(make_layout(rays(359.9)))[0]] == [0]


@pytest.fixture(scope="module")
def figure():
    layout = make_layout(rays(0, 120, 240))
    return turn_ring(layout, groups(layout))


def test_the_ring_encloses_the_loaf(figure):
    (band,) = [group for group in figure.items if group.name == "ring"]
    radii = [np.ptp(shape.lines[0][:, 0]) / 2 for shape in band.items]
    assert radii[0] == pytest.approx(114, abs=0.01) and sorted(radii) == radii
    assert figure.width_mm == pytest.approx(2 * radii[-1] + 4, abs=0.01)


def test_marks_point_at_the_loaf_where_figures_begin(figure):
    (group,) = [group for group in figure.items if group.name == "starts"]
    centre = np.array([figure.width_mm, figure.height_mm]) / 2
    tips = [shape.lines[0][0] - centre for shape in group.items if isinstance(shape, Shape)]
    angles = [np.degrees(np.arctan2(x, -y)) % 360 for x, y in tips]
    assert angles == pytest.approx([0, 120, 240], abs=1e-6)
    assert [np.hypot(*tip) for tip in tips] == pytest.approx([114] * 3)


def test_degrees_are_written_all_around(figure):
    texts = words(figure.items)
    assert {f"{degree}°" for degree in range(0, 360, 30)} <= set(texts)
    assert {"10", "350"} <= set(texts)
    upright = [each for each in walk(figure.items) if isinstance(each, Label)]
    assert all(np.cos(each.turn) > -1e-9 for each in upright)


def test_what_is_told():
    marks, names = starts(make_layout(rays(0, 120)))
    assert told(marks, names)[1] == "No. 1, slash, 2 starts: 0°, 120°"
