"""The folding test: a drape's petals together are as wide as the dome on every ring.

Half sphere: a circle at the distance s from the pole is 2 pi R sin(s / R) around (Snyder, Map
Projections, USGS 1395, 1987, chapter 25). Half ellipsoid of revolution: the distance along the
ellipse is an incomplete elliptic integral of the second kind (NIST Handbook, section 19.30(i),
recalled), here by scipy. Widths are measured on the drawn edges.
"""

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.special import ellipeinc

from scorecraft.cuts import Cut, Layout
from scorecraft.designing import make
from scorecraft.drape.drape import make_drape
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

WORST_MM = 0.5


def bare(loaf):
    cut = Cut(
        np.array([[0.0, 20.0], [0.0, 40.0]]), "slash", "slash", 0, 0, 5.0, 1.5, "expansion",
        Place("made.score", 1, 1),
    )  # fmt: skip
    return Layout("Bare", (), loaf, Bake(), (cut,))


def angle_at(edge, distance):
    """Direction of the point of a drawn edge at a distance from the crown."""
    far = np.hypot(*edge.T)
    return np.interp(distance, far, np.unwrap(np.arctan2(edge[:, 1], edge[:, 0])))


def drawn_around(drape, distance):
    """Sum of the petals' widths at a distance, from their drawn edges: arcs about the crown."""
    total = 0.0
    for index, dart in enumerate(drape.darts):
        after = drape.darts[(index + 1) % len(drape.darts)]
        turn = angle_at(after.right, distance) - angle_at(dart.left, distance)
        total += distance * np.mod(turn, 2 * np.pi)
    return total


def width(petal, distance):
    """Width (mm) of a petal along the ring at a distance from the crown, from edge to edge."""
    paper = petal.angle(np.array([distance, distance]), np.array([petal.start, petal.end]))
    return float(distance * (paper[1] - paper[0]))


def test_half_sphere():
    radius = 100.0
    loaf = make_loaf("round", 2 * radius, None, radius, profile=(2.0, 2.0))
    drape = make_drape(bare(loaf))
    for distance in np.linspace(45, radius * np.pi / 2 - 0.5, 25):
        true = 2 * np.pi * radius * np.sin(distance / radius)
        assert drawn_around(drape, distance) == pytest.approx(true, abs=WORST_MM)
        around = sum(width(petal, distance) for petal in drape.petals)
        assert around == pytest.approx(true, abs=WORST_MM)


def test_half_ellipsoid():
    a, b = 110.0, 80.0
    loaf = make_loaf("round", 2 * a, None, b, profile=(2.0, 2.0))
    drape = make_drape(bare(loaf))
    for distance in np.linspace(45, 0.99 * float(loaf.reach(0.0)), 12):
        phi = brentq(lambda p, s=distance: a * ellipeinc(p, 1 - (b / a) ** 2) - s, 0, np.pi / 2)
        true = 2 * np.pi * a * np.sin(phi)
        assert drawn_around(drape, distance) == pytest.approx(true, abs=WORST_MM)


@pytest.mark.parametrize("shape", [("oval", 165.0, 260.0, 85.0), ("square", 200.0, 200.0, 85.0)])
def test_other_loaves_direction_by_direction(shape):
    """Each petal is as wide as the dough's own surface, summed here in small steps."""
    loaf = make_loaf(*shape)
    drape = make_drape(bare(loaf))
    for petal in drape.petals:
        reach = loaf.reach(np.linspace(petal.start, petal.end, 50)).min()
        for distance in (0.4 * reach, 0.7 * reach, 0.98 * reach):
            theta = np.linspace(petal.start, petal.end, 3001)
            rays = distance * np.column_stack([np.cos(theta), np.sin(theta)])
            points = loaf.surface(loaf.sheet_to_plan(rays))
            true = np.linalg.norm(np.diff(points, axis=0), axis=1).sum()
            assert width(petal, distance) == pytest.approx(true, abs=WORST_MM / len(drape.petals))


def test_the_pattern_keeps_its_true_lengths():
    layout = make("leaf-crown").layout
    drape = make_drape(layout)
    drawn = np.zeros(len(layout.cuts))
    for each in drape.lines:
        if each.cut >= 0:
            drawn[each.cut] += np.hypot(*np.diff(each.line, axis=0).T).sum()
    true = layout.loaf.lengths_on_dough([cut.line for cut in layout.cuts])
    assert drawn == pytest.approx(true, abs=drape.fit_mm, rel=0.02)
    flat = np.array([np.hypot(*np.diff(cut.line, axis=0).T).sum() for cut in layout.cuts])
    assert np.abs(drawn - true).max() < 0.7 * np.abs(flat - true).max()


def test_the_stated_fit_is_kept():
    layout = make("leaf-crown").layout
    few, many = make_drape(layout, fit_mm=3.0), make_drape(layout, fit_mm=0.4)
    assert few.fit_mm <= 3.0 and many.fit_mm <= 0.4
    assert len(few.petals) < len(many.petals)
    reach = float(layout.loaf.reach(0.0))
    for dart in many.darts:
        length = np.hypot(*np.diff(dart.left, axis=0).T).sum()
        assert 0 <= length - (reach - dart.first_mm) <= 0.4
