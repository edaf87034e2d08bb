"""Sizes from dough against a published loaf and school formulas.

Laboratory loaf of 100 g of flour: 173.5 g of dough fill 145 cm3 when mixed and 515 cm3 at the end
of proof (abstract of a cereal chemistry paper, quoted without its title in a data base; probably
R. C. Hoseney's group, 1985). Cap of a sphere with base radius a and height h: pi h (3 a^2 + h^2)
/ 6; half ellipsoid: 2 pi a b c / 3 (school formulas, recalled).
"""

import math

import pytest

from scorecraft.loaf.dough import Dough
from scorecraft.loaf.sizing import Known, size_from_dough


def test_laboratory_loaf():
    mixed = size_from_dough("round", 173.5, dough=Dough(1.0))
    assert mixed.loaf.volume_mm3 == pytest.approx(145e3, rel=0.01)
    proofed = size_from_dough("round", 173.5, dough=Dough(515 / 145))
    assert proofed.loaf.volume_mm3 == pytest.approx(515e3, rel=0.01)


def test_half_ellipsoid():
    found = size_from_dough("round", 750, dough=Dough(2.6))
    volume = 2 / 3 * math.pi * (found.loaf.width_mm / 2) ** 2 * found.loaf.height_mm
    assert volume == pytest.approx(1000 * 750 / 1.2 * 2.6)


def test_half_sphere_is_also_a_cap():
    """600 g x 2.5 / 1.2 = 1250 cm3: of the radius (3 V / 2 pi)^(1/3) = 84.19 mm."""
    radius = (3 * 1250e3 / math.tau) ** (1 / 3)
    found = size_from_dough("round", 600, dough=Dough(2.5), known=Known(width_mm=2 * radius))
    a, h = found.loaf.width_mm / 2, found.loaf.height_mm
    assert h == pytest.approx(radius)
    assert math.pi * h * (3 * a**2 + h**2) / 6 == pytest.approx(1250e3)


@pytest.mark.parametrize(("basket", "grams"), [(200, (450, 500)), (250, (900, 1000))])
def test_baskets_hold_their_usual_dough(basket, grams):
    """Round baskets of 8 in for about 450-500 g, of 10 in for 900-1000 g (common practice)."""
    for mass in grams:
        found = size_from_dough("round", mass, basket_mm=(basket, basket))
        assert 0.75 * basket < found.loaf.width_mm <= basket
        assert found.loaf.height_mm < 0.5 * found.loaf.width_mm
