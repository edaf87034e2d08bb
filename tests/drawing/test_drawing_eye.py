import math

import numpy as np
import pytest
import shapely

from scorecraft.drawing.bloom.eye import look
from scorecraft.errors import UsageError
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import traced_outline

OVAL = make_loaf("oval", 120.0, 200.0, 80.0)


def clover():
    """A loaf of four lobes on the diagonals: from the front the near ones hide the far ones."""
    theta = np.linspace(0, math.tau, 721)[:-1]
    radius = 100 * (0.3 + 0.7 * np.sin(2 * theta) ** 2)
    rim = radius[:, None] * np.column_stack([np.cos(theta), np.sin(theta)])
    return Loaf(traced_outline(rim), 60.0, (2.0, 2.0))


def test_from_above_the_paper_shows_the_plan():
    eye = look(OVAL, "top").centred(50.0, 80.0)
    points = np.array([[0, 0], [30.0, 0], [0, 40.0]])
    assert eye.paper(points) == pytest.approx(np.array([[50, 80], [80, 80], [50, 40]]))
    assert eye.seen(points).all() and eye.window is None
    assert eye.size == pytest.approx((120.0, 200.0), abs=0.05)


@pytest.mark.parametrize("view", ["top", "front", "side", 37, "37deg"])
@pytest.mark.parametrize("scale", [1.0, 0.3])
def test_a_look_can_be_centred_and_scaled(view, scale):
    eye = look(OVAL, view, scale).centred(33.0, 44.0)
    assert eye.middle == pytest.approx((33.0, 44.0))
    full = look(OVAL, view).size
    assert eye.size == pytest.approx((full[0] * scale, full[1] * scale))


def test_the_light_falls_from_the_upper_left():
    eye = look(OVAL, "top")
    lit, crown, dark = eye.shade(np.array([[-35.0, 50], [0, 0], [35, -50]]))
    assert lit > crown > dark > 0
    assert crown == pytest.approx(1.0, abs=1e-6)


@pytest.mark.parametrize("view", ["front", "side", 60])
def test_the_window_holds_just_what_is_seen(view):
    eye = look(OVAL, view)
    rng = np.random.default_rng(1)
    points = OVAL.outline.points(500) * np.sqrt(rng.uniform(0, 0.98, 500))[:, None]
    inside = shapely.contains_xy(eye.window, points)
    clear = shapely.distance(eye.window.boundary, shapely.points(points)) > 0.2
    assert (inside == eye.seen(points))[clear].all()
    assert 50 < inside.sum() < 500


def test_a_line_over_the_crown_is_broken_off_where_it_turns_away():
    eye = look(OVAL, "front")
    line = np.column_stack([np.zeros(401), np.linspace(-95, 95, 401)])
    (shown,) = eye.lines([line])
    paper = eye.paper(line)
    assert shown[0] == pytest.approx(paper[0], abs=0.05)
    assert shown[:, 1].min() == pytest.approx(paper[:, 1].min(), abs=0.05)
    assert eye.lines([line[380:]]) == []
    assert len(look(OVAL, "top").lines([line])[0]) >= 2


def test_a_lobe_hides_the_one_behind_it():
    loaf = clover()
    eye = look(loaf, 6)
    rng = np.random.default_rng(2)
    points = loaf.outline.points(1500) * np.sqrt(rng.uniform(0, 0.98, 1500))[:, None]
    facing = loaf.normal(points) @ eye.axes[2] > 0
    hidden = facing & ~eye.seen(points)
    assert 20 < hidden.sum() < 0.5 * facing.sum()
    assert points[hidden, 1].min() > -5 and np.median(points[hidden, 1]) > 0
    shown = shapely.contains_xy(eye.window, points)
    assert (shown == eye.seen(points)).mean() > 0.97
    assert not (look(loaf, 80).seen(points) < (loaf.normal(points)[:, 2] > 0.5)).any()


def test_areas_are_cut_at_the_edge_of_what_is_seen():
    eye = look(OVAL, "front")
    band = shapely.box(-10, -90, 10, 90)
    (ring,) = eye.rings(band)
    whole = eye.rings(shapely.intersection(band, eye.window))[0]
    assert shapely.Polygon(ring).area == pytest.approx(shapely.Polygon(whole).area)
    assert eye.rings(shapely.box(-5, 85, 5, 95)) == []


def test_holes_stay_holes():
    ring = shapely.Point(0, 0).buffer(30).difference(shapely.Point(0, 0).buffer(20))
    assert len(look(OVAL, "top").rings(ring)) == 2


@pytest.mark.parametrize("view", ["below", "-1", "90.5", "inf", "", "30rad"])
def test_other_views_are_refused_with_the_known_ones(view):
    with pytest.raises(UsageError) as caught:
        look(OVAL, view)
    assert "top, front, side" in caught.value.hint
