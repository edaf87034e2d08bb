"""Lines on the dough seen from straight above."""

import numpy as np
import pytest
import shapely

from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.plan import plan_strings

LOAF = make_loaf("round", 220, None, 95)


def test_rays_stay_straight_and_other_lines_bend():
    """From above a ray is a ray; a line beside the crown comes nearer to it toward the rim."""
    ray = np.array([[0.0, 0.0], [0.0, 100.0]])
    aside = np.array([[-100.0, 40.0], [100.0, 40.0]])
    seen_ray, seen_aside = plan_strings(LOAF, [ray, aside])
    assert shapely.get_num_coordinates(seen_ray) >= 2
    assert np.abs(shapely.get_coordinates(seen_ray)[:, 0]).max() < 1e-6
    x, y = shapely.get_coordinates(seen_aside).T
    assert len(x) > 10
    assert y[len(y) // 2] > y[0] + 3
    assert y[0] == pytest.approx(y[-1])


def test_every_line_keeps_its_place_and_direction():
    lines = [np.array([[k, 50.0], [k, 5.0]]) for k in (1.0, 20.0, 3.0)]
    seen = plan_strings(LOAF, lines)
    assert len(seen) == 3
    for line, given in zip(seen, lines, strict=True):
        first, last = shapely.get_coordinates(line)[[0, -1]]
        assert first[1] > last[1]
        np.testing.assert_allclose(first, LOAF.sheet_to_plan(given[:1])[0])
    assert len(plan_strings(LOAF, [])) == 0
