"""Quantiles of Student's t against a printed table and closed forms.

Two-sided 90 % and 95 %: 6.314 and 12.706 at 1 degree of freedom, 2.015 and 2.571 at 5, 1.812 and
2.228 at 10 (Abramowitz & Stegun, Handbook of Mathematical Functions, 1964, table 26.10; recalled).
Closed forms of 1, 2 and 4 degrees: the share within -t..t is 2/pi atan t, t / sqrt(2 + t^2) and
s (3 - s^2) / 2 with s = t / sqrt(4 + t^2) (ibid. 26.7.3 and 26.7.4; recalled).
"""

import math

import pytest

from scorecraft.tune.fit import two_sided


@pytest.mark.parametrize(
    ("freedom", "ninety", "ninety_five"),
    [(1, 6.314, 12.706), (5, 2.015, 2.571), (10, 1.812, 2.228)],
)
def test_the_printed_table(freedom, ninety, ninety_five):
    assert two_sided(0.90, freedom) == pytest.approx(ninety, abs=6e-4)
    assert two_sided(0.95, freedom) == pytest.approx(ninety_five, abs=6e-4)


@pytest.mark.parametrize("sure", [0.5, 0.8, 0.9, 0.99])
def test_closed_forms(sure):
    assert 2 / math.pi * math.atan(two_sided(sure, 1)) == pytest.approx(sure, rel=1e-9)
    t = two_sided(sure, 2)
    assert t / math.sqrt(2 + t**2) == pytest.approx(sure, rel=1e-9)
    t = two_sided(sure, 4)
    s = t / math.sqrt(4 + t**2)
    assert s * (3 - s**2) / 2 == pytest.approx(sure, rel=1e-9)
