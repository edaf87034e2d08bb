"""Strokes of a pen made fit for a blade."""

import numpy as np
import pytest

from scorecraft.motifs.pen import drawn, joined

RIGHT = np.array([[0.0, 0.0], [10.0, 0.0]])
ON = np.array([[20.0, 2.0], [10.0, 0.0]])
"""It runs on from the right end of RIGHT, drawn the other way."""


def test_strokes_that_run_on_are_one_whichever_way_they_were_drawn():
    (line,) = joined([RIGHT, ON])
    assert sorted([line[0, 0], line[-1, 0]]) == [0, 20]


def test_a_corner_ends_a_stroke_and_is_not_joined():
    corner = np.array([[0.0, 0.0], [10.0, 0.0], [10.0, 10.0]])
    assert [len(line) for line in joined([corner])] == [2, 2]
    assert len(joined([RIGHT, np.array([[10.5, 0.0], [20.0, 0.0]])])) == 2


def test_a_long_straight_step_stays_straight_beside_a_bend():
    hook = np.array([[0.0, 0.0], [30.0, 0.0], [33.0, 1.0], [34.0, 4.0]])
    (line,) = drawn([hook], 1.0)
    straight = line[line[:, 0] < 20]
    assert np.abs(straight[:, 1]).max() < 0.01
    assert line[-1] == pytest.approx([34.0, 4.0])
