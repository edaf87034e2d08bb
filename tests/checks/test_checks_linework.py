import numpy as np
import pytest
import shapely

from scorecraft.checks.linework import stations, strings


def test_stations_stand_evenly_along_every_cut_and_at_no_end(cut, lay):
    spots = stations(
        lay(cut((0, 0), (10, 0)), cut((0, 5), (0, 6)), cut((0, 9), (4, 9), (4, 14))), 3
    )
    assert np.bincount(spots.cut).tolist() == [4, 2, 3]
    assert spots.along == pytest.approx([1.25, 3.75, 6.25, 8.75, 0.25, 0.75, 1.5, 4.5, 7.5])
    assert spots.step == pytest.approx([2.5] * 4 + [0.5] * 2 + [3.0] * 3)
    assert spots.point[-3:] == pytest.approx(np.array([[1.5, 9], [4, 9.5], [4, 12.5]]))
    assert spots.tangent[-3:] == pytest.approx(np.array([[1, 0], [0, 1], [0, 1]]))


def test_stations_are_where_they_are_round_every_bend(cut, lay):
    bent = cut((4, 9), (8, 9), (8, 14)), cut((0, 0), (3, 0), (3, 4), (9, 4))
    for pair in (bent, bent[::-1]):
        spots = stations(lay(*pair), 1)
        for index, each in enumerate(pair):
            own = spots.cut == index
            line = shapely.LineString(each.line)
            places = shapely.points(spots.point[own])
            assert shapely.line_locate_point(line, places) == pytest.approx(spots.along[own])
            assert shapely.distance(line, places).max() < 1e-9


def test_a_cut_of_a_whole_number_of_steps_has_no_station_more(cut, lay):
    assert len(stations(lay(cut((0, 0), (9, 0))), 3).cut) == 3


def test_strings_are_the_cuts_one_by_one(cut, lay):
    first, second = strings(lay(cut((0, 0), (9, 0), (9, 9)), cut((0, 5), (0, 6))))
    assert first.coords[:] == [(0, 0), (9, 0), (9, 9)] and second.coords[:] == [(0, 5), (0, 6)]
    assert len(strings(lay())) == 0
