import math

import pytest

from scorecraft.loaf.areas import on_plan, on_sheet, rims_of
from scorecraft.loaf.dome import make_loaf

RING = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)
ROUND = make_loaf("round", 200, None, 100)


def test_areas_are_those_of_discs_and_rings():
    assert on_plan(ROUND).area == pytest.approx(math.pi * 100**2, rel=1e-4)
    assert on_sheet(ROUND).area == pytest.approx(math.pi * (50 * math.pi) ** 2, rel=1e-3)
    assert on_plan(RING).area == pytest.approx(math.pi * (140**2 - 50**2), rel=1e-4)
    assert on_sheet(RING).area == pytest.approx(
        math.pi * ((50 + 45 * math.pi) ** 2 - 50**2), rel=1e-3
    )


def test_rims_are_the_outer_one_and_those_of_holes_none_of_them_closed():
    outer, hole = rims_of(on_sheet(RING, 40))
    assert outer == pytest.approx(RING.sheet_rim(40)) and hole == pytest.approx(RING.sheet_hole(40))
    assert [len(each) for each in rims_of(on_plan(ROUND, 50))] == [50]
