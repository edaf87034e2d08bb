import math

import numpy as np
import pytest

from scorecraft.drawing.bloom.bloom import extent
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
    eye = look("top")
    points = np.array([[0, 0], [30.0, 0], [0, 40.0]])
    assert eye.laid(OVAL, points) == pytest.approx(points)
    assert eye.sees(OVAL, points).all()
    low, high = extent(OVAL, eye)
    assert high - low == pytest.approx((120.0, 200.0), abs=0.05)


@pytest.mark.parametrize("view", ["top", "front", "side", 37, "37deg"])
def test_the_light_falls_from_the_upper_left_of_the_paper(view):
    """And from above the bench, to the eye's side of the loaf or to its left."""
    eye = look(view)
    right, away, up = eye.light
    assert math.hypot(right, away, up) == pytest.approx(1.0)
    assert right < 0 < up and eye.up(np.array([away]), np.array([up]))[0] > 0


def test_a_line_over_the_crown_is_hidden_where_it_turns_away():
    eye = look("front")
    line = np.column_stack([np.zeros(401), np.linspace(-95, 95, 401)])
    seen = eye.sees(OVAL, line)
    last = int(np.flatnonzero(seen)[-1])
    assert seen[: last + 1].all() and 200 < last < 380
    up = eye.laid(OVAL, line)[:, 1]
    assert up[last] == pytest.approx(up.max(), abs=0.2)


def test_a_lobe_hides_the_one_behind_it():
    loaf = clover()
    rng = np.random.default_rng(2)
    points = loaf.outline.points(1500) * np.sqrt(rng.uniform(0, 0.98, 1500))[:, None]
    facing = loaf.normal(points)[:, 1] < -0.1
    hidden = facing & ~look(6).sees(loaf, points)
    assert 20 < hidden.sum() < 0.5 * facing.sum()
    assert points[hidden, 1].min() > -5 and np.median(points[hidden, 1]) > 0


@pytest.mark.parametrize("view", ["below", "-1", "90.5", "inf", "", "30rad"])
def test_other_views_are_refused_with_the_known_ones(view):
    with pytest.raises(UsageError) as caught:
        look(view)
    assert "top, front, side" in caught.value.hint
