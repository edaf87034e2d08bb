import numpy as np
import pytest

from scorecraft.motifs.slash import slash


def test_a_straight_slash_is_two_points_along_y():
    (stroke,) = slash(length=80, bend=0)
    assert stroke.part == "slash"
    assert stroke.line.tolist() == [[0, -40], [0, 40]]


@pytest.mark.parametrize("bend", [5, -5, 40, 60])
def test_a_bent_slash_bulges_by_its_sagitta_and_keeps_its_ends(bend):
    (stroke,) = slash(length=80, bend=bend)
    line = stroke.line
    assert line[[0, -1]].tolist() == [[0, -40], [0, 40]]
    assert line[np.abs(line[:, 0]).argmax(), 0] == pytest.approx(bend, abs=0.05)
    radius = (40**2 + bend**2) / (2 * abs(bend))
    centre = np.array([np.sign(bend) * (abs(bend) - radius), 0])
    assert np.hypot(*(line - centre).T) == pytest.approx(np.full(len(line), radius))
