import numpy as np
import pytest

from scorecraft.motifs.petal import petal


@pytest.mark.parametrize("width", [8, 20, 50])
def test_a_petal_is_two_arcs_from_base_to_tip(width):
    left, right = petal(length=50, width=width)
    for line, side in ((left.line, -1), (right.line, 1)):
        assert line[[0, -1]].tolist() == [[0, 0], [0, 50]]
        assert side * line[np.abs(line[:, 0]).argmax(), 0] == pytest.approx(width / 2, abs=0.05)
    assert np.array_equal(left.line, right.line * (-1, 1))
