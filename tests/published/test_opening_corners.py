"""Regular polygons cut all around, tension 1 all around: a hole, and a free piece inside it.

Opened area over that of the circular hole of the same area, 4 A T / E'. The exact value is that
of Muskhelishvili's method (Some Basic Problems of the Mathematical Theory of Elasticity, ch. 15;
recalled) on the Schwarz-Christoffel map of the outside of the polygon; the case
is worked in Ekneligoda & Zimmerman, Proc. R. Soc. A 462 (2006) 1933-1947 (recalled, the numbers
not compared).
"""

from functools import cache
from math import pi

import numpy as np
import pytest
from support.small_strain import solve

SIDES = [3, 4, 5, 6]


def series(sides, terms):
    """Coefficients c_j of the map z + sum c_j z^(1 - jn), |z| > 1, whose slope is
    (1 - z^-n)^(2/n): corners of a regular n-gon at the roots of 1."""
    binomial = [1.0]
    for j in range(1, terms + 1):
        binomial.append(binomial[-1] * (j - 1 - 2 / sides) / j)
    return np.array(binomial) / (1 - sides * np.arange(terms + 1.0))


def truncated(sides, terms, points=1 << 14):
    """Opened area over that of a circle for the map cut off after some terms: rounded corners.

    phi = z / 2 + sum a_j z^(1 - jn) is such that phi + w conj(phi' / w') has no powers below 0 on
    |z| = 1; the hole's edge moves by 4 phi / E.
    """
    power = 1 - sides * np.arange(terms + 1)
    c = series(sides, terms)
    z = np.exp(2j * pi * np.arange(points) / points)
    powers = z[:, None] ** power
    place, slope = powers @ c, powers @ (c * power) / z
    quotient = (np.fft.fft(place / slope.conj()) / points).real
    below = power[1:]
    matrix = np.eye(terms) + below * quotient[(below[:, None] + below - 1) % points]
    a = np.linalg.solve(matrix, -quotient[below % points] / 2)
    moved = 4 * (z / 2 + powers[:, 1:] @ a)
    along = 2j * pi * z * slope / points
    area = (place.conj() * along).imag.sum() / 2
    return (moved.conj() * along).imag.sum() / (4 * area)


@cache
def exact(sides):
    """The corners sharpen with the terms; what is missing falls as a power of their number."""
    coarse, middle, fine = (truncated(sides, terms) for terms in (32, 64, 128))
    return fine + (fine - middle) ** 2 / (middle - coarse - (fine - middle))


@cache
def opened(sides, panels):
    angle = 2 * pi * np.arange(sides + 1) / sides
    line = 30 * np.column_stack([np.cos(angle), np.sin(angle)])
    line[-1] = line[0]
    x, y = line.T
    area = (x[:-1] * y[1:] - x[1:] * y[:-1]).sum() / 2
    side = np.hypot(*(line[1] - line[0]))
    answer = solve([line], 12.0, strain=(0.5, 0.5, 0), panel_mm=side / panels)
    return answer.gap_mm @ answer.length_mm / (4 * area)


def test_the_exact_values():
    """They sink toward the circle's as the sides grow in number."""
    values = [exact(sides) for sides in SIDES]
    assert values == pytest.approx([1.62503, 1.20710, 1.09675, 1.05331], abs=1e-5)
    assert truncated(40, 128) == pytest.approx(1, abs=1e-3)


@pytest.mark.parametrize("sides", SIDES)
def test_polygons(sides):
    assert opened(sides, 100) == pytest.approx(exact(sides), rel=5e-4)
    assert opened(sides, 12) == pytest.approx(exact(sides), rel=3e-3)


@pytest.mark.parametrize("sides", SIDES)
def test_error_falls_with_the_panels(sides):
    counts = np.array([6, 12, 25, 50])
    errors = [abs(opened(sides, int(count)) / exact(sides) - 1) for count in counts]
    order = -np.polyfit(np.log(counts), np.log(errors), 1)[0]
    assert order > 0.9, errors
