"""Lines become panels that end wherever cuts cross or touch."""

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.opening.noding import noded
from scorecraft.opening.panels import TIP_INSET, LineEnds, panels, tip_inset

SLASH = np.array([[-30.0, 0.0], [30.0, 0.0]])


def ring(radius=20.0, count=97):
    angle = np.linspace(0, 2 * np.pi, count)
    points = radius * np.column_stack([np.cos(angle), np.sin(angle)])
    points[-1] = points[0]
    return points


def test_free_tips_are_drawn_in_by_their_share_of_a_panel():
    parts = panels([SLASH], 2.0)
    panel = 60 / (30 + 2 * TIP_INSET)
    np.testing.assert_allclose(parts.length, panel)
    assert parts.start[0, 0] == pytest.approx(-30 + TIP_INSET * panel)
    assert parts.end[-1, 0] == pytest.approx(30 - TIP_INSET * panel)


def test_tips_held_by_springs_are_drawn_in_less():
    """Springs of k panel / E' = 0.4 and 2: 0.160 and 0.0775 from the opened areas of held slits."""
    assert tip_inset(0.0) == TIP_INSET
    assert tip_inset(0.4) == pytest.approx(0.160, abs=2e-3)
    assert tip_inset(2.0) == pytest.approx(0.0775, abs=2e-3)
    parts = panels([SLASH, SLASH + np.array([0, 9])], 2.0, [1.0, 0.0])
    held, bare = parts.of_line
    assert parts.start[held[0], 0] < parts.start[bare[0], 0]
    panel = 60 / (30 + 2 * tip_inset(2.0))
    assert parts.start[held[0], 0] == pytest.approx(-30 + tip_inset(2.0) * panel)


def test_corners_end_panels():
    bent = np.array([[0.0, 0], [10.3, 0], [10.3, 20]])
    parts = panels([bent], 2.0)
    assert np.abs(parts.end - [10.3, 0]).sum(axis=1).min() < 1e-12
    np.testing.assert_allclose(noded([bent], 2.0)[0].along_mm, [0, 10.3, 30.3])


def test_bends_and_jags_are_not_corners():
    """Less than 25 degrees is a bend; corners closer than half a panel are cut off."""
    bend = np.array([[0.0, 0], [10, 0], [20, 4]])
    assert len(noded([bend], 2.0)[0].along_mm) == 2
    jags = np.column_stack([np.arange(0, 20.1, 0.5), np.arange(41) % 2 * 0.5])
    gaps = np.diff(noded([jags], 2.0)[0].along_mm)
    assert gaps.min() >= 1.0


def test_crossing_cuts_both_lines_there():
    parts = panels([SLASH, np.array([[5.0, -20], [5.0, 20]])], 2.0)
    for own in parts.of_line:
        ends = np.concatenate([parts.start[own], parts.end[own]])
        assert np.abs(ends - [5.0, 0.0]).sum(axis=1).min() < 1e-12


def test_end_on_another_cut_is_no_free_tip():
    stem = np.array([[10.0, 0.0], [10.0, 25.0]])
    through, ending = noded([SLASH, stem], 2.0)
    np.testing.assert_allclose(through.along_mm, [0, 40, 60])
    assert (ending.free_start, ending.free_end) == (False, True)
    assert (through.free_start, through.free_end) == (True, True)


@pytest.mark.parametrize("miss", [-0.06, 0.06])
def test_end_that_misses_or_overshoots_by_a_hair_still_meets(miss):
    stem = np.array([[10.0, miss], [10.0, 25.0]])
    through, ending = noded([SLASH, stem], 2.0)
    np.testing.assert_allclose(through.along_mm, [0, 40, 60])
    assert not ending.free_start
    np.testing.assert_allclose(ending.along_mm, [0, 25 - miss])


def test_end_that_stops_short_of_a_cut_stays_free():
    through, ending = noded([SLASH, np.array([[10.0, 0.5], [10.0, 25.0]])], 2.0)
    np.testing.assert_allclose(through.along_mm, [0, 60])
    assert ending.free_start


def test_ends_that_meet_are_not_free():
    nodes = noded([SLASH, np.array([[30.0, 0], [40.0, 30.0]])], 2.0)
    assert [(n.free_start, n.free_end) for n in nodes] == [(True, False), (False, True)]


def test_two_veins_from_one_place_make_one_node():
    sides = [np.array([[0.0, 0], [10 * s, 10]]) for s in (-1, 1)]
    through, *_ = noded([SLASH, *sides], 2.0)
    np.testing.assert_allclose(through.along_mm, [0, 30, 60])


def test_line_that_crosses_itself():
    loop = np.array([[0.0, 0], [20, 0], [20, 20], [10, 20], [10, -10]])
    (nodes,) = noded([loop], 2.0)
    np.testing.assert_allclose(nodes.along_mm, [0, 10, 20, 40, 50, 70, 80])


def test_closed_line_has_no_tips():
    parts = panels([ring()], 2.0)
    assert not parts.ends[0].free_start
    assert not parts.ends[0].free_end
    np.testing.assert_array_equal(parts.start[0], parts.end[-1])


def test_curve_keeps_its_ends_of_panels_on_the_curve():
    parts = panels([ring(20.0, 2001)], 2.0)
    np.testing.assert_allclose(np.hypot(*parts.start.T), 20.0, atol=1e-4)


def test_short_line_still_gets_its_fewest_panels():
    assert len(panels([np.array([[0.0, 0], [9.0, 0]])], 2.0)) == 6
    assert len(panels([np.array([[0.0, 0], [3.0, 0]])], 2.0)) == 3


def test_cut_drawn_twice_has_one_set_of_panels():
    parts = panels([SLASH, SLASH[::-1], SLASH[:, ::-1]], 2.0)
    assert set(parts.line) == {0, 2}
    np.testing.assert_array_equal(parts.of_line[1], parts.of_line[0][::-1])


def test_cut_that_runs_along_part_of_another_shares_its_panels():
    parts = panels([SLASH, np.array([[10.0, 0], [50.0, 0]])], 2.0)
    shared = parts.of_line[1][parts.line[parts.of_line[1]] == 0]
    assert 8 <= len(shared) <= 12
    assert parts.end[:, 0].max() > 49


@pytest.mark.parametrize(
    "line",
    [
        np.zeros((1, 2)),
        np.zeros((3, 2)),
        np.array([[0, 0], [np.nan, 1]]),
        np.zeros((2, 3)),
        np.zeros((0, 2)),
    ],
)
def test_line_that_is_none_is_refused(line):
    with pytest.raises(UsageError, match="line 1"):
        panels([SLASH, line], 2.0)


@pytest.mark.parametrize("size", [0.0, -1.0, np.nan, np.inf])
def test_panel_size_must_be_positive(size):
    with pytest.raises(UsageError, match="panel"):
        panels([SLASH], size)


def test_panels_shorter_than_what_touches_are_left_out():
    """Two crossings 0.25 mm apart: the panel between them is none, the rest meet in one place."""
    crossing = [np.array([[x, -20.0], [x, 20.0]]) for x in (0.0, 0.19)]
    parts = panels([SLASH, *crossing], 4.0)
    assert parts.length.min() > 0.05
    speck = np.array([[5.0, 8.0], [5.05, 8.0]])
    assert len(panels([SLASH, speck], 4.0).of_line[1]) > 0


@pytest.mark.parametrize("seed", range(20))
def test_tangles_have_no_panel_without_length(seed):
    """Zigzags that start from one place, cross at any angle and fold back on themselves."""
    random = np.random.default_rng(seed)
    lines = []
    for _ in range(random.integers(2, 9)):
        angle = np.cumsum(random.uniform(-3.1, 3.1, 4))
        steps = random.uniform(3, 40, (4, 1)) * np.column_stack([np.cos(angle), np.sin(angle)])
        lines.append(np.vstack([np.zeros(2), np.cumsum(steps, axis=0)]))
    parts = panels(lines, 4.0)
    assert parts.length.min() > 0
    assert all(
        len(own) == len(at) > 0 for own, at in zip(parts.of_line, parts.along_mm, strict=True)
    )


def test_widths_at_ends():
    """None at a free tip; elsewhere on at half the slope, and never less than nothing."""
    along = np.array([1.0, 3.0, 5.0])
    line = LineEnds(np.zeros(2), np.array([6.0, 0.0]), 6.0, free_start=True, free_end=False)
    assert line.widths(np.array([1.0, 2, 4]), along) == (0.0, pytest.approx(4.5))
    joined = LineEnds(np.zeros(2), np.array([6.0, 0.0]), 6.0, free_start=False, free_end=False)
    assert joined.widths(np.array([0.2, 2, 4]), along)[0] == 0.0
    assert joined.widths(np.array([0.7]), np.array([3.0])) == (0.7, 0.7)


@pytest.mark.parametrize(("degrees", "free"), [(0, True), (8, True), (12, False)])
def test_cuts_that_lie_on_one_another_share_a_free_tip(degrees, free):
    """Both run away from one place the same way, all but ten degrees; drawn either way."""
    turn = np.radians(180 - degrees)
    tip = np.array([30.02, 0.04])
    back = np.array([tip, tip + 25 * np.array([np.cos(turn), np.sin(turn)])])
    for other in (back, back[::-1]):
        for line in (SLASH, SLASH[::-1]):
            first, second = noded([line, other], 2.0)
            tips = [first.free_start, first.free_end][:: 1 if line is SLASH else -1]
            shared = second.free_start if other is back else second.free_end
            assert (tips, shared) == ([True, free], free)


def test_a_bend_of_twenty_five_degrees_is_a_corner():
    for degrees, nodes in [(24, 2), (26, 3), (-26, 3), (170, 3)]:
        turn = np.radians(degrees)
        bent = np.array([[-10.0, 0], [0, 0], 10 * np.array([np.cos(turn), np.sin(turn)])])
        assert len(noded([bent], 1.0)[0].along_mm) == nodes


def test_corners_keep_half_a_panel_from_nodes_and_one_another():
    """Of a step of 1.1 mm both corners count where panels are 2 mm long, one where 2.4 mm."""
    step = np.array([[0.0, 0], [3, 0], [3, 1.1], [20, 1.1]])
    for panel, nodes in [(2.4, [0, 3, 21.1]), (2.0, [0, 3, 4.1, 21.1]), (6.2, [0, 4.1, 21.1])]:
        np.testing.assert_allclose(noded([step], panel)[0].along_mm, nodes)


def test_crossings_less_than_a_panel_apart_are_passed_over():
    """Those kept are so far from the last one kept, and from the start."""
    bars = [np.array([[x, -9.0], [x, 9.0]]) for x in (-29.0, -26.5, -25.0, -24.4, 20.0)]
    through = noded([SLASH, *bars], 2.0, 2.0)[0]
    np.testing.assert_allclose(through.along_mm, [0, 3.5, 5.6, 50, 60])
    assert through.passed == 2
    assert panels([SLASH, *bars], 2.0, passing=True).passed == 2
    assert panels([SLASH, *bars], 2.0).passed == 0
