"""The verdict on named designs, and the words for places and directions."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import Place
from scorecraft.loaf.areas import on_sheet
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening import solve
from scorecraft.opening.load import tensor
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import predict
from scorecraft.opening.room import direction, room, verdict_of, where
from scorecraft.opening.tightest import tightest
from scorecraft.practice import INSIDE_PER_SKIN, ROOM_BURSTS, ROOM_ENOUGH, SKIN_MM

ROUND = make_loaf("round", 220, None, 95)
OVAL = make_loaf("oval", 160, 280, 90)
BATARD = make_loaf("long", 120, 300, 75)
BAGUETTE = make_loaf("long", 65, 520, 48)
PLACE = Place("made.score", 1, 1)
RIM = ROUND.sheet_rim(90)


def opened(loaf, lines, depth, strain=None, blade=90.0, skin=None):
    """Open cuts on a loaf as it usually grows, or in a sheet of its area under another strain."""
    depths = np.broadcast_to(np.asarray(depth, float), len(lines))
    if strain is None:
        cuts = tuple(
            Cut(line, "cut", "cut", k, k, float(d), np.radians(blade), "expansion", PLACE)
            for k, (line, d) in enumerate(zip(lines, depths, strict=True))
        )
        return predict(Layout("", (), loaf, Bake(), cuts), skin or Skin())
    given = {
        "strain": strain,
        "area_mm2": on_sheet(loaf, 720).area,
        "panel_mm": panel_for(lines),
    }
    usual = {"skin_mm": SKIN_MM.value, "inside": INSIDE_PER_SKIN.value}
    return solve(lines, depths, **given, **usual)


def judged(*given, **more):
    """Judge the room of cuts that are opened so."""
    return room(opened(*given, **more))


def highest(loaf, *given, **more):
    return tightest(opened(loaf, *given, **more), loaf.sheet_rim(180))


def bar(length, turn=0.0):
    half = length / 2 * np.array([np.sin(turn), np.cos(turn)])
    return np.array([-half, half])


def cross(length):
    return [bar(length), bar(length, np.pi / 2)]


def crown(depth):
    """Eight leaves: two outlines and a midrib cut to a depth, four pairs of veins at 3 mm."""
    share = np.linspace(0, 1, 40)
    edge = np.column_stack([12 * np.sin(np.pi * share**0.8), 58 * share])
    leaf = [np.array([[0.0, 0], [0, 52]])]
    leaf += [edge * [side, 1] + np.array([1.2 * side, 0]) for side in (-1, 1)]
    leaf += [
        np.array([[0.0, foot], [5 * side, foot + 6]])
        for foot in (8, 17, 26, 35)
        for side in (-1, 1)
    ]
    lines = []
    for k in range(8):
        c, s = np.cos(k * np.pi / 4), np.sin(k * np.pi / 4)
        frame = np.array([[c, s], [-s, c]])
        lines += [(line + np.array([0, 26])) @ frame for line in leaf]
    return lines, np.tile([depth] * 3 + [min(3.0, depth)] * 8, 8)


def chevrons():
    return [np.array([[-30.0, y], [0, y + 15], [30, y]]) for y in range(-80, 70, 12)]


def lattice(apart):
    at = np.arange(-80, 81, apart)
    lines = [np.array([[-90.0, y], [90, y]]) for y in at]
    return lines + [line[:, ::-1] for line in lines]


def crescent():
    turn = np.linspace(-1.1, 1.1, 30)
    return [60 * np.column_stack([np.cos(turn), np.sin(turn)])]


FIVE = [bar(125, np.radians(-14)) + np.array([0.0, 92.0 * k]) for k in range(-2, 3)]


@pytest.mark.parametrize(
    ("loaf", "lines", "depth", "blade"),
    [
        (ROUND, [bar(120)], 10.0, 90.0),
        (BATARD, [bar(220)], 6.0, 90.0),
        (BATARD, [bar(220)], 6.0, 40.0),
        (ROUND, crescent(), 8.0, 35.0),
        (BATARD, [bar(220) + np.array([20.0, 0])], 10.0, 40.0),
        (BAGUETTE, FIVE, 8.0, 40.0),
        (OVAL, [bar(180)], 10.0, 90.0),
        (ROUND, cross(150), 8.0, 90.0),
        (ROUND, *crown(8.0), 40.0),
        (ROUND, lattice(20.0), 4.0, 90.0),
    ],
)
def test_what_bakers_cut_has_enough(loaf, lines, depth, blade):
    """Common practice, no source."""
    assert judged(loaf, lines, depth, blade=blade).verdict == "enough"


@pytest.mark.parametrize(
    ("loaf", "lines", "depth"),
    [
        (ROUND, [], []),
        (OVAL, [], []),
        (ROUND, chevrons(), 2.5),
        (ROUND, lattice(25.0), 1.5),
        (ROUND, *crown(2.5)),
        (OVAL, [bar(180)], 3.0),
        (ROUND, [bar(60)], 10.0),
    ],
)
def test_uncut_and_decorated_loaves_burst(loaf, lines, depth):
    assert judged(loaf, lines, depth).verdict == "will burst"


def test_between_is_tight():
    assert judged(ROUND, [bar(80)], 10.0).verdict == "tight"
    assert judged(ROUND, crescent(), 6.0, blade=35.0).verdict == "tight"
    assert verdict_of(0.13) == "enough"
    assert verdict_of(0.13, 1.3) == "tight" and verdict_of(0.08, 0.7) == "tight"
    assert verdict_of(0.08) == "tight"


REFERENCE = {80: 0.13, 120: 0.26, 160: 0.41}


def test_room_is_ordered_as_finite_elements_order_it():
    """Cuts through a skin that slides over a round grown dome: see tests/published."""
    free = Skin(12.0, 0.0)
    found = [judged(ROUND, [bar(length)], 12.0, skin=free).taken for length in REFERENCE]
    assert found == pytest.approx(list(REFERENCE.values()), abs=0.05)
    assert judged(ROUND, cross(150), 12.0, skin=free).taken == pytest.approx(0.57, abs=0.05)


def test_skin_left_under_light_cuts_gives_nothing_up():
    """Half through, a cut opens and takes some work out of the sheet, and room for less of it."""
    light = [judged(ROUND, lattice(20.0), depth) for depth in (1.0, 2.0, 3.0)]
    assert light[0].taken < 0.01
    assert light[1].taken < 0.5 * light[2].taken


def test_uncut_loaf_has_no_room_at_all():
    uncut = judged(ROUND, [], [])
    assert uncut.taken == pytest.approx(0)
    assert (uncut.least, uncut.most) == (pytest.approx(0), pytest.approx(0))
    assert uncut.even


def test_of_places_alike_the_lowest_bursts_first():
    """The skin of an uncut loaf is as tight everywhere."""
    tension, (x, y) = highest(ROUND, [], [])
    assert tension == pytest.approx(1, rel=1e-3)
    assert np.hypot(x, y) > 0.9 * ROUND.reach(np.arctan2(y, x))


def test_slash_gives_room_across_itself():
    slash = judged(ROUND, [bar(180)], 10.0)
    assert slash.least_direction_rad == pytest.approx(np.pi / 2)
    assert slash.most > 1.8 * slash.least
    assert slash.least < slash.taken < slash.most


def test_turned_slash_turns_its_directions():
    slash = judged(ROUND, [bar(180, 0.5)], 10.0, strain=(0.1, 0.1, 0))
    assert slash.least_direction_rad == pytest.approx(np.pi / 2 - 0.5, abs=1e-3)


def test_cross_gives_the_same_room_all_around():
    four = judged(ROUND, cross(150), 10.0, strain=(1e-6, 1e-6, 0))
    assert four.even
    assert four.least == pytest.approx(four.taken, rel=1e-4)


def test_growth_across_the_slash_counts_more():
    """The same slash takes up more where the loaf grows more across it than along it."""
    across = judged(ROUND, [bar(180)], 10.0, strain=(0.14, 0.06, 0))
    along = judged(ROUND, [bar(180)], 10.0, strain=(0.06, 0.14, 0))
    assert across.taken > 1.5 * along.taken


def test_room_is_the_energy_set_free():
    """Half of force times jump over the cuts is what the skin loses, at given tension; given
    growth the two mean tensions tell it: checked for a small pattern, where both agree."""
    loaf, line = ROUND, bar(40)
    strain = np.array([0.1, 0.1, 0.0])
    area = on_sheet(loaf, 720).area
    opening = solve([line], 12.0, strain=tuple(strain), area_mm2=area)
    tension = 0.2  # of the uncut skin, strain / (1 - nu)
    freed = tension * opening.gap_mm @ opening.length_mm / 2
    whole = 2 * tension * 0.1 * area / 2
    found = room(opening)
    assert found.taken == pytest.approx(freed / whole, rel=0.02)


def test_highest_tension_is_away_from_the_cuts_and_on_the_loaf():
    tension, (x, y) = highest(ROUND, [bar(120) + np.array([-30, 0])], 10.0)
    assert 0.9 < tension < 1.5
    assert np.hypot(x, y) < ROUND.reach(np.arctan2(y, x))
    assert np.abs(np.array([x, y]) - [-30, np.clip(y, -60, 60)]).max() > 10


def places(parts, rim):
    """A grid of 8 mm about the middle of a rim, 4 mm within it, and how far each is from cuts."""
    low, high = rim.min(axis=0), rim.max(axis=0)
    steps = [np.arange(-40, 40.5, 1) * 8 + (a + b) / 2 for a, b in zip(low, high, strict=True)]
    grids = [steps, [each + 4 for each in steps]]
    counts = np.ceil((high - low) / 8) + 1
    axes = [grids[0 if n % 2 else 1][k] for k, n in enumerate(counts)]
    grid = np.stack(np.meshgrid(*axes), axis=-1).reshape(-1, 2)
    grid = grid[shapely.contains_xy(shapely.Polygon(rim).buffer(-4), grid)]
    cuts = shapely.union_all(shapely.linestrings(np.stack([parts.start, parts.end], axis=1)))
    return grid, shapely.distance(cuts, shapely.points(grid))


@pytest.mark.parametrize(
    ("apart", "clear"), [(60, 20.0), (34, 10.0), (16, 16 / 3)], ids=["wide", "near", "dense"]
)
def test_the_tightest_place_is_the_highest_of_all_that_are_clear_of_cuts(apart, clear):
    """By a grid looked over once more; where cuts are dense as far away as there is any."""
    lines = [np.array([[-95.0, y], [95.0, y]]) for y in np.arange(-92, 93, apart)]
    lines += [line[:, ::-1] for line in lines]
    opening = solve(lines, 6.0, strain=(0.1, 0.08, 0.01), panel_mm=3.0)
    rim = 60 * np.array([[-1.0, -1], [1, -1], [1, 1], [-1, 1]])
    grid, away = places(opening.panels, rim)
    grid = grid[away > clear]
    assert (away > 2 * clear).sum() == 0
    tension, place = tightest(opening, rim)
    found = np.linalg.eigvalsh(opening.tension_at(grid))[:, 1]
    assert found.max() * (1 - 1e-3) <= tension <= found.max()
    top = grid[found >= found.max() * (1 - 1e-3)]
    assert np.hypot(*place) == pytest.approx(np.hypot(*top.T).max())


def test_growth_that_differs_moves_the_place_that_bursts():
    def strain(points):
        share = 0.1 + 0.0004 * points[:, 0]
        return np.column_stack([share, share, 0 * share])

    assert highest(ROUND, [bar(150)], 9.0, strain=strain)[1][0] > 60


def test_no_place_is_left_between_very_dense_cuts():
    lines = [np.array([[-160.0, y], [160, y]]) for y in range(-160, 161, 4)]
    assert highest(ROUND, lines, 3.0) is None


@pytest.mark.parametrize(
    ("turn", "share", "words"),
    [
        (0, 0.9, "at 12 o'clock, just above the base"),
        (120, 0.9, "at 4 o'clock, just above the base"),
        (120, 0.78, "at 4 o'clock, halfway down the side"),
        (120, 0.82, "at 4 o'clock, just above the base"),
        (95, 0.5, "at 3 o'clock, halfway down the side"),
        (270, 0.2, "at 9 o'clock, near the crown"),
        (350, 0.9, "at 12 o'clock, just above the base"),
        (10, 0.05, "at the crown"),
    ],
)
def test_words_for_a_place(turn, share, words):
    angle = np.radians(90 - turn)
    reach = float(ROUND.reach(np.array([angle]))[0])
    place = share * reach * np.array([np.cos(angle), np.sin(angle)])
    assert where(tuple(place), RIM) == words


@pytest.mark.parametrize(
    ("degrees", "words"),
    [(0, "from 3 to 9"), (90, "from 12 to 6"), (30, "from 2 to 8"), (-60, "from 5 to 11")],
)
def test_words_for_a_direction(degrees, words):
    assert direction(np.radians(degrees)) == f"{words} o'clock"


def test_more_spring_asks_for_more_room():
    opening = solve([bar(120)], 10.0, strain=(0.1, 0.1, 0.0), area_mm2=60_000.0, panel_mm=4.0)
    usual, more = (room(opening, strength) for strength in (1.0, 2.0))
    assert more.enough == 2 * usual.enough and more.taken == usual.taken


def test_room_of_directions_is_what_cuts_take_of_the_tension_in_them():
    """The least and the most of 1 - n.s.n / n.s0.n, looked for among 1801 directions n."""
    opening = solve([bar(120)], 10.0, strain=(0.12, 0.06, 0.0), area_mm2=60_000.0, panel_mm=6.0)
    whole = opening.uncut_tension
    left = np.array([[0.5, 0.08], [0.08, 0.6]])
    given = replace(opening, tension_left=left, work_taken=0.3)
    found = room(given)
    turn = np.linspace(0, np.pi, 1801)
    n = np.column_stack([np.cos(turn), np.sin(turn)])
    uncut = tensor(opening.load.mean)
    across = [np.einsum("ij,jk,ik->i", n, each, n) for each in (left * whole, uncut)]
    shares = 1 - across[0] / across[1]
    strain = np.array([0.12, 0.06])
    eased = 1 - np.diag(left * whole) @ strain / (np.diag(uncut) @ strain)
    assert found.taken == 0.3 and not found.even
    assert found.least == pytest.approx(0.3 / eased * shares.min(), rel=1e-4)
    assert found.most == pytest.approx(0.3 / eased * shares.max(), rel=1e-4)
    assert found.least_direction_rad == pytest.approx(turn[np.argmin(shares)], abs=2e-3)
    assert room(replace(opening, work_taken=1.4)).taken == 1.0


def test_where_the_uncut_skin_is_pressed_directions_go_by_the_mean_tension():
    """n.s.n over the mean: 1 - 0.9 across, 1 - 0.4 along."""
    opening = solve([bar(120)], 10.0, strain=(0.2, -0.15, 0.0), area_mm2=60_000.0, panel_mm=6.0)
    given = replace(opening, tension_left=np.diag([0.9, 0.4]), work_taken=0.3)
    found = room(given)
    assert np.linalg.eigvalsh(tensor(opening.load.mean))[0] < 0
    assert found.most / found.least == pytest.approx(6.0)
    assert found.least_direction_rad % np.pi == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(
    ("taken", "strength", "verdict"),
    [(1.0, 1.0, "enough"), (0.99, 1.0, "tight"), (1.25, 1.3, "tight"), (0.7, 0.65, "enough")],
)
def test_the_verdict_goes_by_shares_of_the_strength(taken, strength, verdict):
    assert verdict_of(taken * ROOM_ENOUGH.value, strength) == verdict
    bursts = ROOM_BURSTS.value * strength
    assert verdict_of(bursts, strength) == "tight"
    assert verdict_of(0.99 * bursts, strength) == "will burst"
