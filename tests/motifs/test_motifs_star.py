import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.motifs.star import star


def test_rays_run_outward_the_first_to_twelve_o_clock():
    strokes = star(radius=50, points=6, inner=8, outline=False)
    assert len(strokes) == 6
    assert strokes[0].line == pytest.approx(np.array([[0, 8], [0, 50]]))
    assert strokes[1].line[1] == pytest.approx([50 * 3**0.5 / 2, 25])
    assert {stroke.part for stroke in strokes} == {"ray"}


def test_an_outline_goes_once_round():
    edges = [s.line for s in star(radius=50, points=5, inner=20, outline=True)]
    ends = np.round(np.vstack(edges), 6)
    corners, times = np.unique(ends, axis=0, return_counts=True)
    assert len(corners) == 10
    assert (times == 2).all()
    assert sorted(np.hypot(*corners.T).round()) == [20] * 5 + [50] * 5


@pytest.mark.parametrize("inner", [50, 60, -1])
def test_an_inner_radius_must_lie_inside(inner):
    with pytest.raises(UsageError, match="inner radius"):
        star(radius=50, points=6, inner=inner, outline=False)
