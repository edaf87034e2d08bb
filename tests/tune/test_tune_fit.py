"""The fit finds a known skin and inside from openings made with noise; its bounds hold.

The measurements are made here from a model of closed form with known numbers and noise.
"""

import math

import numpy as np
import pytest

from scorecraft.practice import INSIDE_PER_SKIN, LONE_SD_MM, SKIN_MM
from scorecraft.tune.fit import (
    GROWTH_SPREAD,
    INSIDE_SPREAD,
    RULER_SD_MM,
    SKIN_SPREAD,
    fit,
)
from scorecraft.tune.table import INSIDE_LIMITS, SKIN_LIMITS_MM, fine, knots, table

DEPTHS = np.array([10.0, 6.0, 4.0, 2.0, 8.0, 5.0])
LENGTHS = np.array([120.0, 70.0, 90.0, 20.0, 60.0, 110.0])
USUAL = SKIN_MM.value, INSIDE_PER_SKIN.value


def widths(skin_mm, inside):
    """Smooth stand-in for the opening model: held by the skin left, and by the inside below."""
    xi = DEPTHS / skin_mm
    skin = 0.2 / skin_mm * np.exp(-1.5 * xi**2) / xi
    below = math.sqrt(inside) / (3 * skin_mm) * np.exp(1 - xi**2)
    return 0.16 / (0.55 / LENGTHS + skin + below)


TABLE = fine([table(widths)])


def made(skin, inside, rows, noise, seed, growth=1.0):
    random = np.random.default_rng(seed)
    return growth * widths(skin, inside)[rows] + random.normal(0, noise, len(rows))


def test_the_table_is_the_model_between_its_knots():
    for skin, inside in ((3.3, 0.03), (5.0, 0.1), (8.0, 0.02)):
        at = np.abs(TABLE.skins / skin - 1).argmin(), np.abs(TABLE.insides / inside - 1).argmin()
        exact = widths(TABLE.skins[at[0]], TABLE.insides[at[1]])
        np.testing.assert_allclose(TABLE.widths_mm[at], exact, atol=0.04 * exact.max())


def test_knots_hold_the_usual_and_the_limits():
    skins, insides = knots()
    assert USUAL[0] in skins and USUAL[1] in insides
    assert (skins[0], skins[-1]) == pytest.approx(SKIN_LIMITS_MM)
    assert (insides[0], insides[-1]) == pytest.approx(INSIDE_LIMITS)


@pytest.mark.parametrize("rows", [[0], [0, 3], [0, 1, 2, 3], [0, 1, 2, 3] * 6])
def test_openings_as_predicted_change_nothing_at_all(rows):
    found = fit(TABLE, rows, widths(*USUAL)[rows])
    assert (found.skin_mm.best, found.inside.best) == USUAL
    assert found.growth.best == pytest.approx(1.0, abs=1e-3)
    assert found.skin_mm.low < USUAL[0] < found.skin_mm.high
    assert found.inside.low < USUAL[1] < found.inside.high


@pytest.mark.parametrize("skin", [4.5, 9.0])
def test_few_openings_stay_near_the_usual_skin_and_many_let_go(skin):
    way = []
    for rows in ([0], [0, 3], [0, 1, 2, 3], [0, 1, 2, 3] * 4, [0, 1, 2, 3] * 40):
        best = fit(TABLE, rows, widths(skin, USUAL[1])[rows]).skin_mm.best
        way.append(math.log(best / USUAL[0]) / math.log(skin / USUAL[0]))
    assert (np.diff(way) > -0.01).all()
    assert way[0] < 0.8
    assert way[-1] == pytest.approx(1.0, abs=0.05)


def test_many_different_openings_tell_skin_inside_and_growth_apart():
    rows = [0, 1, 2, 3, 4, 5] * 8
    found = fit(TABLE, rows, made(5.0, 0.1, rows, 0.4, seed=5, growth=1.15))
    assert found.settled and found.apart
    assert found.skin_mm.best == pytest.approx(5.0, rel=0.1)
    assert found.inside.best == pytest.approx(0.1, rel=0.35)
    assert found.growth.best == pytest.approx(1.15, rel=0.06)


def test_one_kind_of_cut_cannot_tell_the_inside_from_the_skin():
    """Openings of one cut alone leave the inside where it was known, and its bounds wide."""
    found = fit(TABLE, [0] * 12, made(5.0, 0.1, [0] * 12, 0.4, seed=5))
    assert not found.settled and not found.apart
    assert found.inside.high / found.inside.low > 4


def recovered(rows, sure, noise, trials=400):
    """Of bakers with numbers of their own: how often the bounds hold, and the mean errors."""
    held, off = np.zeros(3), []
    for seed in range(trials):
        random = np.random.default_rng([seed, 7])
        skin = USUAL[0] * math.exp(random.normal(0, SKIN_SPREAD))
        inside = USUAL[1] * math.exp(random.normal(0, INSIDE_SPREAD))
        growth = random.normal(1, GROWTH_SPREAD)
        true = growth * widths(skin, inside)[rows]
        found = fit(TABLE, rows, true + noise(random, true), sure=sure)
        three = (found.skin_mm, found.inside, found.growth)
        held += [b.low <= v <= b.high for b, v in zip(three, (skin, inside, growth), strict=True)]
        off.append([
            math.log(found.skin_mm.best / skin), math.log(found.inside.best / inside),
            found.growth.best - growth,
        ])  # fmt: skip
    return held / trials, np.mean(off, axis=0)


@pytest.mark.parametrize("rows", [[0], [0, 3], [0, 1, 2, 3, 4, 5], [0, 1, 2, 3, 4, 5] * 2])
def test_bounds_hold_as_often_as_they_say_and_nothing_is_pulled_aside(rows):
    """Give or take 3 standard errors, and the bounds are a little wide: they are of a curve."""
    held, off = recovered(rows, 0.9, lambda r, true: r.normal(0, LONE_SD_MM.value, len(true)))
    error = 3 * math.sqrt(0.9 * 0.1 / 400)
    assert (held > 0.9 - error).all() and (held < 0.9 + error + 0.07).all()
    assert (np.abs(off) < [0.15, 0.16, 0.04]).all()


def test_openings_with_ten_percent_of_noise():
    """Twelve openings, each a tenth off: the bounds hold nine times in ten.

    Skin and growth come back within 4 %, the inside within 16 %.
    """
    rows = [0, 1, 2, 3, 4, 5] * 2
    held, off = recovered(rows, 0.9, lambda r, true: r.normal(0, 0.1, len(true)) * true)
    error = 3 * math.sqrt(0.9 * 0.1 / 400)
    assert (held > 0.9 - error).all()
    assert (np.abs(off) < [0.04, 0.16, 0.04]).all()


def test_two_openings_that_contradict_one_another_move_little():
    rows = [0, 1]
    found = fit(TABLE, rows, widths(*USUAL)[rows] * [1.8, 0.3])
    assert not found.settled
    assert found.spread_mm > 3 * LONE_SD_MM.value
    assert found.skin_mm.best == pytest.approx(USUAL[0], rel=0.2)


def test_better_measurements_give_narrower_bounds():
    rows = [0, 1, 2, 3, 4, 5] * 4
    wide, narrow = (fit(TABLE, rows, made(*USUAL, rows, noise, 4)).skin_mm for noise in (2.0, 0.5))
    assert narrow.high - narrow.low < 0.75 * (wide.high - wide.low)


def test_openings_that_agree_too_well_are_not_believed_beyond_the_ruler():
    rows = [0, 1, 2, 3] * 100
    assert fit(TABLE, rows, widths(*USUAL)[rows]).spread_mm == RULER_SD_MM


def test_bakes_of_several_patterns_are_fitted_together():
    """Two bakes, of other cuts each: together they tell more than either alone."""
    model = table(widths)
    both = fine([model[:, :, :3], model[:, :, 3:]])
    np.testing.assert_allclose(both.widths_mm, TABLE.widths_mm)
    rows = [0, 1, 2, 3, 4, 5] * 3
    sizes = made(5.5, 0.08, rows, 0.6, seed=3)
    first = np.array(rows) < 3
    alone = fit(fine([model[:, :, :3]]), list(np.array(rows)[first]), sizes[first])
    found = fit(both, rows, sizes)
    assert found.skin_mm.high - found.skin_mm.low < alone.skin_mm.high - alone.skin_mm.low
    assert found.inside.high / found.inside.low < alone.inside.high / alone.inside.low
