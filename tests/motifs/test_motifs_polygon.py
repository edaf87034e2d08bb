import numpy as np
import pytest

from scorecraft.motifs.polygon import polygon


@pytest.mark.parametrize("sides", [3, 4, 7])
def test_a_polygon_closes_and_starts_at_twelve_o_clock(sides):
    lines = [stroke.line for stroke in polygon(radius=50, sides=sides)]
    assert lines[0][0] == pytest.approx([0, 50])
    for line, after in zip(lines, lines[1:] + lines[:1], strict=True):
        assert line[1] == pytest.approx(after[0])
        assert np.hypot(*(line[1] - line[0])) == pytest.approx(100 * np.sin(np.pi / sides))
