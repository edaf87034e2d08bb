import numpy as np
import pytest
import shapely

from scorecraft.drawing.tension.contour import above, grid_triangles, inner_edges

N = 61


@pytest.fixture(scope="module")
def grid():
    x = np.linspace(-1, 1, N)
    return np.stack(np.meshgrid(x, x), axis=-1).reshape(-1, 2), grid_triangles(N, N)


def test_the_triangles_cover_the_grid_once(grid):
    points, triangles = grid
    a, b, c = (points[triangles[:, k]] for k in range(3))
    cross = (b - a)[:, 0] * (c - a)[:, 1] - (b - a)[:, 1] * (c - a)[:, 0]
    assert (cross > 0).all()
    assert cross.sum() / 2 == pytest.approx(4.0)


@pytest.mark.parametrize("level", [-0.5, 0.013, 0.7])
def test_a_plane_is_cut_along_a_straight_line(grid, level):
    points, triangles = grid
    area = above(points, points[:, 0], triangles, level)
    assert area.bounds == pytest.approx((level, -1, 1, 1))
    assert area.area == pytest.approx(2 * (1 - level))


def test_a_bowl_is_cut_along_circles_within_the_square_of_the_step(grid):
    points, triangles = grid
    area = above(points, 1 - np.hypot(*points.T) ** 2, triangles, 0.51)
    assert area.area == pytest.approx(np.pi * 0.49, rel=2e-3)
    (edge,) = inner_edges(area, shapely.box(-1, -1, 1, 1))
    assert np.hypot(*edge.T) == pytest.approx(np.full(len(edge), 0.7), abs=1e-3)


def test_all_or_nothing(grid):
    points, triangles = grid
    assert above(points, points[:, 0], triangles, 2.0).is_empty
    assert above(points, points[:, 0], triangles, -2.0).area == pytest.approx(4.0)


def test_edges_of_the_window_are_no_contours(grid):
    points, triangles = grid
    area = above(points, points[:, 0], triangles, 0.0)
    (edge,) = inner_edges(area, shapely.box(-1, -1, 1, 1))
    assert np.abs(edge[:, 0]).max() < 1e-9
    assert np.ptp(edge[:, 1]) == pytest.approx(1.9)
