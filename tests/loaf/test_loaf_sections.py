"""Straight sections of half ellipsoids are half ellipses: their lengths by elliptic integrals.

Half the girth of an ellipse of half axes a > b is 2 a E(1 - b^2 / a^2) (any handbook; recalled).
"""

import numpy as np
import pytest
from scipy import special

from scorecraft.loaf.bake import Bake, Growth
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.grown import grown
from scorecraft.loaf.outline import Outline
from scorecraft.loaf.sections import SECTIONS, Sections
from scorecraft.loaf.tin import Tin

A, B, HIGH = 80.0, 120.0, 60.0
DOME = Loaf(Outline("oval", A, B, 2.0), HIGH, (2.0, 2.0))


def half_girth(one, other):
    low, high = sorted((one, other))
    return 2 * high * special.ellipe(1 - (low / high) ** 2)


@pytest.mark.parametrize("node", [0, 9, 23, 39])
def test_sections_of_a_half_ellipsoid_are_half_ellipses(node):
    share = node / (SECTIONS - 1)
    shrunk = (1 - share**2) ** 0.5
    sections = Sections(DOME)
    across, along = (half_girth(shrunk * half, shrunk * HIGH) for half in (A, B))
    places = np.array([share, -share])
    assert sections.across(places * B) == pytest.approx([across] * 2, rel=2e-5)
    assert sections.along(places * A) == pytest.approx([along] * 2, rel=2e-5)


def test_between_sections_it_is_a_straight_line_and_none_is_shorter_than_near_the_end():
    sections = Sections(DOME)
    step = B / (SECTIONS - 1)
    nodes = sections.across(step * np.arange(SECTIONS))
    assert sections.across(np.array([10.25 * step])) == pytest.approx(
        0.75 * nodes[10] + 0.25 * nodes[11]
    )
    last = half_girth(*((1 - 0.98**2) ** 0.5 * np.array([A, HIGH])))
    assert nodes[-1] == pytest.approx(last, rel=2e-5)
    assert sections.across(np.array([B, 1.5 * B])) == pytest.approx([last] * 2, rel=2e-5)


def test_sections_of_a_squarish_loaf_end_at_its_rim():
    """On |x/a|^4 + |y/b|^4 = 1 a flat loaf is as wide at y as its superellipse."""
    flat = Loaf(Outline("square", A, B, 4.0), 8.0, (12.0, 12.0))
    share = 0.75
    wide, long = (2 * half * (1 - share**4) ** 0.25 for half in (A, B))
    sections = Sections(flat)
    for found, plan in (
        (sections.across(np.array([share * B])), wide),
        (sections.along(np.array([share * A])), long),
    ):
        assert plan + 10 < found[0] < plan + 16  # and up and down the 8 mm of its sides


def test_in_a_tin_the_skin_grows_as_its_straight_sections_do():
    loaf = make_loaf("tin", 120, 200, 80, tin=Tin(230, 70, 58))
    bake = Bake(spring=1.5, steam=False)
    after, before = Sections(grown(loaf, bake.sideways, bake.upward)), Sections(loaf)
    plan = np.array([[0.0, 0.0], [35.0, 60.0]])
    strain = Growth(loaf, bake).at(loaf.plan_to_sheet(plan))
    wider = after.across(plan[:, 1]) / before.across(plan[:, 1]) - 1
    longer = after.along(plan[:, 0]) / before.along(plan[:, 0]) - 1
    assert strain == pytest.approx(
        bake.left * np.column_stack([wider, longer, [0, 0]]), rel=1e-4, abs=1e-12
    )
