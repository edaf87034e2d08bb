"""Rings, tins and drawn rims: areas, volumes, lengths against closed forms and quadrature.

Pappus: a body of revolution has the volume of its section times the way of the section's centre;
its surface the length of its profile times the way of the profile's centre. A superellipse has the
area 4 a b G(1 + 1/n)^2 / G(1 + 2/n). Both are in any handbook of mathematics; recalled. The heart
of x = 16 sin^3 t, y = 13 cos t - 5 cos 2t - 2 cos 3t - cos 4t has the area 180 pi (Weisstein, Heart
Curve, MathWorld; recalled, and by Green's theorem below).
"""

import math

import numpy as np
import pytest
from scipy import integrate, special
from support.domes import length_on_dough

from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.grown import grown
from scorecraft.loaf.rims.heart import heart
from scorecraft.loaf.tin import Tin
from scorecraft.practice import RING_RUNS

ROUND = (2.0, 2.0)
RING = make_loaf("ring", 280, None, 45, ROUND, hole_mm=100)  # half a circle of 45 mm as section
LONG_RING = make_loaf("ring", 240, 320, 50, hole_mm=80)
IN_TIN = make_loaf("tin", 120, 230, 80, tin=Tin(230, 70, 58))


def test_a_round_ring_is_half_a_torus():
    assert RING.volume_mm3 == pytest.approx(math.pi * 45**2 / 2 * math.tau * 95, rel=1e-9)
    assert RING.plan_area_mm2 == pytest.approx(math.pi * (140**2 - 50**2), rel=1e-9)
    skin = RING.patches(60, 24)[1].sum()
    assert skin == pytest.approx(math.pi * 45 * math.tau * 95, rel=1e-6)
    assert float(RING.reach(1.0)) == pytest.approx(50 + math.pi * 45, abs=1e-3)


def test_lengths_on_a_ring_are_arcs_and_circles():
    across = np.array([[50.0, 0.0], [50 + math.pi * 45 / 2, 0.0], [50 + math.pi * 45, 0.0]])
    assert length_on_dough(RING, across) == pytest.approx(math.pi * 45, abs=0.02)
    turn = np.linspace(0, math.tau, 721)
    for share, radius in ((0.0, 95.0), (2 / 3, 95 + 45 * math.sin(math.pi / 3))):
        circle = RING.at_share(turn, np.full(721, share))
        assert length_on_dough(RING, circle) == pytest.approx(math.tau * radius, abs=0.02)


def test_a_long_ring_by_quadrature():
    def wedge(turn):
        outer, inner = LONG_RING.outline.radius(turn), LONG_RING.hole.radius(turn)

        def slice_of(radius):
            at = [[radius * math.cos(turn), radius * math.sin(turn)]]
            return radius * float(LONG_RING.height_at(at)[0])

        middle = (outer + inner) / 2
        return sum(
            integrate.quad(slice_of, *ends, limit=60)[0]
            for ends in ((inner, middle), (middle, outer))
        )

    nodes = np.arange(24) * (math.pi / 2 / 24) + math.pi / 96
    whole = 4 * np.mean([wedge(turn) for turn in nodes]) * math.pi / 2
    assert LONG_RING.volume_mm3 == pytest.approx(whole, rel=2e-4)


def test_a_tin_by_closed_forms():
    n = IN_TIN.outline.power
    area = 120 * 230 * special.gamma(1 + 1 / n) ** 2 / special.gamma(1 + 2 / n)
    assert IN_TIN.plan_area_mm2 == pytest.approx(area, rel=2e-4)
    p, q = IN_TIN.profile
    mean = integrate.quad(lambda t: 2 * t * (1 - t**p) ** (1 / q), 0, 1)[0]
    assert IN_TIN.volume_mm3 == pytest.approx(area * (58 + 22 * mean), rel=2e-4)


def test_the_top_of_a_tin_is_measured_along_its_dome():
    p, q = IN_TIN.profile

    def speed(turn):  # along the half section, t = sin(turn)
        t = math.sin(turn)
        slope = -22 * p / q * t ** (p - 1) * (1 - t**p) ** (1 / q - 1)
        return math.hypot(115, slope) * math.cos(turn)

    half = integrate.quad(speed, 0, math.pi / 2, limit=200)[0]
    assert float(IN_TIN.reach(math.pi / 2)) == pytest.approx(half, abs=0.01)
    line = np.array([[0.0, -half], [0.0, half]])
    assert length_on_dough(IN_TIN, line) == pytest.approx(2 * half, abs=0.05)


def test_a_ring_after_its_growth_is_half_a_torus_too():
    """Its crest is longer by a part of the growth, its section broader by the rest, and higher."""
    sideways, upward = 1.12, 1.1
    baked = grown(RING, sideways, upward)
    crest, half = 95 * sideways**RING_RUNS.value, 45 * sideways ** (2 - RING_RUNS.value)
    assert baked.hole.width_mm == pytest.approx(2 * (crest - half), rel=1e-4)
    assert baked.width_mm == pytest.approx(2 * (crest + half), rel=1e-4)
    section = math.pi / 2 * half * 45 * upward
    assert baked.volume_mm3 == pytest.approx(section * math.tau * crest, rel=1e-4)
    assert baked.volume_mm3 == pytest.approx(sideways**2 * upward * RING.volume_mm3, rel=1e-4)
    assert baked.plan_area_mm2 == pytest.approx(
        math.pi * ((crest + half) ** 2 - (crest - half) ** 2), rel=1e-4
    )


def test_a_tin_that_has_risen_holds_the_volume_it_grew_to():
    """Straight sides up to the wall, and a crown above: rounded rectangle x (wall + mean crown)."""
    baked = grown(IN_TIN, 1.08, 1.15)
    n, (p, q) = baked.outline.power, baked.profile
    area = (
        baked.width_mm * baked.length_mm * special.gamma(1 + 1 / n) ** 2 / special.gamma(1 + 2 / n)
    )
    mean = integrate.quad(lambda t: 2 * t * (1 - t**p) ** (1 / q), 0, 1)[0]
    whole = area * (baked.wall_mm + baked.crown_mm * mean)
    assert baked.volume_mm3 == pytest.approx(whole, rel=2e-4)
    assert baked.volume_mm3 == pytest.approx(1.08**2 * 1.15 * IN_TIN.volume_mm3, rel=2e-4)
    assert (baked.width_mm, baked.wall_mm) == (120, pytest.approx(70))


def test_the_heart_is_that_of_the_sines_with_its_corners_rounded():
    def rate(t):  # Green: the area is the integral of x dy
        slope = -13 * math.sin(t) + 10 * math.sin(2 * t) + 6 * math.sin(3 * t) + 4 * math.sin(4 * t)
        return -16 * math.sin(t) ** 3 * slope

    sharp = integrate.quad(rate, 0, math.tau)[0]
    assert sharp == pytest.approx(180 * math.pi, rel=1e-9)
    x, y = heart().T
    drawn = abs(np.sum(x * np.roll(y, -1) - y * np.roll(x, -1))) / 2
    assert drawn == pytest.approx(sharp, rel=0.02)
    loaf = make_loaf("heart", 220, 209, 75)
    assert loaf.plan_area_mm2 == pytest.approx(drawn * 220 * 209 / np.ptp(x) / np.ptp(y), rel=1e-3)


@pytest.mark.parametrize("form", ["heart", "star", "triangle", "fougasse"])
def test_drawn_rims_by_quadrature(form):
    """Volume as a sum over a grid of heights; reach along the profile in a few directions."""
    loaf = make_loaf(form, 220, 215, 70)
    places = np.arange(-180.0, 180.0, 1.0) + 0.5
    heights = loaf.height_at(np.stack(np.meshgrid(places, places), axis=-1))
    assert loaf.volume_mm3 == pytest.approx(float(heights.sum()), rel=5e-4)
    p, q = loaf.profile
    for turn in (0.3, 1.5, 4.0):
        rim = float(loaf.outline.radius(turn))

        def speed(u, rim=rim):  # along the ray, t = sin(u)
            t = math.sin(u)
            slope = -70 * p / q * t ** (p - 1) * (1 - t**p) ** (1 / q - 1)
            return math.hypot(rim, slope) * math.cos(u)

        way = integrate.quad(speed, 0, math.pi / 2, limit=200)[0]
        assert float(loaf.reach(turn)) == pytest.approx(way, abs=0.01)


def test_a_tapered_oval_by_closed_forms():
    """x = a cos u (1 - t sin u), y = b sin u encloses pi a b, widest at 2 t s^2 - s - t = 0."""
    t, (wide, long) = 0.25, (150.0, 250.0)
    loaf = make_loaf("oval", wide, long, 80, taper=t)
    s = (1 - math.sqrt(1 + 8 * t**2)) / (4 * t)
    widest = math.sqrt(1 - s**2) * (1 - t * s)
    assert loaf.plan_area_mm2 == pytest.approx(math.pi / 4 * wide * long / widest, rel=2e-4)
    assert (loaf.width_mm, loaf.length_mm) == pytest.approx((wide, long), abs=0.01)
    # the crown is over the middle of the area: integral of y dA is -pi a b b t / 4
    near, far = float(loaf.outline.radius(-math.pi / 2)), float(loaf.outline.radius(math.pi / 2))
    assert (far - near) / 2 == pytest.approx(long / 2 * t / 4, rel=1e-3)
    places = np.arange(-180.0, 180.0, 1.0) + 0.5
    heights = loaf.height_at(np.stack(np.meshgrid(places, places), axis=-1))
    assert loaf.volume_mm3 == pytest.approx(float(heights.sum()), rel=5e-4)
