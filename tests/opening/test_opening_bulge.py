"""A dome's skin bulges where it is cut: the law, its limits, and four figures of a solid."""

import math

import numpy as np
import pytest
from support.scattered_cuts import scattered

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake, Growth
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.bulge import FLAT, Bed
from scorecraft.opening.elastic import elastic
from scorecraft.opening.kernel import ends_of, stiffness
from scorecraft.opening.panels import panels
from scorecraft.opening.predict import predict
from scorecraft.opening.stretch import Stretch

LOAF, BAKED = Bed(1 / 127, 6.0, 0.05), Stretch(0.1)
WAVES = np.array([1e-3, 0.01, 0.03, 0.1, 0.3])


def test_what_is_kept_of_the_tension_of_waves():
    """By hand at k = 0.03, without a stretch: bending, then the bed, per area and rise."""
    held = 6**3 * 0.03**4 / 9 + 2 * 0.05 * 0.03 / 3
    assert LOAF.kept(np.array(0.03), Stretch()) == pytest.approx(held / (held + 6 / 127**2))
    kept = LOAF.kept(WAVES, BAKED)
    assert (kept > LOAF.kept(WAVES, Stretch())).all()  # its own tension holds it besides
    assert (np.diff(kept) > 0).all()


def test_short_waves_and_large_spheres_are_those_of_the_flat_sheet():
    assert LOAF.kept(np.array(3.0), BAKED) == pytest.approx(1, abs=1e-5)
    large = Bed(1e-6, 6.0, 0.05)
    np.testing.assert_allclose(large.kept(WAVES, BAKED), 1, atol=1e-6)
    for part in large.between(np.array([3.0 + 0j, 40j, 200 + 100j]), BAKED):
        np.testing.assert_allclose(part, 0, atol=1e-4)


@pytest.mark.parametrize("bed", [FLAT, Bed(1 / 127, 6.0, 0.0)], ids=["no dome", "no inside"])
def test_without_a_dome_or_an_inside_the_sheet_is_flat(bed):
    for part in bed.between(np.array([3.0 + 0j, 40j]), BAKED):
        assert (part == 0).all()


@pytest.mark.parametrize("strain", [0.0, 0.1])
@pytest.mark.parametrize("long", [40.0, 150.0])
def test_a_wave_along_a_straight_cut_is_held_by_the_waves_of_all_directions(strain, long):
    """Traction over gap: k / 2 times the mean of cos^2 times what is kept at k / cos, times E'."""
    stretch = Stretch(strain)
    row = panels([np.array([[-900.0, 0], [900, 0]])], 2.0)
    wave = 2 * math.pi / long
    ends, every, middle = ends_of(row), np.arange(len(row)), np.array([len(row) // 2])
    gap = np.concatenate([np.cos(wave * row.midpoint[:, 0]), np.zeros(len(row))])
    flat, curved = (
        float((stiffness(row, ends, middle, every, stretch, bed) @ gap)[0]) for bed in (FLAT, LOAF)
    )
    turn = (np.arange(20_000) + 0.5) * math.pi / 40_000
    lost = wave / 2 * (np.cos(turn) ** 2 * (1 - LOAF.kept(wave / np.cos(turn), stretch))).mean()
    at = gap[middle[0]] * row.length[middle[0]]
    assert (flat - curved) / at == pytest.approx(stretch.pull * lost, rel=0.01)


@pytest.mark.parametrize("count", [4, 24])
def test_product_is_that_of_the_matrix(count):
    """Pair by pair, and by the grid."""
    parts = panels(scattered(count, 60.0), 2.0)
    given = np.random.default_rng(0).standard_normal(2 * len(parts))
    found = elastic(parts, BAKED, LOAF)
    assert (found.far is None) == (count == 4)
    exact = found.whole @ given
    np.testing.assert_allclose(found.times(given), exact, atol=3e-4 * np.abs(exact).max())
    assert np.linalg.eigvalsh(found.whole)[0] > 0


SOLID = {(12.0, 0.1): 13.9, (12.0, 0.03): 18.5, (20.0, 0.1): 28.2, (20.0, 0.03): 37.9}
"""Depth (mm) and inside over skin: how far the lips part."""
STRAIN = {0.1: 0.0777, 0.03: 0.0655}
"""Mean strain of the uncut skin, for one growth."""


@pytest.mark.parametrize(("depth", "inside"), SOLID)
def test_a_skin_welded_on_a_solid_inside(depth, inside):
    """A 120 mm cut in 12 mm of skin on a growing dome, small strain: finite elements of our own.

    Made by tests/published/tables/make_solid.py. The model is taken at small strain too.
    """
    loaf, small = make_loaf("round", 220, None, 95), 1e-4
    cut = np.array([[0.0, -60], [0, 60]])
    place = Place("made.score", 1, 1)
    cuts = (Cut(cut, "slash", "slash", 0, 0, depth, math.pi / 2, "expansion", place),)
    growth = small * STRAIN[inside] / np.mean(Growth(loaf, Bake()).mean[:2])
    found = predict(Layout("", (), loaf, Bake(), cuts), Skin(12.0, inside, growth), panel_mm=2.0)
    assert found.gap_mm.max() / small == pytest.approx(SOLID[depth, inside], rel=0.15)
