"""What is never written down as a matrix does as the matrix does: products, answers, contact."""

import tracemalloc

import numpy as np
import pytest
from support.scattered_cuts import scattered, turned
from support.whole_matrix import answers, whole

import scorecraft
from scorecraft.opening import elastic as room
from scorecraft.opening.elastic import elastic, windows
from scorecraft.opening.ligament import springs
from scorecraft.opening.load import load_on
from scorecraft.opening.panels import panels
from scorecraft.opening.predict import sheet_of
from scorecraft.opening.solve import jumps, solve
from scorecraft.opening.stretch import Stretch
from scorecraft.opening.system import system

AREA = np.pi * 120**2
INSIDE = 0.03
NEAR = 1.5e-4
"""Jumps are so near those of the whole matrix, as a share of the widest."""


def crown(count):
    """Leaf-like figures: two outlines that meet, a midrib and a vein that starts on it."""
    across = np.sin(np.linspace(0, np.pi, 30))
    up = np.linspace(26, 84, 30)
    leaf = [
        np.column_stack([np.zeros(2), [28.0, 78.0]]),
        np.column_stack([9 * across, up]),
        np.column_stack([-9 * across, up]),
        np.array([[0.0, 45.0], [4.0, 52.0]]),
    ]
    lines = [turned(line, 2 * np.pi * k / count) for k in range(count) for line in leaf]
    return lines, np.tile([9.0, 6.0, 6.0, 3.0], count)


def hatch(reach, step):
    at = np.arange(-reach + step, reach, step)
    bars = [np.array([[x, -reach], [x, reach]]) for x in at]
    return bars + [line[:, ::-1] for line in bars]


def apart(lines, depth, strain, area, panel_mm):
    """How far jumps are from those of the whole matrix, as shares of the widest; panels shut."""
    depth = np.broadcast_to(np.asarray(depth, dtype=float), len(lines))
    equations = system(lines, panel_mm, springs(depth, 12.0, INSIDE).normal, strain)
    assert equations.elastic.far is not None
    held, load = springs(equations.depths(depth), 12.0, INSIDE), load_on(equations.panels, strain)
    ours = jumps(equations, held, load, area_mm2=area).jumps
    theirs, closed = answers(equations.panels, held, load, area)
    return np.abs(ours - theirs) / theirs.max(), closed, ours


@pytest.mark.parametrize("strain", [0.0, 0.1, 0.3])
def test_product_is_that_of_the_matrix(strain):
    parts = panels(scattered(24, 60.0), 2.0)
    given = np.random.default_rng(0).standard_normal(2 * len(parts))
    exact = whole(parts, Stretch(strain)) @ given
    found = elastic(parts, Stretch(strain))
    assert found.far is not None
    np.testing.assert_allclose(found.times(given), exact, atol=3e-4 * np.abs(exact).max())


def test_few_panels_need_no_grid():
    parts, stretch = panels(scattered(4, 60.0), 2.0), Stretch(0.1)
    given = np.random.default_rng(0).standard_normal(2 * len(parts))
    found = elastic(parts, stretch)
    assert found.far is None
    np.testing.assert_allclose(found.times(given), whole(parts, stretch) @ given, atol=1e-13)


def test_product_is_symmetric():
    parts = panels(scattered(24, 60.0), 2.0)
    one, other = np.random.default_rng(0).standard_normal((2, 2 * len(parts)))
    found = elastic(parts)
    assert one @ found.times(other) == pytest.approx(other @ found.times(one), rel=1e-10)


@pytest.mark.parametrize("name", ["leaf-crown", "band-lattice", "wheat-sheaf", "swirl"])
def test_shelf_opens_as_by_the_whole_matrix(name):
    design = scorecraft.design(name)
    sheet = sheet_of(design.layout, design.skin)
    lines, depth = [cut.line for cut in design.cuts], [cut.depth_mm for cut in design.cuts]
    off, _, _ = apart(lines, depth, sheet.strain, sheet.area_mm2, 3.0)
    assert off.max() < NEAR


@pytest.mark.parametrize("area", [None, AREA])
def test_contact_is_that_of_the_whole_matrix(area):
    """Crossing cuts, pulled one way and pressed the other."""
    off, closed, ours = apart(scattered(24, 60.0), 6.0, (0.1, -0.12, 0.0), area, 2.0)
    assert len(closed) > 20
    assert off.max() < NEAR
    assert (ours[closed] == 0).all() and (ours[: len(ours) // 2] >= 0).all()


@pytest.mark.parametrize("count", [5, 8, 12])
def test_turns_open_as_by_the_whole_matrix_and_all_alike(count):
    off, _, ours = apart(*crown(count), (0.1, 0.1, 0.0), AREA, 2.0)
    assert off.max() < NEAR
    parts = np.sort(ours.reshape(2, count, -1), axis=2)
    np.testing.assert_allclose(parts[0], parts[0, :1] + 0 * parts[0], atol=NEAR * ours.max())


def test_uneven_growth():
    def strain(points):
        x, y = points.T
        return np.column_stack([0.1 + 3e-4 * x, 0.08 - 2e-4 * y, 1e-4 * x])

    off, _, _ = apart(*crown(6), strain, AREA, 2.0)
    assert off.max() < NEAR


def test_stumps_of_a_round_crosshatch():
    """Bars that end just beyond a crossing have ends with cores far from the mean one: they are
    told apart there."""
    at = np.arange(-69.0, 70.0, 6.0)
    bars = [np.array([[x, -y], [x, y]]) for x, y in zip(at, np.sqrt(75**2 - at**2), strict=True)]
    lines = bars + [line[:, ::-1] for line in bars]
    off, _, _ = apart(lines, 3.0, (0.1, 0.1, 0.0), AREA, 6.0)
    assert off.max() < 1e-4


def test_the_same_input_gives_the_same_numbers():
    lines = scattered(24, 60.0)
    one, other = (solve(lines, 6.0, strain=(0.1, 0.1, 0), area_mm2=AREA) for _ in range(2))
    np.testing.assert_array_equal(one.gap_mm, other.gap_mm)


@pytest.mark.parametrize("count", [1, 20, 24, 25, 200])
def test_windows_overlap_and_hold_every_panel(count):
    some = windows(count)
    assert (np.diff(some, axis=1) == 1).all() and some.shape[1] == min(count, room.WINDOW[0])
    np.testing.assert_array_equal(np.unique(some), np.arange(count))
    assert (some[1:, 0] < some[:-1, -1]).all() and (np.diff(some[:, 0]) > 0).all()


def test_memory_grows_with_the_panels_and_not_with_their_square():
    """Bytes a panel, of four times the panels in four times the room."""
    held = []
    for side in (90.0, 180.0):
        parts = panels(scattered(int(side**2 / 450), 60.0, half=side), 2.0)
        tracemalloc.start()
        try:
            elastic(parts)
            held.append(tracemalloc.get_traced_memory()[1] / len(parts))
        finally:
            tracemalloc.stop()
    assert held[1] < 1.3 * held[0] < 40_000


def test_pieces_cut_free_all_around_stay_where_the_whole_matrix_leaves_them():
    """Through the skin nothing holds them: here the matrix is written down."""
    lines = hatch(66.0, 12.0)
    equations = system(lines, 4.0)
    held = springs(np.full(len(equations.panels), 12.0), 12.0)
    for strain in ((0.1, 0.1, 0.0), (0.1, -0.1, 0.0)):
        equations = system(lines, 4.0, strain=strain)
        load = load_on(equations.panels, strain)
        ours = jumps(equations, held, load, area_mm2=AREA).jumps
        theirs, _ = answers(equations.panels, held, load, AREA)
        np.testing.assert_allclose(ours, theirs, atol=1e-5 * theirs.max())
