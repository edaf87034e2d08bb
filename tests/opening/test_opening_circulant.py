"""A pattern with an n-fold turn gives the same answer by its parts as whole."""

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.opening import solve
from scorecraft.opening.circulant import turn_of
from scorecraft.opening.panels import panels

AREA = np.pi * 150**2


def turned(line, angle):
    c, s = np.cos(angle), np.sin(angle)
    return line @ np.array([[c, s], [-s, c]])


def crown(count):
    """Leaf-like figures: two outlines that meet, a midrib and a vein that starts on it."""
    across = np.sin(np.linspace(0, np.pi, 30))
    up = np.linspace(26, 84, 30)
    leaf = [
        np.column_stack([np.zeros(2), [28.0, 78.0]]),
        np.column_stack([9 * across, up]),
        np.column_stack([-9 * across, up]),
        np.array([[0.0, 45.0], [4.0, 52.0]]),
    ]
    lines = [turned(line, 2 * np.pi * k / count) for k in range(count) for line in leaf]
    return lines, np.tile([9.0, 6.0, 6.0, 3.0], count)


def assert_same(lines, depth, **options):
    parts = solve(lines, depth, panel_mm=4.0, **options)
    whole = solve(lines, depth, panel_mm=4.0, turn=1, **options)
    scale = np.abs(whole.gap_mm).max()
    for name in ("gap_mm", "slide_mm", "mouth_mm"):
        ours, theirs = getattr(parts, name), getattr(whole, name)
        np.testing.assert_allclose(ours, theirs, atol=1e-9 * scale, rtol=0)
    np.testing.assert_allclose(parts.tension_left, whole.tension_left, atol=1e-9)


@pytest.mark.parametrize("count", [2, 3, 5, 8, 9])
def test_even_growth(count):
    assert_same(*crown(count), strain=(0.1, 0.1, 0), area_mm2=AREA)


@pytest.mark.parametrize("strain", [(0.1, 0.02, 0.03), (0.1, 0.1, 0), (0.12, -0.09, 0.0)])
def test_any_growth(strain):
    """The last one presses some of the cuts shut, which no longer has the turn."""
    assert_same(*crown(6), strain=strain, area_mm2=None)
    assert_same(*crown(6), strain=strain, area_mm2=AREA)


def test_growth_that_differs_from_place_to_place():
    def strain(points):
        return np.column_stack(
            [0.1 + 0.0003 * points[:, 0], 0.08 + 0 * points[:, 1], 0 * points[:, 0]]
        )

    assert_same(*crown(5), strain=strain, area_mm2=AREA)


@pytest.mark.parametrize("count", [2, 3, 4, 5, 7, 12])
def test_turn_is_found(count):
    lines, depth = crown(count)
    parts = panels(lines, 4.0)
    turn = turn_of(parts, depth[parts.line])
    assert turn is not None
    assert turn.count == count
    np.testing.assert_array_equal(np.sort(turn.order.ravel()), np.arange(len(parts)))


def test_turn_about_any_centre():
    lines, depth = crown(5)
    parts = panels([line + np.array([40.0, -7.0]) for line in lines], 4.0)
    assert turn_of(parts, depth[parts.line]).count == 5


def test_cross_turns_by_a_quarter_though_its_bars_run_on():
    bars = [turned(np.array([[-40.0, 0], [40, 0]]), k * np.pi / 2) for k in range(2)]
    parts = panels(bars, 4.0)
    assert turn_of(parts, np.full(len(parts), 8.0)).count == 4


def test_other_depth_of_one_leaf_leaves_no_turn():
    lines, depth = crown(6)
    parts = panels(lines, 4.0)
    panel_depth = depth[parts.line]
    panel_depth[parts.of_line[0]] = 7.0
    assert turn_of(parts, panel_depth) is None
    with pytest.raises(UsageError, match="1/6 of a turn"):
        solve(lines, np.append(depth[:-1], 4.0), strain=(0.1, 0.1, 0), turn=6)


def test_mirror_image_is_no_turn():
    line = np.array([[10.0, 5], [30, 9]])
    parts = panels([line, line * [-1, 1]], 4.0)
    assert turn_of(parts, np.full(len(parts), 8.0)) is None
