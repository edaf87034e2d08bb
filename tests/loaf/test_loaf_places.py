import math

import numpy as np
import pytest

from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.places import clock, hour, where

ROUND = make_loaf("round", 200, None, 100)  # half a ball: 157 mm of reach
RING = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)


@pytest.mark.parametrize(
    ("degrees", "hours"), [(0, 3), (90, 12), (180, 9), (-90, 6), (60, 1), (76, 12), (74, 1)]
)
def test_directions_are_told_by_the_nearest_hour(degrees, hours):
    assert hour(math.radians(degrees)) == hours
    assert clock(math.radians(degrees)) == f"at {hours} o'clock"


@pytest.mark.parametrize(
    ("share", "said"),
    [
        (0.14, "near the crown"),
        (0.16, "at 6 o'clock"),
        (0.79, "at 6 o'clock"),
        (0.81, "at 6 o'clock, just above the base"),
    ],
)
def test_places_are_told_by_their_share_of_the_reach(share, said):
    assert where(ROUND, np.array([0.0, -share * 50 * math.pi])) == said


@pytest.mark.parametrize(
    ("share", "said"),
    [
        (-0.81, ", at the hole"),
        (-0.79, ", toward the hole"),
        (-0.16, ", toward the hole"),
        (-0.14, ", on the crest"),
        (0.14, ", on the crest"),
        (0.16, ""),
        (0.79, ""),
        (0.81, ", just above the base"),
    ],
)
def test_places_on_a_ring_are_told_by_their_share_from_the_crest(share, said):
    """Half a torus: the crest is a quarter of a circle of 45 mm beyond the hole of 50 mm."""
    way = 50 + 22.5 * math.pi * (1 + share)
    assert where(RING, np.array([0.0, way])) == f"at 12 o'clock{said}"
