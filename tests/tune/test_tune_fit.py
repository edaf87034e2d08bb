"""The fit finds a known skin from openings made with noise; its bounds hold as often as they say.

The measurements are made here from a model of closed form with a known skin, growth and noise.
"""

import math

import numpy as np
import pytest

from scorecraft.practice import LONE_SD_MM, RULER_SD_MM, SKIN_LIMITS_MM
from scorecraft.tune.fit import FINE, fit, fit_both, fit_closely, fit_skin, spaced, table

DEPTHS = np.array([10.0, 8.0, 6.0, 3.0])
LENGTHS = np.array([120.0, 70.0, 50.0, 20.0])


def widths(skin_mm):
    """Smooth stand-in for the opening model: deep and long cuts open more, thin skins more."""
    return 0.25 * LENGTHS * (1 - np.exp(-1.4 * DEPTHS / skin_mm))


def made(skin, rows, noise, seed, growth=1.0):
    random = np.random.default_rng(seed)
    return growth * widths(skin)[rows] + random.normal(0, noise, len(rows))


TABLE = table(widths, spaced(3.0, 40.0, 40))
FINE_SKINS = np.exp(np.linspace(math.log(TABLE[0][0]), math.log(TABLE[0][-1]), FINE))


@pytest.mark.parametrize("skin", [6.0, 12.0, 20.0])
def test_a_known_skin_is_found_without_noise(skin):
    rows = [0, 1, 2, 3]
    found = fit(*TABLE, rows, widths(skin)[rows])
    assert found.skin_mm.best == pytest.approx(skin, rel=0.01)
    assert found.skin_mm.low < skin < found.skin_mm.high
    np.testing.assert_allclose(found.residual_mm, 0, atol=0.05)


@pytest.mark.parametrize("skin", [8.0, 14.0])
def test_a_known_skin_is_found_with_noise(skin):
    rows = [0, 1, 2, 3] * 5
    found = fit(*TABLE, rows, made(skin, rows, 1.0, seed=3))
    assert found.skin_mm.best == pytest.approx(skin, rel=0.12)
    assert found.skin_mm.low < skin < found.skin_mm.high
    assert found.spread_mm == pytest.approx(1.0, rel=0.5)


def test_skin_and_growth_are_both_found_where_there_is_enough():
    rows = [0, 1, 2, 3] * 6
    found = fit(*TABLE, rows, made(11.0, rows, 0.5, seed=5, growth=1.4))
    assert found.growth is not None
    assert found.growth.best == pytest.approx(1.4, rel=0.1)
    assert found.growth.low < 1.4 < found.growth.high
    assert found.skin_mm.best == pytest.approx(11.0, rel=0.15)


def test_growth_is_left_alone_where_it_explains_nothing_or_openings_are_few():
    rows = [0, 1, 2, 3] * 6
    assert fit(*TABLE, rows, made(11.0, rows, 1.0, seed=8)).growth is None
    few = [0, 1, 2]
    assert fit(*TABLE, few, 1.6 * widths(11.0)[few]).growth is None
    alike = [0] * 20
    assert fit(*TABLE, alike, made(11.0, alike, 0.1, seed=1, growth=1.6)).growth is None


TRIALS = 1500


@pytest.mark.parametrize("sure", [0.8, 0.9])
@pytest.mark.parametrize("rows", [[0, 1, 2, 3], [0, 0, 1, 1, 2, 2, 3, 3]])
def test_the_bounds_hold_the_skin_as_often_as_they_say(sure, rows):
    """Of 1500 made bakes so many must be right, give or take 3 standard errors."""
    inside = 0
    model = _fine_model(rows)
    for seed in range(TRIALS):
        found = fit_skin(FINE_SKINS, model, made(12.0, rows, 1.2, seed), sure=sure)
        inside += found.skin_mm.low <= 12.0 <= found.skin_mm.high
    error = math.sqrt(sure * (1 - sure) / TRIALS)
    assert inside / TRIALS == pytest.approx(sure, abs=3 * error + 0.01)


def test_the_bounds_hold_both_skin_and_growth_as_often_as_they_say():
    rows, sure = [0, 1, 2, 3] * 3, 0.9
    model = _fine_model(rows)
    skins = growths = 0
    for seed in range(TRIALS):
        found = fit_both(FINE_SKINS, model, made(10.0, rows, 0.6, seed, growth=1.2), sure=sure)
        skins += found.skin_mm.low <= 10.0 <= found.skin_mm.high
        growths += found.growth.low <= 1.2 <= found.growth.high
    error = math.sqrt(sure * (1 - sure) / TRIALS)
    assert skins / TRIALS == pytest.approx(sure, abs=3 * error + 0.01)
    assert growths / TRIALS == pytest.approx(sure, abs=3 * error + 0.01)


def _fine_model(rows):
    at, knots = np.log(FINE_SKINS), np.log(TABLE[0])
    return np.column_stack([np.interp(at, knots, column) for column in TABLE[1].T])[:, rows]


def test_better_measurements_give_narrower_bounds():
    rows = [0, 1, 2, 3] * 4
    wide, narrow = (fit(*TABLE, rows, made(12.0, rows, noise, 4)).skin_mm for noise in (2.0, 0.5))
    assert narrow.high - narrow.low < 0.5 * (wide.high - wide.low)


def test_one_opening_is_bounded_by_how_well_one_can_measure():
    found = fit(*TABLE, [0], widths(12.0)[[0]])
    assert found.spread_mm == LONE_SD_MM.value
    assert found.skin_mm.low < 11.5 and found.skin_mm.high > 12.5


def test_openings_that_agree_too_well_are_not_believed_beyond_the_ruler():
    found = fit(*TABLE, [0, 0, 0], widths(12.0)[[0, 0, 0]])
    assert found.spread_mm == RULER_SD_MM.value
    assert found.skin_mm.low < 12.0 < found.skin_mm.high


def test_openings_no_skin_explains_leave_the_bounds_open():
    found = fit(*TABLE, [0, 0], np.array([0.0, 0.1]))
    assert found.skin_mm.open_above
    assert found.skin_mm.high == pytest.approx(SKIN_LIMITS_MM[1].value)


@pytest.mark.parametrize("skin", [4.5, 9.0, 13.0, 30.0])
def test_a_model_that_takes_long_is_run_for_few_skins(skin):
    runs = []

    def slow(skin_mm):
        runs.append(skin_mm)
        return widths(skin_mm)

    rows = [0, 1, 2, 3] * 2
    close = fit_closely(slow, rows, made(skin, rows, 0.4, seed=2))
    full = fit(*TABLE, rows, made(skin, rows, 0.4, seed=2))
    assert len(runs) <= 24
    assert close.skin_mm.best == pytest.approx(full.skin_mm.best, rel=0.01)
    assert close.skin_mm.low == pytest.approx(full.skin_mm.low, rel=0.03)
    assert close.skin_mm.high == pytest.approx(full.skin_mm.high, rel=0.03)
