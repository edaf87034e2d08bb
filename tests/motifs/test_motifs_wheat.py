import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.motifs.wheat import wheat


@given(length=st.floats(40, 200), slim=st.floats(0.12, 0.4), grains=st.integers(0, 14))
@settings(max_examples=60)
def test_no_grain_touches_another_or_the_stem(length, slim, grains):
    width = slim * length
    strokes = wheat(length=length, width=width, grains=grains)
    lines = [shapely.LineString(stroke.line) for stroke in strokes]
    assert len(lines) == 2 * grains + 2
    tree = shapely.STRtree(lines)
    one, other = tree.query(lines, predicate="intersects")
    assert (one == other).all()


def test_an_ear_fills_its_length_and_width():
    strokes = wheat(length=100, width=24, grains=6)
    points = np.vstack([stroke.line for stroke in strokes])
    assert points.min(axis=0) == pytest.approx([-12, 0], abs=0.3)
    assert points.max(axis=0) == pytest.approx([12, 100], abs=0.3)
    assert strokes[0].part == "stem"
    assert {stroke.part for stroke in strokes[1:]} == {"grain"}


def test_grains_lean_out_and_up():
    grains = [s.line for s in wheat(length=100, width=24, grains=6) if s.part == "grain"][:-1]
    for line in grains:
        assert abs(line[-1, 0]) > abs(line[0, 0])
        assert (np.diff(line[:, 1]) > 0).all()
