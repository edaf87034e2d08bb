"""What the uncut skin carries: work stored, means over the cuts, strains that cannot be."""

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.opening.load import (
    Field,
    forces,
    load_on,
    scale_of,
    stored,
    strain_at,
    uncut_forces,
)
from scorecraft.opening.panels import panels
from scorecraft.opening.stretch import tension

CUTS = panels([np.array([[-60.0, 0], [-30, 0]]), np.array([[20.0, 10], [20, 80]])], 5.0)
NONE = panels([], 5.0)


def rising(points):
    """More strain to the right, none of it shear."""
    share = 0.1 + 0.001 * points[:, 0]
    return np.column_stack([share, 0.5 * share, 0 * share])


def test_work_is_half_of_tension_times_strain():
    """At small strain E / 2 (1 - nu^2) (exx^2 + eyy^2 + 2 nu exx eyy) + 2 mu exy^2 (handbooks)."""
    x, y, shear = 2e-6, 1e-6, 5e-7
    density = (x * x + y * y + x * y) / 1.5 + 2 / 3 * shear**2
    patches = np.array([[x, y, shear], [x, y, -shear]])
    assert stored(patches, np.array([30.0, 20.0])) == pytest.approx(50 * density, rel=1e-4)
    even = load_on(NONE, (x, y, shear))
    assert even.stored(50.0) == pytest.approx(50 * density, rel=1e-4)
    assert load_on(NONE, Field(rising, 7.0)).stored(50.0) == 7.0


def test_the_mean_is_taken_over_the_cuts_by_their_length():
    """A third of the length lies about x = -45, the rest at x = 20; strains are small."""

    def little(points):
        return 1e-6 * rising(points)

    load = load_on(CUTS, little)
    length = CUTS.length
    share = length @ (0.1 + 0.001 * CUTS.midpoint[:, 0]) / length.sum()
    np.testing.assert_allclose(load.even, 1e-6 * np.array([share, share / 2, 0]), rtol=1e-9)
    assert load.stretch.strain == pytest.approx(0.75e-6 * share)
    np.testing.assert_allclose(load.mean, tension(load.even[None])[0], rtol=1e-4)
    here = tension(little(CUTS.midpoint))
    np.testing.assert_allclose(load.mean + load.beside, here)
    points = np.array([[10.0, 5.0], [-40.0, 0.0]])
    np.testing.assert_allclose(load.extra(points), tension(little(points)) - load.mean)
    assert (load_on(CUTS, (0.1, 0.1, 0.0)).extra(points) == 0).all()


def test_forces_are_those_of_the_tension_on_a_panel():
    """n s n and t s n times the length, of tensions that differ from panel to panel."""

    def sheared(points):
        return np.column_stack([rising(points)[:, :2], points[:, 0] / 999])

    load = load_on(CUTS, sheared)
    sxx, syy, sxy = (load.mean + load.beside).T
    s = np.moveaxis(np.array([[sxx, sxy], [sxy, syy]]), 2, 0)
    pull = np.einsum("mij,mj->mi", s, CUTS.normal) * CUTS.length[:, None]
    both = [(pull * way).sum(axis=1) for way in (CUTS.normal, CUTS.tangent)]
    np.testing.assert_allclose(uncut_forces(CUTS, load), np.concatenate(both))
    unit = forces(CUTS) @ np.array([0.0, 0.0, 1.0])
    assert unit == pytest.approx(np.concatenate([
        2 * CUTS.normal.prod(axis=1) * CUTS.length,
        (CUTS.normal * CUTS.tangent[:, ::-1]).sum(axis=1) * CUTS.length,
    ]))  # fmt: skip


@pytest.mark.parametrize(
    ("tension_xyz", "scale"),
    [((0.3, 0.1, 0.0), 0.2), ((0.2, 0.2, 0.1), 0.2), ((0.1, -0.1, 0.0), 0.1),
     ((0.0, 0.0, -0.3), 0.3), ((0.1, -0.0999, 0.0), 0.1), ((0.1, -0.099, 0.0), 0.0005)],
)  # fmt: skip
def test_the_scale_is_the_mean_tension_or_the_largest_where_that_is_none(tension_xyz, scale):
    assert scale_of(np.array(tension_xyz)) == pytest.approx(scale)


@pytest.mark.parametrize(
    ("strain", "left"),
    [((-0.99, 0.5, 0.0), True), ((-1.0, 0.5, 0.0), False), ((0.5, -1.0, 0.0), False),
     ((-0.5, -0.5, 0.49), True), ((-0.5, -0.5, -0.51), False), ((0.1, 0.1, np.inf), False)],
)  # fmt: skip
def test_a_strain_must_leave_some_skin_in_every_direction(strain, left):
    if left:
        np.testing.assert_array_equal(strain_at(strain, np.zeros((2, 2))), [strain, strain])
    else:
        with pytest.raises(UsageError, match="strain"):
            strain_at(strain, np.zeros((2, 2)))
