"""Fit the skin thickness, and the growth where there is enough to go by, to measured openings.

Measured widths are taken as predicted width plus independent errors of one size. The best skin
has the least sum of squares; its bounds are where that sum grows by t²/(n - p) of itself
(profile likelihood of a nonlinear regression; Bates & Watts, Nonlinear Regression Analysis, 1988,
section 6.1, recalled, page not checked).
"""

import math
from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from scorecraft.practice import (
    GROWTH_FROM_CUTS,
    GROWTH_FROM_ROWS,
    LONE_SD_MM,
    RULER_SD_MM,
    SKIN_LIMITS_MM,
    SURE,
)
from scorecraft.tune.student import two_sided

Array = NDArray[np.float64]
Widths = Callable[[float], Array]
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

    `growth` is None where the openings are too few to find it; then it is taken as assumed.
    `predicted_mm` and `residual_mm` (measured less predicted) are by row; `spread_mm` is the
    standard deviation the errors were taken to have.
    """

    skin_mm: Bounds
    growth: Bounds | None
    predicted_mm: Array
    residual_mm: Array
    spread_mm: float
    sure: float


def table(widths: Widths, skins: Array | None = None) -> tuple[Array, Array]:
    """Run a model over skins (K,), by default all that are looked for: skins, widths (K, cuts)."""
    if skins is None:
        skins = spaced(SKIN_LIMITS_MM[0].value, SKIN_LIMITS_MM[1].value, KNOTS)
    return skins, np.array([widths(float(skin)) for skin in skins])


def spaced(low: float, high: float, count: int) -> Array:
    """Give skins (mm) in equal ratios from one to another."""
    return np.exp(np.linspace(math.log(low), math.log(high), count))


def fit(
    skins: Array,
    widths: Array,
    rows: Sequence[int],
    measured_mm: Array,
    *,
    sure: float = SURE.value,
) -> Fit:
    """Fit measured widths (N,) of the cuts at columns `rows` (N,) of a table of widths.

    The growth is fitted too where there are enough rows of enough different cuts and it makes
    them fit better than chance would.
    """
    fine = np.exp(np.linspace(math.log(skins[0]), math.log(skins[-1]), FINE))
    model = _interpolated(skins, widths, fine)[:, list(rows)]
    plain = fit_skin(fine, model, measured_mm, sure=sure)
    enough = len(rows) >= GROWTH_FROM_ROWS.value and len(set(rows)) >= GROWTH_FROM_CUTS.value
    if not enough:
        return plain
    both = fit_both(fine, model, measured_mm, sure=sure)
    return both if _better(plain, both, sure) else plain


def fit_closely(
    widths: Widths, rows: Sequence[int], measured_mm: Array, *, sure: float = SURE.value
) -> Fit:
    """Fit a model that takes long: run it for a few skins, then where the best and the bounds are.

    Interpolation between the skins that were run is so replaced by the model itself, until
    neither the best skin nor its bounds are far from one that was run.
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


def fit_skin(fine: Array, model: Array, measured_mm: Array, *, sure: float) -> Fit:
    """Fit the skin alone: `model` (F, N) are the widths of each row at the skins `fine` (F,)."""
    squares = ((measured_mm - model) ** 2).sum(axis=1)
    best = int(np.argmin(squares))
    spread, reach = _allowed(squares[best], len(measured_mm), 1, sure)
    skin = _bounds(fine, squares, squares[best] + reach)
    residual = measured_mm - model[best]
    return Fit(skin, None, model[best], residual, spread, sure)


def fit_both(fine: Array, model: Array, measured_mm: Array, *, sure: float) -> Fit:
    """Fit skin and growth: all openings grow in proportion to the growth."""
    growth = model @ measured_mm / np.maximum((model**2).sum(axis=1), 1e-12)
    squares = ((measured_mm - growth[:, None] * model) ** 2).sum(axis=1)
    best = int(np.argmin(squares))
    spread, reach = _allowed(squares[best], len(measured_mm), 2, sure)
    skin = _bounds(fine, squares, squares[best] + reach)
    # for each skin the growths within reach: a parabola about the best one
    spare = squares[best] + reach - squares
    half = np.sqrt(np.maximum(spare, 0.0) / np.maximum((model**2).sum(axis=1), 1e-12))
    inside = spare >= 0
    low, high = (growth - half)[inside].min(), (growth + half)[inside].max()
    grown = Bounds(float(growth[best]), float(low), float(high), skin.open_below, skin.open_above)
    predicted = growth[best] * model[best]
    return Fit(skin, grown, predicted, measured_mm - predicted, spread, sure)


def _interpolated(skins: Array, widths: Array, fine: Array) -> Array:
    """Interpolate every column over the logarithm of the skin."""
    at, knots = np.log(fine), np.log(skins)
    return np.column_stack([np.interp(at, knots, column) for column in widths.T])


def _allowed(least: float, count: int, unknowns: int, sure: float) -> tuple[float, float]:
    """Give the spread of the errors, and how much the sum of squares may grow within the bounds."""
    freedom = count - unknowns
    if freedom < 1:
        spread = LONE_SD_MM.value
        return spread, (spread * two_sided(sure, 1000)) ** 2
    spread = max(math.sqrt(least / freedom), RULER_SD_MM.value)
    return spread, (spread * two_sided(sure, freedom)) ** 2


def _bounds(fine: Array, squares: Array, most: float) -> Bounds:
    """Find the ends of the skins whose sum of squares stays within reach."""
    inside = np.flatnonzero(squares <= most)
    first, last = int(inside[0]), int(inside[-1])
    best = float(fine[int(np.argmin(squares))])
    edge = len(fine) - 1
    return Bounds(best, float(fine[first]), float(fine[last]), first == 0, last == edge)


def _better(plain: Fit, both: Fit, sure: float) -> bool:
    """Whether the growth makes the openings fit better than chance would (an F test)."""
    freedom = len(both.residual_mm) - 2
    gained = float((plain.residual_mm**2).sum() - (both.residual_mm**2).sum())
    return gained > (both.spread_mm * two_sided(sure, freedom)) ** 2
