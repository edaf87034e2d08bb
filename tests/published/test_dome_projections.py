"""A half sphere's dough sheet is the azimuthal equidistant projection, its plan the orthographic.

Tables: J. P. Snyder, Map Projections - A Working Manual, USGS Professional Paper 1395, 1987: table
22 (p. 151) and 23 (pp. 152-153) orthographic, table 30 (pp. 196-197) azimuthal equidistant, as
listed in the test file builtins.gie of the PROJ library. Reference library: pyproj (PROJ).
"""

import math

import numpy as np
import pyproj
import pytest

from scorecraft.loaf.dome import make_loaf

R = 100.0
DOME = make_loaf("round", 2 * R, None, R)

TABLE_30 = [  # longitude, latitude, x, y on a unit sphere, centre on the equator
    (10, 80, 0.04281, 1.39829),
    (40, 30, 0.62896, 0.56493),
    (90, 0, 1.57080, 0.0),
    (0, 90, 0.0, 1.57080),
]
TABLE_22 = [
    (10, 50, 0.1116, 0.7660),
    (20, 40, 0.2620, 0.6428),
    (40, 70, 0.2198, 0.9397),
    (70, 20, 0.8830, 0.3420),
]
TABLE_23 = [  # centre at latitude 40
    (20, 60, 0.1710, 0.3614),
    (40, -30, 0.5567, -0.8095),
    (100, 70, 0.3368, 0.7580),
    (170, 60, 0.0868, 0.9799),
]


def projection(kind, latitude):
    return pyproj.Proj(f"+proj={kind} +R={R} +lat_0={latitude}")


@pytest.mark.parametrize(("longitude", "latitude", "x", "y"), TABLE_30)
def test_sheet_of_table_30(longitude, latitude, x, y):
    turn, rise = math.radians(longitude), math.radians(latitude)
    seen = [R * math.cos(rise) * math.sin(turn), R * math.sin(rise)]
    assert DOME.plan_to_sheet([seen])[0] == pytest.approx([R * x, R * y], abs=0.011)
    assert DOME.sheet_to_plan([[R * x, R * y]])[0] == pytest.approx(seen, abs=0.011)


@pytest.mark.parametrize(
    ("row", "centre"), [*((row, 0) for row in TABLE_22), *((row, 40) for row in TABLE_23)]
)
def test_plan_of_tables_22_and_23(row, centre):
    longitude, latitude, x, y = row
    sheet = projection("aeqd", centre)(longitude, latitude)
    assert DOME.sheet_to_plan([sheet])[0] == pytest.approx([R * x, R * y], abs=0.011)


def test_sheet_to_plan_is_aeqd_to_ortho():
    """PROJ carries 2000 points of the sheet to the plan; ours agree to 0.01 mm, both ways."""
    rng = np.random.default_rng(1)
    polar, turn = np.degrees(np.arccos(rng.uniform(0, 1, 2000))), rng.uniform(-180, 180, 2000)
    sheet = np.column_stack(projection("aeqd", 90)(turn, 90 - polar))
    plan = np.column_stack(projection("ortho", 90)(turn, 90 - polar))
    assert np.abs(DOME.sheet_to_plan(sheet) - plan).max() < 0.01
    assert np.abs(DOME.plan_to_sheet(plan) - sheet).max() < 0.01


def test_spheroid_dome_is_aeqd_on_the_ellipsoid():
    """PROJ's azimuthal equidistant projection of an ellipsoid uses true geodesics."""
    dome = make_loaf("round", 220, None, 95)
    project = pyproj.Proj("+proj=aeqd +a=110 +b=95 +lat_0=90")
    latitude = np.linspace(0.5, 89.5, 60)
    sheet = np.column_stack(project(np.full(60, 35.0), latitude))
    e2 = 1 - (95 / 110) ** 2  # distance from the axis at a geodetic latitude
    rise = np.radians(latitude)
    away = 110 * np.cos(rise) / np.sqrt(1 - e2 * np.sin(rise) ** 2)
    plan = dome.sheet_to_plan(sheet)
    assert np.hypot(*plan.T) == pytest.approx(away, abs=0.01)


@pytest.mark.parametrize("polar", [15, 30, 45, 60, 75, 89])
def test_stretch_around_the_crown_is_one_over_k(polar):
    """Snyder chapter 25: the sheet is c / sin c too wide around the crown, true along the ray."""
    c = math.radians(polar)
    along, across = DOME.stretch(np.array([[R * c * 0.6, R * c * 0.8]]))
    assert along == pytest.approx(1.0)
    assert across == pytest.approx(math.sin(c) / c, abs=1e-4)


@pytest.mark.parametrize("polar", [0, 15, 30, 45, 60, 75, 90])
def test_slope_of_a_sphere_is_the_polar_angle(polar):
    c = math.radians(polar)
    point = [[R * math.sin(c), 0.0]]
    normal = [math.sin(c), 0.0, math.cos(c)]
    assert DOME.normal(point)[0] == pytest.approx(normal, abs=1e-6)
