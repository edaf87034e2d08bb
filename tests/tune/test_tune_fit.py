"""The fit finds a known skin from openings made with noise; its bounds hold as often as they say.

The measurements are made here from a model of closed form with a known skin, growth and noise.
"""

import math

import numpy as np
import pytest

from scorecraft.practice import LONE_SD_MM, SKIN_MM
from scorecraft.tune.fit import (
    GROWTH_SPREAD,
    RULER_SD_MM,
    SKIN_LIMITS_MM,
    SKIN_SPREAD,
    fit,
    fit_closely,
    spaced,
    table,
)

DEPTHS = np.array([10.0, 8.0, 6.0, 3.0])
LENGTHS = np.array([120.0, 70.0, 50.0, 20.0])
USUAL = SKIN_MM.value


def widths(skin_mm):
    """Smooth stand-in for the opening model: deep and long cuts open more, thin skins more."""
    return 0.25 * LENGTHS * (1 - np.exp(-1.4 * DEPTHS / skin_mm))


def made(skin, rows, noise, seed, growth=1.0):
    random = np.random.default_rng(seed)
    return growth * widths(skin)[rows] + random.normal(0, noise, len(rows))


TABLE = table(widths, np.union1d(spaced(3.0, 40.0, 40), USUAL))


@pytest.mark.parametrize("rows", [[0], [0, 3], [0, 1, 2, 3], [0, 1, 2, 3] * 6])
def test_openings_as_predicted_change_nothing_at_all(rows):
    found = fit(*TABLE, rows, widths(USUAL)[rows])
    assert found.skin_mm.best == USUAL
    assert found.growth.best == pytest.approx(1.0, abs=1e-12)
    assert found.skin_mm.low < USUAL < found.skin_mm.high


@pytest.mark.parametrize("skin", [7.0, 20.0])
def test_few_openings_stay_near_the_usual_skin_and_many_let_go(skin):
    way = []
    for rows in ([0], [0, 3], [0, 1, 2, 3], [0, 1, 2, 3] * 4, [0, 1, 2, 3] * 40):
        best = fit(*TABLE, rows, widths(skin)[rows]).skin_mm.best
        way.append(math.log(best / USUAL) / math.log(skin / USUAL))
    assert (np.diff(way) > 0).all()
    assert 0 < way[0] < 0.7
    assert 0.95 < way[-1] <= 1.0


@pytest.mark.parametrize(("skin", "growth"), [(8.0, 1.2), (11.0, 1.4)])
def test_a_known_skin_and_growth_are_found_with_noise(skin, growth):
    rows = [0, 1, 2, 3] * 8
    found = fit(*TABLE, rows, made(skin, rows, 0.5, seed=5, growth=growth))
    assert found.skin_mm.best == pytest.approx(skin, rel=0.12)
    assert found.growth.best == pytest.approx(growth, rel=0.08)
    assert found.skin_mm.low < skin < found.skin_mm.high
    assert found.growth.low < growth < found.growth.high
    assert found.settled


TRIALS = 1200


@pytest.mark.parametrize("sure", [0.8, 0.9])
@pytest.mark.parametrize("rows", [[0], [0, 3], [0, 1, 2, 3], [0, 0, 1, 1, 2, 2, 3, 3]])
def test_bounds_hold_as_often_as_they_say_and_nothing_is_pulled_aside(sure, rows):
    """Of 1200 bakers, each with a skin and growth of their own, so many must be right.

    Give or take 3 standard errors, and the bounds are a little wide: they are those of a curve.
    """
    skins = growths = 0
    off = []
    for seed in range(TRIALS):
        random = np.random.default_rng([seed, 7])
        skin = USUAL * math.exp(random.normal(0, SKIN_SPREAD))
        growth = random.normal(1, GROWTH_SPREAD)
        known = made(skin, rows, LONE_SD_MM.value, seed, growth)
        found = fit(*TABLE, rows, known, sure=sure)
        skins += found.skin_mm.low <= skin <= found.skin_mm.high
        growths += found.growth.low <= growth <= found.growth.high
        off.append((math.log(found.skin_mm.best / skin), found.growth.best - growth))
    error = 3 * math.sqrt(sure * (1 - sure) / TRIALS)
    for right in (skins / TRIALS, growths / TRIALS):
        assert sure - error < right < sure + error + 0.07
    assert np.abs(np.mean(off, axis=0)).max() < 0.03


def test_two_openings_that_contradict_one_another_move_little():
    rows = [0, 1]
    found = fit(*TABLE, rows, widths(USUAL)[rows] * [1.8, 0.3])
    assert not found.settled
    assert found.spread_mm > 3 * LONE_SD_MM.value
    assert found.skin_mm.best == pytest.approx(USUAL, rel=0.15)


@pytest.mark.parametrize("rows", [[0], [0, 3], [0, 1, 2], [0] * 30])
def test_few_openings_or_always_the_same_cut_settle_nothing(rows):
    assert not fit(*TABLE, rows, made(20.0, rows, 0.3, seed=1)).settled


def test_better_measurements_give_narrower_bounds():
    rows = [0, 1, 2, 3] * 4
    wide, narrow = (fit(*TABLE, rows, made(12.0, rows, noise, 4)).skin_mm for noise in (2.0, 0.5))
    assert narrow.high - narrow.low < 0.75 * (wide.high - wide.low)


def test_openings_that_agree_too_well_are_not_believed_beyond_the_ruler():
    rows = [0, 1, 2, 3] * 100
    assert fit(*TABLE, rows, widths(14.0)[rows]).spread_mm == RULER_SD_MM


def test_a_skin_beyond_the_limits_leaves_the_bounds_open_and_settles_nothing():
    rows = [0, 1, 2, 3] * 10
    found = fit(*TABLE, rows, widths(90.0)[rows])
    assert found.skin_mm.open_above and not found.settled
    assert found.skin_mm.high == pytest.approx(SKIN_LIMITS_MM[1])


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
    assert close.skin_mm.best == pytest.approx(full.skin_mm.best, rel=0.02)
    assert close.skin_mm.low == pytest.approx(full.skin_mm.low, rel=0.03)
    assert close.skin_mm.high == pytest.approx(full.skin_mm.high, rel=0.03)
