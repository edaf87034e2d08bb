"""Families of parallels and lattice points cover their box."""

from math import radians

import numpy as np
import pytest
import shapely

from scorecraft.textures.lattice import copies, nodes, parallels

BOUNDS = (-30.0, 10.0, 55.0, 71.0)


@pytest.mark.parametrize("degrees", [0, 30, 90, -20, 170])
def test_parallels_cover_the_box_at_their_spacing(degrees):
    lines = parallels(BOUNDS, angle=radians(degrees), spacing=7, offset=2)
    normal = np.array([np.cos(radians(degrees)), -np.sin(radians(degrees))])
    places = np.array([line @ normal for line in lines])
    assert np.ptp(places, axis=1).max() < 1e-9
    assert np.diff(places[:, 0]) == pytest.approx(np.full(len(lines) - 1, 7))
    assert (places[:, 0] - 2) / 7 == pytest.approx(np.round((places[:, 0] - 2) / 7))
    box = shapely.box(*BOUNDS)
    corners = shapely.get_coordinates(box) @ normal
    assert places[:, 0].min() <= corners.min()
    assert places[:, 0].max() >= corners.max()
    for line in lines:
        assert not box.intersects(shapely.points(line)).any()


def test_parallels_run_the_way_of_their_angle():
    line = parallels(BOUNDS, angle=radians(90), spacing=7, offset=0)[0]
    assert line[1, 0] > line[0, 0]


def test_nodes_are_all_the_lattice_points_in_the_padded_box():
    found = nodes(BOUNDS, (5, 8), (10, 0), 3)
    every = {
        (5 * i + 10 * j, 8 * i)
        for i in range(-40, 40)
        for j in range(-40, 40)
        if -33 <= 5 * i + 10 * j <= 58 and 7 <= 8 * i <= 74
    }
    assert {tuple(point) for point in found.tolist()} == every


def test_copies_stand_at_every_place():
    figure = np.array([[0, 0], [1, 2]], dtype=float)
    lines = copies(figure, np.array([[10, 0], [0, 20]], dtype=float), (1, 1))
    assert [line.tolist() for line in lines] == [[[11, 1], [12, 3]], [[1, 21], [2, 23]]]
