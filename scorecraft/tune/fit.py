"""Fit the skin thickness and the growth to measured openings.

Measured widths are taken as predicted width plus independent errors of one size. What is known
before anything is measured counts too: the skin is likely near `SKIN_MM` (its logarithm spreads by
`SKIN_SPREAD`), the growth near the assumed one (by `GROWTH_SPREAD`), an error near `LONE_SD_MM` (as
if `ERRORS_KNOWN` errors had been seen). So few or doubtful openings leave both near where they
were, and many openings find their own. The best pair has the least sum of squares, those of the
departures from what was known among them; its bounds are where that sum grows by t² of itself
(normal priors and a scaled inverse chi-square one: Gelman et al., Bayesian Data Analysis, 3rd ed.
2013, ch. 14; Bates & Watts, Nonlinear Regression Analysis, 1988, section 6.1; recalled).
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np

from scorecraft.arrays import Floats
from scorecraft.practice import LONE_SD_MM, SKIN_MM

SKIN_LIMITS_MM = (3.0, 40.0)
"""The thinnest and the thickest skin that are looked for."""
RULER_SD_MM = 0.3
"""A ruler read to a whole mm is off by this (1/sqrt(12), by definition)."""
SURE = 0.9
"""How often the stated bounds hold the truth."""
SKIN_SPREAD = 0.35
"""The skin of a baker differs from the usual one by this, of its logarithm."""
GROWTH_SPREAD = 0.2
"""The growth of a loaf differs from the assumed one by this."""
ERRORS_KNOWN = 3
"""What is thought of the errors beforehand counts like so many openings."""
SETTLED_FROM_ROWS = 4
"""Fewer openings do not settle the skin."""
SETTLED_FROM_CUTS = 2
"""Openings of fewer different cuts do not settle it."""
SETTLED_SHARE = 0.5
"""Settled is a skin whose error is at most this share of what is thought before."""
Widths = Callable[[float], Floats]
"""A model of the bake: skin thickness (mm) to the predicted width (mm) of every cut number."""

KNOTS = 9
"""Skins the model is run for at first; between them widths are interpolated."""
ROUNDS = 5
"""It is run again at the best skin and its bounds, at most so often."""
NEAR = 0.01
"""A skin this near (as a ratio) to one that was run needs no run of its own."""
FINE = 4001


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


@dataclass(frozen=True, slots=True)
class Fit:
    """What a bake teaches: the skin (mm), the growth over the assumed one, and how well it fits.

    `predicted_mm` and `residual_mm` (measured less predicted) are by row; `spread_mm` is the
    standard deviation the errors were taken to have. `settled` is False where the openings tell
    too little to go by: then a baker keeps the usual skin and growth.
    """

    skin_mm: Bounds
    growth: Bounds
    predicted_mm: Floats
    residual_mm: Floats
    spread_mm: float
    sure: float
    settled: bool


def table(widths: Widths, skins: Floats | None = None) -> tuple[Floats, Floats]:
    """Run a model over skins (K,), by default all that are looked for: skins, widths (K, cuts)."""
    if skins is None:
        knots = spaced(*SKIN_LIMITS_MM, KNOTS)
        skins = np.union1d(knots, SKIN_MM.value)
    return skins, np.array([widths(float(skin)) for skin in skins])


def spaced(low: float, high: float, count: int) -> Floats:
    """Give skins (mm) in equal ratios from one to another."""
    return np.exp(np.linspace(math.log(low), math.log(high), count))


def fit(
    skins: Floats,
    widths: Floats,
    rows: Sequence[int],
    measured_mm: Floats,
    *,
    sure: float = SURE,
) -> Fit:
    """Fit measured widths (N,) of the cuts at columns `rows` (N,) of a table of widths."""
    fine = np.union1d(spaced(float(skins[0]), float(skins[-1]), FINE), SKIN_MM.value)
    model = _interpolated(skins, widths, fine)[:, list(rows)]
    spread = LONE_SD_MM.value
    freedom = ERRORS_KNOWN + max(len(rows) - 2, 0)
    for _ in range(2):  # the errors are known only once there is a fit
        growth, least = _best_growth(fine, model, measured_mm, spread)
        best = int(np.argmin(least))
        residual = measured_mm - growth[best] * model[best]
        squares = ERRORS_KNOWN * LONE_SD_MM.value**2 + float((residual**2).sum())
        spread = max(math.sqrt(squares / freedom), RULER_SD_MM)
    growth, least = _best_growth(fine, model, measured_mm, spread)
    best, reach = int(np.argmin(least)), two_sided(sure, freedom)
    spare = least.min() + reach**2 - least
    skin = _bounds(fine, best, spare)
    settled = _settled(skin, rows, reach)
    grown = _growth_bounds(growth, best, spare, _weight(model, spread))
    predicted = growth[best] * model[best]
    return Fit(skin, grown, predicted, measured_mm - predicted, spread, sure, settled)


def fit_closely(
    widths: Widths, rows: Sequence[int], measured_mm: Floats, *, sure: float = SURE
) -> Fit:
    """Fit a model that takes long: run it for a few skins, then where the best and the bounds are.

    Interpolation between the skins that were run is so replaced by the model itself, until neither
    the best skin nor its bounds are far from one that was run. Widths are (N,) in mm.
    """
    skins, found = table(widths)
    now = fit(skins, found, rows, measured_mm, sure=sure)
    for _ in range(ROUNDS):
        wanted = (now.skin_mm.low, now.skin_mm.best, now.skin_mm.high)
        new = [skin for skin in wanted if np.abs(np.log(skins / skin)).min() > NEAR]
        if not new:
            break
        every = np.concatenate([skins, new])
        both = np.concatenate([found, table(widths, np.array(new))[1]])
        skins, index = np.unique(every, return_index=True)
        found = both[index]
        now = fit(skins, found, rows, measured_mm, sure=sure)
    return now


def two_sided(sure: float, freedom: int) -> float:
    """Give Student's t that holds the share `sure` (0 to 1) within -t..t; `freedom` is >= 1."""
    from scipy.special import stdtrit

    return float(stdtrit(freedom, (1 + sure) / 2))


def _best_growth(
    fine: Floats, model: Floats, measured_mm: Floats, spread: float
) -> tuple[Floats, Floats]:
    """Give for every skin of `fine` (F,) its best growth, and the sum of squares that is left.

    All openings grow in proportion to the growth: for each skin it is a linear regression.
    """
    known = 1 / GROWTH_SPREAD**2
    growth = (model @ measured_mm / spread**2 + known) / _weight(model, spread)
    off = measured_mm - growth[:, None] * model

    squares: Floats = (off**2).sum(axis=1) / spread**2 + known * (growth - 1) ** 2
    return growth, squares + (np.log(fine / SKIN_MM.value) / SKIN_SPREAD) ** 2


def _weight(model: Floats, spread: float) -> Floats:
    """How much is known about the growth at every skin: 1 over the square of its error."""
    weight: Floats = (model**2).sum(axis=1) / spread**2 + 1 / GROWTH_SPREAD**2
    return weight


def _growth_bounds(growth: Floats, best: int, spare: Floats, weight: Floats) -> Bounds:
    """Find the ends of the growths within reach: for each skin a parabola about the best one."""
    half = np.sqrt(np.maximum(spare, 0.0) / weight)
    inside = spare >= 0
    low, high = (growth - half)[inside].min(), (growth + half)[inside].max()
    return Bounds(float(growth[best]), max(float(low), 0.0), float(high))


def _settled(skin: Bounds, rows: Sequence[int], reach: float) -> bool:
    """Whether the openings tell more of the skin than was known without them."""
    if skin.open_below or skin.open_above:
        return False
    spread = math.log(skin.high / skin.low) / (2 * reach)
    few = len(rows) < SETTLED_FROM_ROWS or len(set(rows)) < SETTLED_FROM_CUTS
    return not few and spread <= SETTLED_SHARE * SKIN_SPREAD


def _interpolated(skins: Floats, widths: Floats, fine: Floats) -> Floats:
    """Interpolate every column over the logarithm of the skin."""
    at, knots = np.log(fine), np.log(skins)
    return np.column_stack([np.interp(at, knots, column) for column in widths.T])


def _bounds(fine: Floats, best: int, spare: Floats) -> Bounds:
    """Find the ends of the skins whose sum of squares stays within reach."""
    inside = np.flatnonzero(spare >= 0)
    first, last = int(inside[0]), int(inside[-1])
    low, high = float(fine[first]), float(fine[last])
    return Bounds(float(fine[best]), low, high, first == 0, last == len(fine) - 1)
