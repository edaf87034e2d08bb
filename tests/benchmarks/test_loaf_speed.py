"""A loaf is made anew at each edit: that costs no more than laying a few cuts on it."""

import numpy as np
from support.timing import ratio

from scorecraft.loaf.dome import make_loaf


def test_making_a_loaf_costs_no_more_than_placing_fifty_thousand_points():
    """Measured: a fifth of it."""
    points = np.random.default_rng(0).uniform(-50, 50, (50_000, 2))
    loaf = make_loaf("long", 110, 320, 70)
    made = [make_loaf("long", 100 + number / 10, 320, 70) for number in range(2)]
    assert made[0] != made[1]
    assert (
        ratio(
            lambda: make_loaf("long", 111, 320, 70).reach(0.0),
            lambda: loaf.sheet_to_plan(points),
            1,
        )
        <= 1
    )
