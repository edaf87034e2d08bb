import math

import numpy as np
import pytest
from support.domes import dome_area

from scorecraft.errors import UsageError
from scorecraft.loaf.bake import Bake, Growth, growth
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import Outline

ROUND = make_loaf("round", 220, None, 95)
LONG = make_loaf("long", 120, 320, 70)


def grown(loaf, bake):
    rim = loaf.outline
    side = bake.sideways
    after = Outline(rim.shape, rim.a_mm * side, rim.b_mm * side, rim.power)
    return Loaf(after, loaf.height_mm * bake.upward, loaf.profile)


@pytest.mark.parametrize("spread", [0.0, 0.3, 2 / 3, 1.0])
def test_the_grown_loaf_has_the_grown_volume(spread):
    bake = Bake(spring=1.5, spread=spread)
    assert grown(LONG, bake).volume_mm3 == pytest.approx(1.5 * LONG.volume_mm3)


@pytest.mark.parametrize(
    ("gain", "percent"), [(0.2, 6.27), (0.3, 9.14), (0.43, 12.66), (0.5, 14.47), (0.7, 19.35)]
)
def test_the_same_growth_in_every_direction_is_the_cube_root(gain, percent):
    """(1 + f)^(1/3) - 1 of a volume gain f, less the share the skin follows."""
    bake = Bake(spring=1 + gain, spread=2 / 3)
    strains = growth(LONG, bake).at(LONG.sheet_rim(20) * 0.8) / bake.left
    assert 100 * strains[:, :2] == pytest.approx(np.full((20, 2), percent), abs=0.01)
    assert strains[:, 2] == pytest.approx(np.zeros(20), abs=1e-12)


@pytest.mark.parametrize("loaf", [ROUND, LONG], ids=["round", "long"])
def test_growth_of_the_skin_adds_up_to_the_grown_dome(loaf):
    """Areas grown patch by patch sum to the area of the loaf after the bake."""
    bake = Bake(spring=1.6, spread=0.4)
    points, areas = loaf.patches(180, 40)
    along, around, shear = growth(loaf, bake).along_rays(points.reshape(-1, 2))
    grows = (1 + along / bake.left) * (1 + around / bake.left) - (shear / bake.left) ** 2
    after = float((grows * areas.reshape(-1)).sum())
    assert after == pytest.approx(dome_area(grown(loaf, bake)), rel=1e-4)


def test_along_the_ray_and_around_the_crown():
    """On a round loaf: ds1/ds0 adds up to the new reach, rho1/rho0 is the growth sideways."""
    bake = Bake(spring=1.6, spread=0.4)
    reach = float(ROUND.reach(0.0))
    stations = (np.arange(4000) + 0.5) / 4000 * reach
    points = np.column_stack([stations, np.zeros(4000)])
    along, around, shear = growth(ROUND, bake).along_rays(points)
    longer = float((1 + along / bake.left).mean() * reach)
    assert longer == pytest.approx(float(grown(ROUND, bake).reach(0.0)), abs=0.01)
    assert around / bake.left + 1 == pytest.approx(np.full(4000, bake.sideways))
    assert shear == pytest.approx(np.zeros(4000), abs=1e-12)


def test_sheet_axes():
    """At 12 o'clock the ray is y and around is x; at 3 o'clock the other way round."""
    made = growth(ROUND, Bake(spread=0.2))
    along, around, _ = made.along_rays(np.array([[100.0, 0.0]]))
    assert made.at([[100, 0]])[0] == pytest.approx([along[0], around[0], 0])
    assert made.at([[0, 100]])[0] == pytest.approx([around[0], along[0], 0])
    diagonal = made.at([[100 / math.sqrt(2)] * 2])[0]
    mean, half = (along[0] + around[0]) / 2, (along[0] - around[0]) / 2
    assert diagonal == pytest.approx([mean, mean, half])


@pytest.mark.parametrize("lean", [0.0, 0.8, math.pi / 2, 2.2])
def test_strain_in_any_direction_is_the_growth_of_that_direction(lean):
    """A step on the flank of a long loaf, leaning from the ray, is stretched as the loaf is."""
    bake = Bake(spring=1.6, spread=0.2)
    theta, away = 0.9, 60.0
    ray = np.array([math.cos(theta), math.sin(theta)])
    steps = LONG.surface(LONG.sheet_to_plan([(away - 1e-3) * ray, (away + 1e-3) * ray]))
    along = (steps[1] - steps[0]) / np.linalg.norm(steps[1] - steps[0])
    normal = LONG.normal(LONG.sheet_to_plan([away * ray]))[0]
    step = math.cos(lean) * along + math.sin(lean) * np.cross(normal, along)
    measured = float(np.sum((step * [bake.sideways, bake.sideways, bake.upward]) ** 2))
    exx, eyy, exy = growth(LONG, bake).at([away * ray])[0] / bake.left
    stretch = np.array([[1 + exx, exy], [exy, 1 + eyy]])
    flat = np.array([math.cos(theta + lean), math.sin(theta + lean)])
    assert float(np.sum((stretch @ flat) ** 2)) == pytest.approx(measured, rel=1e-4)


def test_usual_bake_stretches_a_round_loaf_by_a_tenth():
    made = growth(ROUND, Bake())
    assert made.exx == pytest.approx(0.10, abs=0.01)
    assert made.eyy == pytest.approx(made.exx)
    assert made.exy == pytest.approx(0, abs=1e-12)


def test_mean_is_weighted_by_area():
    """Sectors between many rays, each cut in rings of equal area."""
    made = Growth(LONG, Bake(spread=0.2))
    ray = LONG.sheet_rim(2000)
    following = np.roll(ray, -1, axis=0)
    sector = ray[:, 0] * following[:, 1] - ray[:, 1] * following[:, 0]
    rings = np.concatenate([ray * math.sqrt((k + 0.5) / 40) for k in range(40)])
    mean = np.average(made.at(rings), axis=0, weights=np.tile(sector, 40))
    assert made.mean == pytest.approx(mean, abs=2e-4)


def test_no_spring_no_strain_and_steam_lets_the_skin_give():
    assert growth(ROUND, Bake(spring=1.0)).mean == pytest.approx((0, 0, 0), abs=1e-12)
    assert growth(ROUND, Bake(steam=True)).exx < growth(ROUND, Bake(steam=False)).exx


@pytest.mark.parametrize("given", [{"spring": 0.9}, {"spring": 9}, {"spread": 1.2}, {"spread": -1}])
def test_absurd_bakes_are_refused(given):
    with pytest.raises(UsageError):
        Bake(**given)
