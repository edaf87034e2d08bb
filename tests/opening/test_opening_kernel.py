"""The stiffness of panels is symmetric, positive, and that of dislocations far away."""

import numpy as np
import pytest
from support.scattered_cuts import scattered
from support.whole_matrix import whole

from scorecraft.opening.kernel import CORE, WIDE, corner_share, ends_of, stiffness
from scorecraft.opening.panels import panels
from scorecraft.opening.stretch import Stretch
from scorecraft.opening.tension import tension_of


def plainly(parts):
    """The same matrix straight from the energy of dislocations with cores, end by end."""
    ends = ends_of(parts)
    cos, sin = ends.double.T
    along = np.stack([[1 + cos, sin], [sin, 1 - cos]]).transpose(2, 0, 1) / 2
    r = ends.at[:, None] - ends.at[None]
    squared = (r**2).sum(axis=-1)
    core = ends.core2[:, None] + ends.core2[None]
    wide = WIDE * core
    dyad = r[..., :, None] * r[..., None, :]
    both = wide[..., None, None] * (along[:, None] @ along[None])
    energy = (dyad + both) / (squared + wide)[..., None, None]
    energy = energy - 0.5 * np.log(squared + core)[..., None, None] * np.eye(2)
    f = ends.first
    energy = energy[f + 1] - energy[f]
    energy = energy[:, f + 1] - energy[:, f]
    frames = [parts.normal, parts.tangent]
    blocks = [[np.einsum("ia,ijab,jb->ij", u, energy, v) for v in frames] for u in frames]
    return np.block(blocks) / (4 * np.pi)


def bent():
    angle = np.linspace(0, 4, 100)
    arc = 30 * np.column_stack([np.cos(angle), np.sin(angle)])
    return panels([arc, np.array([[0, 0], [40, 10.0]]), np.array([[20, -10], [25, 20.0]])], 2.0)


def test_matrix_is_the_energy_of_dislocations():
    np.testing.assert_allclose(whole(bent()), plainly(bent()), atol=1e-14)


def test_chosen_rows_and_columns_are_those_of_the_whole():
    parts = bent()
    some = np.array([3, 4, 5, 50, 51, 20])
    others = np.array([50, 2, 7])
    rows, columns = (np.concatenate([which, which + len(parts)]) for which in (some, others))
    part = stiffness(parts, ends_of(parts), some, others)
    np.testing.assert_allclose(part, whole(parts)[np.ix_(rows, columns)], atol=1e-15)


def test_symmetric_and_positive_even_where_cuts_cross_at_a_degree():
    parts = panels(scattered(24, 100.0, seed=0), 4.0)
    matrix = whole(parts)
    np.testing.assert_allclose(matrix, matrix.T, atol=1e-14)
    assert np.linalg.eigvalsh(matrix)[0] > -1e-12, "pieces cut out all around move freely"


def test_core_makes_the_endless_sum_exact():
    assert 2 * np.sinh(np.pi * CORE) == pytest.approx(1)


def test_piece_cut_out_all_around_moves_freely():
    """Shifting the inside of a ring takes no work."""
    angle = np.linspace(0, 2 * np.pi, 61)
    ring = 20 * np.column_stack([np.cos(angle), np.sin(angle)])
    ring[-1] = ring[0]
    parts = panels([ring], 2.0)
    shift = np.array([0.3, 0.8])
    jumps = np.concatenate([parts.normal @ shift, parts.tangent @ shift])
    matrix = whole(parts)
    assert jumps @ matrix @ jumps < 1e-5 * np.diag(matrix) @ jumps**2


@pytest.mark.parametrize("size", [4.0, 2.0])
def test_piece_between_crossing_cuts_moves_freely(size):
    """A square between four lines that cross: no work is done at its corners."""
    lines = [np.array([[-30.0, y], [30.0, y]]) for y in (-10.0, 10.0)]
    lines += [line[:, ::-1] for line in lines]
    parts = panels(lines, size)
    inside = np.abs(parts.midpoint).max(axis=1) < 10 + 1e-9
    outward = np.sign(np.einsum("ij,ij->i", parts.normal, parts.midpoint)) * inside
    for shift in ([1.0, 0.0], [0.6, 0.8]):
        jumps = np.concatenate(
            [outward * (parts.normal @ shift), outward * (parts.tangent @ shift)]
        )
        matrix = whole(parts)
        assert abs(jumps @ matrix @ jumps) < 1e-9 * (np.diag(matrix) @ jumps**2)


@pytest.mark.parametrize("strain", [0.0, 0.1, 0.3])
def test_force_far_away_is_tension_times_length(strain):
    """The matrix against the stress field of tension.py, two independent routes.

    Tension is told as if it were symmetric: on a stretched sheet only the pull across is the same.
    """
    stretch = Stretch(strain)
    parts = panels([np.array([[0.0, 0], [6, 2]]), np.array([[40.0, 30], [44, 37]])], 1.0)
    count, own = len(parts), parts.of_line
    random = np.random.default_rng(3)
    gap, slide = np.zeros(count), np.zeros(count)
    gap[own[0]], slide[own[0]] = random.random((2, len(own[0])))
    force = -whole(parts, stretch) @ np.concatenate([gap, slide])
    stress = tension_of(parts, gap, slide, parts.midpoint[own[1]], stretch)
    pull = np.einsum("ijk,ik->ij", stress, parts.normal[own[1]]) * parts.length[own[1], None]
    normal = (pull * parts.normal[own[1]]).sum(axis=1)
    shear = (pull * parts.tangent[own[1]]).sum(axis=1)
    np.testing.assert_allclose(force[own[1]], normal, rtol=2e-3)
    if not strain:
        np.testing.assert_allclose(force[own[1] + count], shear, rtol=2e-3)


@pytest.mark.parametrize(
    ("degrees", "share"), [(0, 1.0), (20, 1.0), (30, 0.45), (60, 0.34), (90, 0.27), (120, 0.25)]
)
def test_core_is_narrower_at_sharp_corners(degrees, share):
    """The shares that the opened areas of bent slits and polygons ask for, within 0.04."""
    assert corner_share(np.radians(degrees)) == pytest.approx(share, abs=0.04)


def test_only_where_skin_fills_more_than_half_a_turn():
    """Cores at a bend of 90 degrees, a crossing, a T and a free tip, panels of one length."""
    bend = [np.array([[0.0, 0], [8, 0], [8, 8]])]
    crossing = [np.array([[0.0, 20], [16, 20]]), np.array([[8.0, 12], [8, 28]])]
    tee = [np.array([[0.0, 50], [16, 50]]), np.array([[8.0, 50], [8, 58]])]
    for lines, place, share in [
        (bend, [8, 0], corner_share(np.pi / 2)),
        (crossing, [8, 20], 1.0),
        (tee, [8, 50], 1.0),
        (bend, None, 1.0),
    ]:
        parts = panels(lines, 2.0)
        ends = ends_of(parts)
        at = parts.start[0] if place is None else np.array(place, dtype=float)
        core = np.sqrt(2 * ends.core2[np.hypot(*(ends.at - at).T) < 1e-9])
        met = np.hypot(*(np.concatenate([parts.start, parts.end]) - at).T) < 1e-9
        mean = np.concatenate([parts.length, parts.length])[met].mean()
        np.testing.assert_allclose(core, CORE * mean * share)
