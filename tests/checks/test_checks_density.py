import math

import numpy as np
import pytest
from support.domes import dome_area

from scorecraft.checks.density import cut_density, density
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import DENSE_FACE, DENSE_MM_PER_CM2


def hatch(cut, pitch, depth, side=25.0):
    return [cut((-side, y), (side, y), depth=depth) for y in np.arange(-side, side + 0.1, pitch)]


def test_zones_share_out_the_dough_and_the_cuts(cut, lay):
    loaf = make_loaf("long", 120, 320, 70)
    made = lay(cut((-50, -40), (45, 130), depth=5), cut((0, 5), (0, -150), depth=2), loaf=loaf)
    found = cut_density(made)
    assert found.area_mm2.sum() == pytest.approx(dome_area(loaf), rel=1e-3)
    lengths = loaf.lengths_on_dough([each.line for each in made.cuts])
    assert found.length_mm.sum() == pytest.approx(lengths.sum())
    assert found.face_mm2.sum() == pytest.approx(5 * lengths[0] + 2 * lengths[1])


def test_zones_and_sides_are_where_they_are_called(cut, lay):
    at_three = cut_density(lay(cut((120, 0), (140, 0)))).length_mm
    assert at_three[2, 1] == pytest.approx(20, abs=0.01)
    assert at_three.sum() == pytest.approx(20, abs=0.01)
    at_six = cut_density(lay(cut((0, -70), (0, -90)))).length_mm
    assert at_six[1, 2] == pytest.approx(20, abs=0.01)
    at_nine = cut_density(lay(cut((-10, 2), (-30, 2)))).length_mm
    assert at_nine[0, 3] == pytest.approx(20, abs=0.02)


@pytest.mark.parametrize("turn", range(2, 360, 10))
def test_a_side_is_a_quarter_about_its_hour(cut, lay, turn):
    """From 45 degrees before it to 45 degrees after it, clockwise from 12 o'clock."""
    x, y = math.sin(math.radians(turn)), math.cos(math.radians(turn))
    found = cut_density(lay(cut((80 * x, 80 * y), (84 * x, 84 * y)))).length_mm
    assert found[1].argmax() == round(turn / 90) % 4
    assert found[1].max() == pytest.approx(found.sum()) and found.sum() > 3.9


def test_areas_of_a_half_sphere_by_zone(lay):
    """A zone between polar angles has 2 pi R^2 (cos a - cos b) (Archimedes)."""
    found = cut_density(lay(loaf=make_loaf("round", 200, None, 100)))
    a, b = math.cos(math.pi / 6), math.cos(math.pi / 3)
    shares = [1 - a, a - b, b]
    assert found.area_mm2.sum(axis=1) / (2 * math.pi * 100**2) == pytest.approx(shares, abs=1e-4)
    assert found.area_mm2[0] == pytest.approx(np.full(4, found.area_mm2[0, 0]))


def test_density_is_length_over_area(cut, lay):
    """10 mm of cut in a quarter of the middle of a 220 mm loaf, which is 62.6 cm2."""
    found = cut_density(lay(cut((0, 80), (0, 90))))
    assert found.area_mm2[1, 0] == pytest.approx(6262.5, abs=0.5)
    assert found.mm_per_cm2[1, 0] == pytest.approx(10 / 62.625, rel=1e-3)


def test_no_cuts_no_density(lay):
    assert not cut_density(lay()).mm_per_cm2.any()
    assert density(lay()) == []


def test_usual_patterns_are_not_crowded(cut, lay):
    assert density(lay(*hatch(cut, 8, 3))) == []


def test_crowded_crown_and_its_cure(cut, lay):
    """As much cut taken away as the hint says, and the crown is no longer crowded."""
    lines = hatch(cut, 3, 2, side=45)
    (found,) = density(lay(*lines))
    assert found.message.startswith("the crown has")
    assert found.figures["mm_per_cm2"] > DENSE_MM_PER_CM2.value
    away = 0.0
    while away < found.figures["shorten_mm"]:
        away += cut_density(lay(lines.pop())).length_mm[0].sum()
    assert density(lay(*lines)) == []
    assert density(lay(*lines, *hatch(cut, 3, 2, side=45)[-8:])) != []


def test_depth_crowds_too(cut, lay):
    (found,) = density(lay(*hatch(cut, 8, 8, side=45)))
    assert found.figures["mm_per_cm2"] < DENSE_MM_PER_CM2.value
    assert found.figures["face"] > DENSE_FACE.value


def test_many_long_deep_cuts_soften_the_skin(cut, lay):
    rays = [(math.cos(k), math.sin(k)) for k in np.arange(14) * math.tau / 14]
    deep = [cut((30 * x, 30 * y), (145 * x, 145 * y), depth=8) for x, y in rays]
    (found,) = density(lay(*deep))
    assert found.severity == "note"
    assert "of its stiffness" in found.message
    shorter = 115 * (1 - found.figures["shorter"]) - 0.1
    cured = [
        cut((30 * x, 30 * y), ((30 + shorter) * x, (30 + shorter) * y), depth=8) for x, y in rays
    ]
    assert density(lay(*cured)) == []
    assert density(lay(*(cut(*each.line, depth=3) for each in deep))) == []


def test_cracks_are_squares_of_half_lengths_over_the_dough(cut, lay):
    """Two cuts in the flat middle of the crown: (20^2 + 10^2) / A; 5 mm deep parts the skin."""
    made = lay(cut((-20, 0), (20, 0), depth=5), cut((-10, 9), (10, 9), depth=4.9))
    found = cut_density(made)
    half = made.lengths_mm / 2
    area = found.area_mm2.sum()
    assert half == pytest.approx([20, 10], rel=0.02)
    assert found.deep_cracks == pytest.approx(half[0] ** 2 / area)
    bare = cut_density(lay())
    assert bare.deep_cracks == 0
    assert not bare.length_mm.any() and not bare.face_mm2.any()
    assert bare.length_mm.shape == bare.face_mm2.shape == bare.area_mm2.shape == (3, 4)


def test_what_is_told_of_a_crowd_adds_up(cut, lay):
    lines = hatch(cut, 3, 2, side=45)
    (found,) = density(lay(*lines))
    crown = cut_density(lay(*lines))
    length, area = crown.length_mm[0].sum(), crown.area_mm2[0].sum()
    assert found.figures["mm_per_cm2"] == pytest.approx(100 * length / area)
    assert found.figures["face"] == pytest.approx(2 * length / area)
    keeps = DENSE_MM_PER_CM2.value * area / 100
    assert found.figures["shorten_mm"] == pytest.approx(length - keeps)
    assert "2.0 mm deep on average" in found.message and found.figures["count"] == 1


def test_half_as_much_again_is_a_warning(cut, lay):
    for pitch, severity in ((4.2, "note"), (3.0, "warning")):
        (found,) = density(lay(*hatch(cut, pitch, 2, side=60)))
        crowding = found.figures["mm_per_cm2"] / DENSE_MM_PER_CM2.value
        assert (crowding > 1.5) is (severity == "warning") and found.severity == severity


def test_every_crowded_part_counts_and_the_worst_is_named(cut, lay):
    left = [cut((x, -30), (x, 30), depth=2) for x in np.arange(-100, -65, 1.0)]
    right = [cut((x, -30), (x, 30), depth=2) for x in np.arange(65, 100, 0.8)]
    (found,) = density(lay(*left, *right))
    assert found.message.startswith("the side toward 3 o'clock has")
    assert found.figures["count"] == 2
    low = [cut((x, -40), (x, 40), depth=2) for x in np.arange(-140, -112, 0.5)]
    (found,) = density(lay(*low))
    assert found.message.startswith("the rim toward 9 o'clock has")


def test_what_is_told_of_a_soft_skin_adds_up(cut, lay):
    rays = [(math.cos(k), math.sin(k)) for k in np.arange(14) * math.tau / 14]
    deep = [cut((30 * x, 30 * y), (145 * x, 145 * y), depth=8) for x, y in rays]
    deep[0] = cut(*deep[0].line, depth=5)
    made = lay(*deep, cut((-5, 0), (5, 0), depth=4))
    (found,) = density(made)
    rho = cut_density(made).deep_cracks
    assert found.figures["cracks"] == rho > 0.6
    assert found.figures["stiffness"] == pytest.approx(1 / (1 + math.pi * rho))
    assert (1 - found.figures["shorter"]) ** 2 * rho == pytest.approx(0.6)
    assert found.cuts == tuple(range(14))


def test_what_to_take_away_is_told_in_tens_and_whole_per_cents_rounded_up(cut, lay):
    (crowded,) = density(lay(*hatch(cut, 3, 2, side=45)))
    excess = 10 * math.ceil(crowded.figures["shorten_mm"] / 10)
    assert crowded.hint == f"remove about {excess} mm of cut there, or cut it shallower"
    rays = [(math.cos(k), math.sin(k)) for k in np.arange(14) * math.tau / 14]
    deep = [cut((30 * x, 30 * y), (145 * x, 145 * y), depth=8, family=k + 1)
            for k, (x, y) in enumerate(rays)]  # fmt: skip
    (soft,) = density(lay(*deep, cut((0, 0), (1, 0), depth=4, family=20)))
    percent = math.ceil(100 * soft.figures["shorter"])
    assert soft.hint == f"make the deep cuts {percent}% shorter, or use fewer"
    assert soft.place.line == 14 and crowded.place.line == 1
