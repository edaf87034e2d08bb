"""Areas, volumes and lengths on domes against closed forms, quoted values and pyproj.Geod.

Ellipsoid: S = 2 pi c^2 + (2 pi a b / sin f) (E(f, k) sin^2 f + F(f, k) cos^2 f), cos f = c / a,
k^2 = a^2 (b^2 - c^2) / (b^2 (a^2 - c^2)), a >= b >= c; the values for (1.1, 1.2, 4.7), (1, 2, 3)
and (1, 3, 10) are quoted at hpmuseum.org/forum/thread-17013 and in C. Hill, Learning Scientific
Programming with Python, 2nd ed., problem 8 of the chapter on SciPy.
"""

import math

import numpy as np
import pyproj
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy import integrate, optimize, special
from support.domes import dome_area, length_on_dough

from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import Outline

ELLIPSOID = (2.0, 2.0)


def ellipsoid_area(*axes):
    c, b, a = sorted(axes)
    f = math.acos(c / a)
    m = a**2 * (b**2 - c**2) / (b**2 * (a**2 - c**2))
    first, second = special.ellipkinc(f, m), special.ellipeinc(f, m)
    whole = second * math.sin(f) ** 2 + first * math.cos(f) ** 2
    return 2 * math.pi * c**2 + 2 * math.pi * a * b / math.sin(f) * whole


def half_ellipsoid(a, b, c):
    return make_loaf("oval", 2 * a, 2 * b, c, ELLIPSOID)


@pytest.mark.parametrize(
    ("axes", "quoted"),
    [((1.1, 1.2, 4.7), 54.6901240998), ((1, 2, 3), 48.8821), ((1, 3, 10), 212.00)],
)
@pytest.mark.parametrize("order", [(0, 1, 2), (2, 0, 1), (1, 2, 0)])
def test_quoted_ellipsoid_areas(axes, quoted, order):
    a, b, c = (25 * axes[i] for i in order)
    area = 2 * dome_area(half_ellipsoid(a, b, c)) / 25**2
    assert area == pytest.approx(quoted, rel=3e-5)
    assert ellipsoid_area(*axes) == pytest.approx(quoted, rel=3e-5)


@settings(max_examples=20)
@given(st.floats(60, 150), st.floats(1.05, 2.0), st.floats(0.4, 0.95))
def test_ellipsoid_area_and_volume(a, longer, flatter):
    loaf = half_ellipsoid(a, a * longer, a * flatter)
    exact = ellipsoid_area(a, a * longer, a * flatter) / 2
    assert dome_area(loaf) == pytest.approx(exact, rel=1e-6)
    volume = 2 / 3 * math.pi * a * (a * longer) * (a * flatter)
    assert loaf.volume_mm3 == pytest.approx(volume, rel=1e-9)
    assert loaf.plan_area_mm2 == pytest.approx(math.pi * a * a * longer, rel=1e-9)


def test_oblate_dome():
    """Closed form 2 pi a^2 (1 + (1 - e^2) / e artanh e) of the whole: 121055.0731 (recalled)."""
    assert 2 * dome_area(make_loaf("round", 220, None, 75)) == pytest.approx(121055.0731)


def test_half_sphere():
    loaf = make_loaf("round", 200, None, 100)
    assert dome_area(loaf) == pytest.approx(2 * math.pi * 100**2)
    assert loaf.volume_mm3 == pytest.approx(2 / 3 * math.pi * 100**3)
    assert loaf.reach(0.3) == pytest.approx(50 * math.pi)


@pytest.mark.parametrize("shape", ["oval", "long", "square"])
def test_area_and_volume_by_double_quadrature(shape):
    """Domes without a closed form: nested adaptive quadrature in plan coordinates by scipy."""
    loaf = make_loaf(shape, 160, 220, 80, (2.6, 2.0))
    n, (p, q) = loaf.outline.power, loaf.profile

    def height(x, y):
        t = ((x / 80) ** n + (y / 110) ** n) ** (1 / n)
        return 80 * max(0.0, 1 - t**p) ** (1 / q)

    def half(x):
        return 110 * (1 - (x / 80) ** n) ** (1 / n)

    quarter, _ = integrate.dblquad(lambda y, x: height(x, y), 0, 80, 0, half, epsabs=5)
    assert loaf.volume_mm3 == pytest.approx(4 * quarter, rel=1e-4)
    plan, _ = integrate.quad(half, 0, 80)
    assert loaf.plan_area_mm2 == pytest.approx(4 * plan, rel=1e-5)


@pytest.mark.parametrize(
    ("width", "length", "perimeter"),
    [(160, 240, 634.6175835716), (120, 300, 690.3933778699), (90, 280, 620.1873690861)],
)
def test_rim_of_an_oval_is_as_long_as_its_ellipse(width, length, perimeter):
    """Perimeter 4 a E(e^2); the numbers are scipy.special.ellipe of a textbook formula."""
    longer, shorter = length / 2, width / 2
    exact = 4 * longer * special.ellipe(1 - (shorter / longer) ** 2)
    assert exact == pytest.approx(perimeter, abs=1e-8)
    loaf = half_ellipsoid(shorter, longer, 70)
    rim = loaf.sheet_rim(720)
    assert length_on_dough(loaf, np.vstack([rim, rim[:1]])) == pytest.approx(perimeter, abs=0.02)


def test_reach_is_a_quarter_ellipse():
    """Arc 110 E(1 - (75 / 110)^2) = 146.6017474750."""
    loaf = make_loaf("round", 220, None, 75)
    exact = 110 * special.ellipe(1 - (75 / 110) ** 2)
    assert exact == pytest.approx(146.6017474750, abs=1e-9)
    assert loaf.reach(0.4) == pytest.approx(exact, abs=0.001)
    assert length_on_dough(loaf, [[0, 0], [0, exact]]) == pytest.approx(exact, abs=0.01)


def test_radial_lengths_against_geod():
    """Distances from the pole of an oblate spheroid by pyproj.Geod (geodesics after Karney)."""
    geod = pyproj.Geod(a=110, b=95)
    loaf = make_loaf("round", 220, None, 95)
    latitude = np.linspace(1, 89, 45)
    _, _, distance = geod.inv(np.zeros(45), np.full(45, 90.0), np.zeros(45), latitude)
    beta = np.arctan(95 / 110 * np.tan(np.radians(latitude)))  # reduced latitude
    sheet = loaf.plan_to_sheet(np.column_stack([np.zeros(45), 110 * np.cos(beta)]))
    assert sheet[:, 1] == pytest.approx(distance, abs=0.005)


@pytest.mark.parametrize(
    ("start", "end", "length"),
    [
        ((0, 30), (90, 30), 131.8116071653),
        ((0, 0), (90, 0), 157.0796326795),
        ((10, 60), (100, 45), 91.1738290968),
    ],
)
def test_great_circles_on_a_half_sphere(start, end, length):
    """R acos(sin a sin b + cos a cos b cos dl) (Snyder 1987, eq. 5-3); points by pyproj.Geod."""
    geod = pyproj.Geod(a=100, b=100)
    assert geod.inv(*start, *end)[2] == pytest.approx(length, abs=1e-8)
    between = np.array([start, *geod.npts(*start, *end, 60), end])
    sheet = np.column_stack(pyproj.Proj("+proj=aeqd +R=100 +lat_0=90")(*between.T))
    loaf = make_loaf("round", 200, None, 100)
    assert length_on_dough(loaf, sheet) == pytest.approx(length, abs=0.02)


LOAVES = [
    make_loaf("oval", 160, 260, 80),
    make_loaf("long", 120, 320, 70),
    make_loaf("square", 200, 200, 85),
    make_loaf("round", 220, None, 120, (3.0, 1.6)),
    Loaf(Outline("oval", 70, 140, 2.2), 90, (1.4, 2.5)),
]


@pytest.mark.parametrize("loaf", LOAVES, ids=lambda loaf: f"{loaf.shape}-{loaf.profile}")
def test_sheet_and_plan_against_adaptive_quadrature(loaf):
    """s = integral of sqrt(R^2 + z'^2) dt by scipy.integrate.quad, in z where the dome is steep."""
    p, q = loaf.profile
    height = loaf.height_mm

    def length(radius, t):
        half = 0.5 ** (1 / p)

        def by_t(t):
            slope = -height / q * (1 - t**p) ** (1 / q - 1) * p * t ** (p - 1)
            return math.hypot(radius, slope)

        def by_z(z):
            rest = 1 - (z / height) ** q
            slope = rest ** (1 / p - 1) / p * q * (z / height) ** (q - 1) / height
            return math.hypot(1, radius * slope)

        first, _ = integrate.quad(by_t, 0, min(t, half), epsabs=1e-9, limit=200)
        if t <= half:
            return first
        z = height * max(0.0, 1 - t**p) ** (1 / q)
        second, _ = integrate.quad(by_z, z, height * 0.5 ** (1 / q), epsabs=1e-9, limit=200)
        return first + second

    for theta in (0.0, 0.4, 1.1, math.pi / 2, 2.5):
        ray = np.array([math.cos(theta), math.sin(theta)])
        radius = float(loaf.outline.radius(theta))
        whole = length(radius, 1.0)
        assert float(loaf.reach(theta)) == pytest.approx(whole, abs=0.005)
        for share in (0.003, 0.2, 0.55, 0.8, 0.97, 0.999):
            s = share * whole
            t = optimize.brentq(lambda t, s=s, r=radius: length(r, t) - s, 0, 1, xtol=1e-12)
            assert loaf.sheet_to_plan([s * ray])[0] == pytest.approx(t * radius * ray, abs=0.01)
            assert loaf.plan_to_sheet([t * radius * ray])[0] == pytest.approx(s * ray, abs=0.01)


@pytest.mark.parametrize("loaf", LOAVES[:3], ids=lambda loaf: loaf.shape)
def test_length_of_a_chord_of_the_sheet(loaf):
    """A straight sheet line that nears the rim, against 50000 chords of the surface."""
    start, end = np.array([-60.0, 50.0]), np.array([80.0, 20.0])
    share = np.linspace(0, 1, 50_001)[:, None]
    places = loaf.surface(loaf.sheet_to_plan(start + share * (end - start)))
    exact = np.linalg.norm(np.diff(places, axis=0), axis=1).sum()
    assert length_on_dough(loaf, [start, end]) == pytest.approx(exact, abs=0.01)
