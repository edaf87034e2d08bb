"""Paths along a rim against shapely's buffer, and on a half sphere against pyproj.Geod."""

import numpy as np
import pyproj
import pytest
import shapely

from scorecraft.loaf.dome import make_loaf
from scorecraft.motifs.rim import rim


def test_on_a_flat_sheet_it_is_shapelys_buffer():
    loaf = make_loaf("star", 240, None, 70)
    (stroke,) = rim(loaf=loaf, inset=18.0, of="outer")
    edge = shapely.Polygon(loaf.sheet_rim(4000))
    inside = shapely.buffer(edge, -18.0, quad_segs=64)
    assert shapely.hausdorff_distance(shapely.LinearRing(stroke.line), inside.exterior) < 0.1


@pytest.mark.parametrize("inset", [10.0, 35.0, 80.0])
def test_on_a_half_sphere_it_is_a_circle_of_latitude(inset):
    radius = 100.0
    loaf = make_loaf("round", 2 * radius, None, radius, (2.0, 2.0))
    (stroke,) = rim(loaf=loaf, inset=inset, of="outer")
    ball = pyproj.Geod(a=radius, b=radius)
    turn = np.linspace(0, 360, 721)
    latitude = np.degrees(inset / radius)  # the rim is the equator
    exact = ball.line_length(turn, np.full(721, latitude))
    assert loaf.lengths_on_dough([stroke.line])[0] == pytest.approx(exact, rel=2e-5)
    plan = loaf.sheet_to_plan(stroke.line[:1])[0]
    _, _, up = ball.inv(0, 0, 0, np.degrees(np.arccos(np.hypot(*plan) / radius)))
    assert up == pytest.approx(inset, abs=0.02)
