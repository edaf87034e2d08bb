"""The measure itself: four times the work is seen, however often it is tried again."""

import numpy as np
from support.timing import ratio

NUMBERS = np.random.default_rng(0).uniform(size=400_000)


def test_quadratic_growth_would_be_noticed():
    assert ratio(lambda: NUMBERS.copy().sort(), lambda: NUMBERS[:100_000].copy().sort(), 2.7) > 2.7


def test_linear_growth_holds():
    assert ratio(lambda: NUMBERS.copy().sort(), lambda: NUMBERS[:200_000].copy().sort(), 2.7) <= 2.7
