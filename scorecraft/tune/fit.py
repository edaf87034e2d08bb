"""Fit the skin, the inside and the growth to measured openings.

Measured widths are taken as predicted width plus independent errors of one size, and a share of
the width. What is known
before anything is measured counts too: the skin is likely near `SKIN_MM` and the inside near
`INSIDE_PER_SKIN` (their logarithms spread by `SKIN_SPREAD` and `INSIDE_SPREAD`), the growth near
the assumed one (by `GROWTH_SPREAD`), an error near `LONE_SD_MM` (as if `ERRORS_KNOWN` errors had
been seen). So few or doubtful openings leave all near where they were, many find their own, and
what the openings cannot tell apart, the skin from the inside where all cuts are alike, stays as it
was known. The best of all has the least sum of squares, those of the departures from what was known
among them; the bounds of each number are where that sum, the others at their best, grows by t² of
itself (normal priors and a scaled inverse chi-square one: Gelman et al., Bayesian Data Analysis,
3rd ed. 2013, ch. 14; Bates & Watts, Nonlinear Regression Analysis, 1988, section 6.1; recalled).
Openings are taken to grow in proportion to the growth: by 20 % more they grow 17 %.
"""

import math
from collections.abc import Sequence

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.frozen import dataclass
from scorecraft.practice import INSIDE_PER_SKIN, LONE_SD_MM, SKIN_MM
from scorecraft.tune.table import Fine

RULER_SD_MM = 0.3
"""A ruler read to a whole mm is off by this (1/sqrt(12), by definition)."""
SURE = 0.9
"""How often the stated bounds hold the truth."""
SKIN_SPREAD = 0.35
"""The skin of a baker differs from the usual one by this, of its logarithm."""
INSIDE_SPREAD = 0.7
"""The inside differs from the usual one by this, of its logarithm: about two-fold either way."""
GROWTH_SPREAD = 0.2
"""The growth of a loaf differs from the assumed one by this."""
ERRORS_KNOWN = 3
"""What is thought of the errors beforehand counts like so many openings."""
WIDE_SCATTER = 0.1
"""Wide openings scatter more: by this share of themselves, beside what all scatter by."""
SETTLED_FROM_ROWS = 4
"""Fewer openings do not settle the skin."""
SETTLED_FROM_CUTS = 2
"""Openings of fewer different cuts do not settle it."""
SETTLED_SHARE = 0.6
"""Settled is a number whose error is at most this share of what is thought before."""


@dataclass(frozen=True, slots=True)
class Bounds:
    """A fitted number and the bounds that hold the truth at the stated rate.

    A bound that is not found within the limits is the limit, and `open_below` or `open_above`.
    """

    best: float
    low: float
    high: float
    open_below: bool = False
    open_above: bool = False


USUAL_INSIDE = Bounds(INSIDE_PER_SKIN.value, INSIDE_PER_SKIN.value, INSIDE_PER_SKIN.value)


@dataclass(frozen=True, slots=True)
class Fit:
    """What bakes teach: skin (mm), growth over the assumed one, inside over skin, and how well.

    `predicted_mm` and `residual_mm` (measured less predicted) are by row; `spread_mm` is the
    standard deviation the errors of narrow openings were taken to have. `settled` is False where
    the openings tell too little to go by: then a baker keeps the usual numbers. `apart` tells
    whether they tell the inside from the skin.
    """

    skin_mm: Bounds
    growth: Bounds
    predicted_mm: Floats
    residual_mm: Floats
    spread_mm: float
    sure: float
    settled: bool
    inside: Bounds = USUAL_INSIDE
    apart: bool = False


def fit(found: Fine, rows: Sequence[int], measured_mm: Floats, *, sure: float = SURE) -> Fit:
    """Fit measured widths (N,) of the cuts at columns `rows` (N,) of what a model predicts."""
    shape = found.widths_mm.shape[:2]
    model = found.widths_mm.reshape(-1, found.widths_mm.shape[2])[:, list(rows)]
    known = _known(found)
    wide = model[int(np.argmin(known))]
    scatter = np.hypot(1.0, WIDE_SCATTER * wide / LONE_SD_MM.value)
    model, measured_mm = model / scatter, measured_mm / scatter
    spread = LONE_SD_MM.value
    freedom = ERRORS_KNOWN + max(len(rows) - 3, 0)
    for _ in range(2):  # the errors are known only once there is a fit
        growth, least = _best_growth(model, measured_mm, spread)
        best = int(np.argmin(least + known))
        residual = measured_mm - growth[best] * model[best]
        squares = ERRORS_KNOWN * LONE_SD_MM.value**2 + float((residual**2).sum())
        spread = max(math.sqrt(squares / freedom), RULER_SD_MM)
    growth, least = _best_growth(model, measured_mm, spread)
    least += known
    best, reach = int(np.argmin(least)), two_sided(sure, freedom)
    spare = least[best] + reach**2 - least
    at = np.unravel_index(best, shape)
    skin = _bounds(found.skins, int(at[0]), spare.reshape(shape).max(axis=1))
    inside = _bounds(found.insides, int(at[1]), spare.reshape(shape).max(axis=0))
    few = len(rows) < SETTLED_FROM_ROWS or len(set(rows)) < SETTLED_FROM_CUTS
    settled = not few and _learned(skin, SKIN_SPREAD, reach)
    predicted = growth[best] * model[best] * scatter
    return Fit(
        skin,
        _growth_bounds(growth, best, spare, _weight(model, spread)),
        predicted_mm=predicted,
        residual_mm=measured_mm * scatter - predicted,
        spread_mm=spread,
        sure=sure,
        settled=settled,
        inside=inside,
        apart=settled and _learned(inside, INSIDE_SPREAD, reach),
    )


def two_sided(sure: float, freedom: int) -> float:
    """Give Student's t that holds the share `sure` (0 to 1) within -t..t; `freedom` is >= 1."""
    from scipy.special import stdtrit

    return float(stdtrit(freedom, (1 + sure) / 2))


def _known(found: Fine) -> Floats:
    """Squares of the departures of every pair from what was known before, flat."""
    skin = (np.log(found.skins / SKIN_MM.value) / SKIN_SPREAD) ** 2
    inside = (np.log(found.insides / INSIDE_PER_SKIN.value) / INSIDE_SPREAD) ** 2
    return np.asarray(np.add.outer(skin, inside).ravel())


def _best_growth(model: Floats, measured_mm: Floats, spread: float) -> tuple[Floats, Floats]:
    """Give for every pair its best growth, and the sum of squares that is left, both flat.

    All openings grow in proportion to the growth: for each pair it is a linear regression.
    """
    known = 1 / GROWTH_SPREAD**2
    growth = (model @ measured_mm / spread**2 + known) / _weight(model, spread)
    off = measured_mm - growth[:, None] * model
    squares: Floats = (off**2).sum(axis=1) / spread**2 + known * (growth - 1) ** 2
    return growth, squares


def _weight(model: Floats, spread: float) -> Floats:
    """How much is known about the growth at every pair: 1 over the square of its error."""
    weight: Floats = (model**2).sum(axis=1) / spread**2 + 1 / GROWTH_SPREAD**2
    return weight


def _growth_bounds(growth: Floats, best: int, spare: Floats, weight: Floats) -> Bounds:
    """Find the ends of the growths within reach: for each pair a parabola about the best one."""
    half = np.sqrt(np.maximum(spare, 0.0) / weight)
    inside = spare >= 0
    low, high = (growth - half)[inside].min(), (growth + half)[inside].max()
    return Bounds(float(growth[best]), max(float(low), 0.0), float(high))


def _learned(found: Bounds, spread: float, reach: float) -> bool:
    """Whether the openings tell more of a number than was known without them."""
    if found.open_below or found.open_above:
        return False
    return math.log(found.high / found.low) / (2 * reach) <= SETTLED_SHARE * spread


def _bounds(values: Floats, best: int, spare: Floats) -> Bounds:
    """Find the ends of the numbers whose sum of squares stays within reach."""
    inside = np.flatnonzero(spare >= 0)
    first, last = int(inside[0]), int(inside[-1])
    low, high = float(values[first]), float(values[last])
    return Bounds(float(values[best]), low, high, first == 0, last == len(values) - 1)
