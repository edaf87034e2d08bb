"""Quadrature, tables and pieces against numpy's own and hand-worked values."""

import numpy as np
import pytest

from scorecraft.loaf.pieces import PIECE_MM, bilinear, distance, gauss, halved, ratio


@pytest.mark.parametrize("count", [1, 2, 5, 24])
def test_points_and_weights_are_those_of_gauss_and_legendre(count):
    nodes, weights = np.polynomial.legendre.leggauss(count)
    found = gauss(count)
    assert found[0] == pytest.approx((nodes + 1) / 2, abs=1e-13)
    assert found[1] == pytest.approx(weights / 2, abs=1e-13)


def test_a_plane_is_looked_up_as_it_is_between_rows_and_columns_and_beyond_them():
    row, column = np.mgrid[0:3, 0:4]
    table = 5.0 + 10.0 * row - 3.0 * column
    places = np.array([[0.0, 0.0], [0.25, 2.5], [1.0, 1.0], [1.5, 0.75], [2.0, 3.0]])
    found = bilinear(table, *places.T)
    assert found == pytest.approx(5 + 10 * places[:, 0] - 3 * places[:, 1])


def test_a_curved_table_is_met_at_its_corners_and_halfway():
    table = np.array([[0.0, 1.0, 4.0], [10.0, 20.0, 40.0], [7.0, 5.0, 3.0]])
    rows, columns = np.mgrid[0:3, 0:3]
    assert bilinear(table, rows * 1.0, columns * 1.0) == pytest.approx(table)
    assert bilinear(table, np.array([0.5, 1.5]), np.array([1.5, 0.5])) == pytest.approx(
        [(1 + 4 + 20 + 40) / 4, (10 + 20 + 7 + 5) / 4]
    )


def test_ratios_are_one_where_nothing_was():
    assert ratio(np.array([3.0, 5.0, 0.5]), np.array([2.0, 0.0, 0.1])).tolist() == [1.5, 1.0, 5.0]


def test_distances_are_those_of_pythagoras():
    a = np.array([[1.0, 2.0, 3.0], [0.0, 0.0, 0.0]])
    assert distance(a, np.array([[2.0, 4.0, 5.0], [2.0, 3.0, 6.0]])).tolist() == [3.0, 7.0]


def test_segments_are_cut_into_pieces_and_every_piece_is_halved():
    """13 mm are three pieces, 6 mm one, and no way at all is one as well."""
    start = np.array([[0.0, 0.0], [1.0, 1.0], [7.0, 7.0]])
    end = np.array([[5.0, 12.0], [1.0, 1.0 + PIECE_MM], [7.0, 7.0]])
    nodes, first, segment = halved(start, end)
    assert segment.tolist() == [0, 0, 0, 1, 2] and first.tolist() == [0, 2, 4, 7, 10]
    assert nodes[:7] == pytest.approx(np.outer(np.arange(7) / 6, [5, 12]))
    assert nodes[7:].tolist() == [[1, 1], [1, 4], [1, 7], [7, 7], [7, 7], [7, 7]]
