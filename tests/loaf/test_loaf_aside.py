import numpy as np
import pytest

from scorecraft.loaf.aside import aside


def test_it_is_the_cross_product():
    rng = np.random.default_rng(5)
    normal, way = rng.normal(size=(2, 7, 3))
    assert aside(normal, way) == pytest.approx(np.cross(normal, way))
