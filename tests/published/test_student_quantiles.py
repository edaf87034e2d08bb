"""Quantiles of Student's t against another library (scipy) and a printed table.

Two-sided 90 % and 95 %: 6.314 and 12.706 at 1 degree of freedom, 2.015 and 2.571 at 5, 1.812 and
2.228 at 10 (Abramowitz & Stegun 1964, table 26.10; recalled, page not checked).
"""

import pytest
from scipy.stats import t

from scorecraft.tune.student import two_sided


@pytest.mark.parametrize(
    ("freedom", "ninety", "ninety_five"),
    [(1, 6.314, 12.706), (5, 2.015, 2.571), (10, 1.812, 2.228)],
)
def test_the_printed_table(freedom, ninety, ninety_five):
    assert two_sided(0.90, freedom) == pytest.approx(ninety, abs=6e-4)
    assert two_sided(0.95, freedom) == pytest.approx(ninety_five, abs=6e-4)


@pytest.mark.parametrize("freedom", [1, 2, 3, 7, 30, 400])
@pytest.mark.parametrize("sure", [0.5, 0.8, 0.9, 0.99])
def test_another_library(freedom, sure):
    assert two_sided(sure, freedom) == pytest.approx(t.ppf((1 + sure) / 2, freedom), rel=1e-5)


def test_no_degree_of_freedom_is_no_distribution():
    with pytest.raises(ValueError, match="at least one"):
        two_sided(0.9, 0)
