"""The public `solve`: invariances, limits, refusals and the shape of its answer."""

from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from support.small_strain import solve as small_strain

from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.opening import Opening, solve
from scorecraft.opening import solve as solving
from scorecraft.opening.result import Profile

GROWTH = (0.1, 0.07, 0.02)
AREA = np.pi * 110**2
SLASH = np.array([[-40.0, 0.0], [40.0, 0.0]])


def moved(line, x, y):
    return line + np.array([x, y])


PATTERN = [
    moved(SLASH, 0, 5),
    np.array([[-20.0, -40], [-15, 30], [5, 50]]),
    np.array([[10.0, 5], [30, 35]]),
    np.array([[0.0, -20], [50, -24]]),
]
DEPTHS = [9.0, 6.0, 3.0, 12.0]


def rotated(line, angle):
    c, s = np.cos(angle), np.sin(angle)
    return line @ np.array([[c, s], [-s, c]])


def turned_strain(strain, angle):
    c, s = np.cos(angle), np.sin(angle)
    frame = np.array([[c, -s], [s, c]])
    exx, eyy, exy = strain
    new = frame @ np.array([[exx, exy], [exy, eyy]]) @ frame.T
    return (new[0, 0], new[1, 1], new[0, 1])


def opening(lines=PATTERN, depth=DEPTHS, strain=GROWTH, **options):
    return solve(lines, depth, strain=strain, **{"area_mm2": AREA, "panel_mm": 4.0, **options})


def assert_alike(one, other, rtol=1e-7):
    for name in ("gap_mm", "mouth_mm"):
        ours, theirs = getattr(one, name), getattr(other, name)
        np.testing.assert_allclose(ours, theirs, rtol=rtol, atol=1e-5 * theirs.max())


@settings(max_examples=8)
@given(st.floats(0.1, 6.2), st.floats(-100, 100), st.floats(-100, 100))
def test_turned_and_moved_pattern_opens_alike(angle, x, y):
    away = [moved(rotated(line, angle), x, y) for line in PATTERN]
    other = opening(away, strain=turned_strain(GROWTH, angle))
    assert_alike(other, opening())


def test_mirrored_pattern_opens_alike():
    exx, eyy, exy = GROWTH
    mirrored = [line * [-1, 1] for line in PATTERN]
    other = opening(mirrored, strain=(exx, eyy, -exy))
    assert_alike(other, opening())
    np.testing.assert_allclose(other.slide_mm, -opening().slide_mm, atol=1e-9)


@pytest.mark.parametrize("scale", [0.01, 7.0])
def test_scaled_pattern_opens_in_scale(scale):
    """All lengths alike, and the strains as they are: there is no modulus to give."""
    large = opening(
        [scale * line for line in PATTERN],
        [scale * depth for depth in DEPTHS],
        skin_mm=12 * scale,
        area_mm2=AREA * scale**2,
        panel_mm=4 * scale,
    )
    np.testing.assert_allclose(large.mouth_mm, scale * opening().mouth_mm, rtol=1e-6)
    np.testing.assert_allclose(large.tension_left, opening().tension_left, atol=1e-9)


def test_twice_a_small_strain_opens_twice_as_far_and_twice_a_large_one_less():
    once, twice, much = (
        opening(strain=tuple(share * value for value in GROWTH)).mouth_mm
        for share in (1e-6, 2e-6, 1)
    )
    np.testing.assert_allclose(twice, 2 * once, rtol=1e-5)
    assert (much.max() / once.max() * 1e-6 > 0.8) and (much.max() < 1e6 * once.max())


def test_order_and_direction_of_lines_do_not_matter():
    order = [2, 0, 3, 1]
    mixed = opening([PATTERN[k][::-1] for k in order], [DEPTHS[k] for k in order])
    np.testing.assert_allclose(mixed.widest_mm, opening().widest_mm[order], rtol=1e-5)


def test_same_input_same_numbers():
    np.testing.assert_array_equal(opening().mouth_mm, opening().mouth_mm)


def test_lines_cut_beforehand_open_like_whole_ones():
    halves = [PATTERN[0][:1], [[-16.0, 5.0]], PATTERN[0][1:]]
    first, second = np.vstack(halves[:2]), np.vstack(halves[1:])
    cut = opening([first, second, *PATTERN[1:]], [9.0, *DEPTHS], panel_mm=1.0)
    whole = opening(panel_mm=1.0)
    opened = [answer.gap_mm @ answer.length_mm for answer in (cut, whole)]
    assert opened[0] == pytest.approx(opened[1], rel=1e-3)
    assert cut.widest_mm[:2].max() == pytest.approx(whole.widest_mm[0], rel=5e-3)


@settings(max_examples=6)
@given(st.floats(0.5, 11.0), st.floats(0.1, 2.0))
def test_deeper_cut_opens_wider(depth, more):
    shallow, deep = (opening([SLASH], [d]).widest_mm[0] for d in (depth, depth + more))
    assert deep > shallow


def test_deeper_than_the_skin_is_through():
    assert opening([SLASH], [12.0]).widest_mm == opening([SLASH], [30.0]).widest_mm
    assert opening([SLASH], 12.0).mouth_mm.max() == opening([SLASH], 12.0).gap_mm.max()


def test_cut_without_depth_opens_nothing():
    assert opening([SLASH], [0.0]).widest_mm[0] < 1e-3


def test_cuts_far_apart_do_not_feel_each_other():
    far = opening([SLASH, moved(SLASH, 4000, 3000)], [12.0, 12.0], area_mm2=None)
    alone = opening([SLASH], [12.0], area_mm2=None)
    np.testing.assert_allclose(far.widest_mm, alone.widest_mm[0], rtol=1e-3)


def test_more_cuts_leave_less_tension():
    left = [np.trace(opening(PATTERN[:k], DEPTHS[:k]).tension_left) for k in range(5)]
    assert left[0] == pytest.approx(2)
    assert all(more < less for less, more in pairwise(left))


def test_uneven_growth_of_one_value_is_even_growth():
    def strain(points):
        return np.tile(GROWTH, (len(points), 1))

    assert_alike(opening(strain=strain), opening())
    points = np.array([[60.0, 60], [-70, 10]])
    even, uneven = opening().tension_at(points), opening(strain=strain).tension_at(points)
    np.testing.assert_allclose(uneven, even, atol=1e-9)


def test_uneven_growth_opens_more_where_there_is_more():
    def strain(points):
        share = 0.1 + 0.001 * points[:, 0]
        return np.column_stack([share, share, 0 * share])

    two = [np.array([[x, -15.0], [x, 15.0]]) for x in (-60.0, 60.0)]
    left, right = small_strain(two, 8.0, strain=strain, area_mm2=AREA).widest_mm
    assert right > 2 * left
    even = small_strain(two, 8.0, strain=(0.1, 0.1, 0), area_mm2=AREA).widest_mm
    assert (left + right) / 2 == pytest.approx(even[0], rel=0.02)


def test_no_cuts_leave_the_sheet_as_it_is():
    uncut = opening([], [])
    assert uncut.mouth_mm.shape == (0,)
    np.testing.assert_allclose(np.trace(uncut.tension_left), 2)
    at = uncut.tension_at(np.zeros((3, 2)))
    np.testing.assert_allclose(at, np.broadcast_to(uncut.tension_left, (3, 2, 2)))


def test_shape_of_the_answer():
    answer = opening()
    assert isinstance(answer, Opening)
    count = len(answer.line)
    assert answer.midpoint_mm.shape == (count, 2)
    for name in ("length_mm", "gap_mm", "slide_mm", "mouth_mm"):
        assert getattr(answer, name).shape == (count,)
    assert answer.tension_left.shape == (2, 2)
    assert answer.widest_mm.shape == (4,)
    assert (answer.mouth_mm >= answer.gap_mm).all()
    assert (answer.gap_mm >= 0).all()


def test_profile_runs_along_the_line():
    answer = opening()
    for k, line in enumerate(PATTERN):
        profile = answer.profile(k)
        np.testing.assert_allclose(profile.points_mm[[0, -1]], line[[0, -1]])
        assert (np.diff(profile.along_mm) > 0).all()
        assert profile.along_mm[-1] == pytest.approx(np.hypot(*np.diff(line, axis=0).T).sum())
        assert 0.9 * profile.width_mm.max() < answer.widest_mm[k] <= profile.width_mm.max()
    assert answer.profile(0).width_mm[[0, -1]].tolist() == [0, 0]
    on_slash = answer.profile(2)
    slope = np.diff(on_slash.width_mm[:3]) / np.diff(on_slash.along_mm[:3])
    assert on_slash.width_mm[0] > 0, "this one starts on the slash"
    assert slope[0] == pytest.approx(slope[1] / 2)


def test_widest_is_a_mean_over_a_stretch():
    """A peak of no length does not count, one as long as the stretch does."""
    along = np.linspace(0, 60, 121)
    flat = np.full(121, 2.0)
    points = np.column_stack([along, 0 * along])
    assert Profile(points, along, flat).widest_mm(6.0) == pytest.approx(2.0)
    spike = np.where(along == 30, 8.0, flat)
    assert Profile(points, along, spike).widest_mm(6.0) == pytest.approx(2.0 + 6 * 0.5 / 6, rel=0.1)
    for rising in (along, along[::-1]):  # wide to its very end: the mean over the last 6 mm of 60
        assert Profile(points, along, rising).widest_mm(6.0) == pytest.approx(57.0)
    block = np.where(np.abs(along - 30) <= 4, 8.0, flat)
    assert Profile(points, along, block).widest_mm(6.0) == pytest.approx(8.0)


def test_widest_of_a_lone_slit_is_that_of_its_middle():
    """The mean over a tenth of an ellipse is 0.17 % less than its middle."""
    answer = opening([SLASH], [12.0])
    assert answer.widest_mm[0] == pytest.approx(answer.gap_mm.max(), rel=3e-3)


def test_balance_of_forces_on_a_line_through_the_cut():
    """Across any straight line tension adds up to what it is far away: a slit shifts it only."""
    answer = opening([SLASH], [12.0], strain=(-0.05, 0.1, 0), area_mm2=None)
    x = np.linspace(-4000, 4000, 160_001)
    across = answer.tension_at(np.column_stack([x, np.full_like(x, 12.0)]))[:, 1, 1]
    spread = np.trapezoid(across - answer.tension_left[1, 1], x)
    assert abs(spread) < 0.02 * 80


def test_work_taken_by_a_lone_slit():
    """A slit in an endless sheet sets free pi a^2 T^2 / E' (Griffith; recalled); under even growth
    e the sheet stores T e A / 2 twice over, T = 2 e E."""
    answer = small_strain([SLASH], [12.0], strain=(0.1, 0.1, 0), area_mm2=1e7)
    assert answer.work_taken * 1e7 == pytest.approx(2 * np.pi * 40**2, rel=3e-3)


def test_closed_line_cut_through_lets_its_piece_stay():
    angle = np.linspace(0, 2 * np.pi, 181)
    ring = 30 * np.column_stack([np.cos(angle), np.sin(angle)])
    ring[-1] = ring[0]
    answer = small_strain([ring], [12.0], strain=(0.1, 0.1, 0), panel_mm=2.0)
    # a hole of radius R under tension T all around widens to 2 T R / E', and the piece cut out
    # goes back to its size without tension: the gap is 2 T R / E', T = 0.2, R = 30 (Kirsch)
    assert answer.gap_mm.mean() == pytest.approx(0.2 * 30 * 2, rel=0.01)
    assert np.ptp(answer.gap_mm) < 0.02 * answer.gap_mm.mean()
    inside = answer.tension_at(np.array([[0.0, 0.0], [10, 5]]))
    np.testing.assert_allclose(inside, 0, atol=0.01)


def test_grid_of_through_cuts_stays_in_place():
    lines = [np.array([[x, -50.0], [x, 50]]) for x in range(-40, 41, 20)]
    lines += [line[:, ::-1] for line in lines]
    answer = opening(lines, 12.0, strain=(0.1, 0.1, 0))
    assert answer.gap_mm.max() < 27
    assert answer.tension_left[0, 0] < 0.55


def test_cut_drawn_twice_opens_like_the_deeper_once():
    twice = opening([SLASH, SLASH[::-1]], [3.0, 8.0])
    once = opening([SLASH], [8.0])
    # the panels stand where those of the first line would, to a tenth of a panel
    np.testing.assert_allclose(twice.widest_mm, once.widest_mm[0], rtol=5e-3)


@pytest.mark.parametrize("lines", [PATTERN, [SLASH, moved(SLASH, 0, 0.2)]])
def test_all_is_finite(lines):
    answer = opening(lines, 12.0)
    assert np.isfinite(answer.mouth_mm).all()
    assert answer.gap_mm.max() < 100


BAD = [
    {"depth": [1.0, 2.0]},
    {"depth": [-1.0, 1, 1, 1]},
    {"depth": [np.nan, 1, 1, 1]},
    {"skin_mm": 0.0},
    {"skin_mm": np.nan},
    {"area_mm2": -4.0},
    {"panel_mm": 0.0},
    {"strain": (0.1, np.nan, 0)},
    {"strain": lambda points: points},
]


@pytest.mark.parametrize("wrong", BAD)
def test_numbers_that_make_no_sense_are_refused(wrong):
    with pytest.raises(UsageError):
        opening(**wrong)


def hatch():
    at = np.arange(-42.0, 43.0, 4.0)
    bars = [np.array([[x, -45.0], [x, 45.0]]) for x in at]
    return bars + [line[:, ::-1] for line in bars]


def test_more_panels_than_fit_are_made_longer_and_run_over_crossings(monkeypatch):
    whole = opening(hatch(), 4.0)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PANELS", 600.0)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PAIRS", 3e5)
    coarse = opening(hatch(), 4.0)
    assert whole.panels.passed == 0 and len(whole.panels) > 1000
    assert coarse.panels.passed > 400 and len(coarse.panels) <= 600
    np.testing.assert_allclose(coarse.widest_mm, whole.widest_mm, rtol=0.1)
    np.testing.assert_allclose(coarse.tension_left, whole.tension_left, atol=0.005)


def test_too_many_in_one_place_and_one_far_away_are_made_longer_or_refused(monkeypatch):
    """The far one makes the grid so coarse that all others are near to one another."""
    lines = [*hatch(), np.array([[5000.0, 5000.0], [5050.0, 5000.0]])]
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PAIRS", 3e5)
    assert opening(lines, 4.0).panels.passed > 400
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PAIRS", 10.0)
    with pytest.raises(UsageError, match="lie in one place"):
        opening(lines, 4.0)


def test_more_cuts_than_there_may_be_panels_are_refused(monkeypatch):
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PANELS", 100.0)
    with pytest.raises(UsageError, match="44 cuts are more than"):
        opening(hatch(), 4.0)


def test_system_that_is_not_positive_is_told_in_words(monkeypatch):
    """Not known to happen: a stiffness that fails is made up."""
    monkeypatch.setattr("scorecraft.opening.elastic.Elastic.times", lambda self, jumps: -jumps)
    with pytest.raises(ScorecraftError, match="close together"):
        opening(depth=6.0)


def test_model_says_what_it_is():
    assert "strain" in solving.__doc__
