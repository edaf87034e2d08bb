import pytest
import shapely
import shapely.affinity
from support.shelf_designs import some

from scorecraft.designing import make
from scorecraft.plate.doubles import without_doubles
from scorecraft.plate.slits import Slit, slits
from scorecraft.plate.spacing import JOINED_MM, spaced
from scorecraft.practice import SLOT_MM

WEB = 2.0


def slit(*points, width=3.0, rank=1.0, cut=0, name="slash"):
    return Slit(shapely.LineString(points), width, cut, name, rank)


def gaps(slits):
    """Least width of material between any two slots that do not meet."""
    out = []
    for index, one in enumerate(slits):
        for other in slits[index + 1 :]:
            between = one.line.distance(other.line)
            if between > 0.3:
                out.append(between - (one.width_mm + other.width_mm) / 2)
    return min(out, default=float("inf"))


def test_lines_far_apart_stay_as_they_are():
    two = [slit((0, 0), (0, 50)), slit((10, 0), (10, 50), cut=1)]
    assert spaced(two, WEB) == two


def test_crossing_slots_stay_joined():
    two = [slit((-20, 0), (20, 0)), slit((0, -20), (0, 20), cut=1)]
    assert [each.line.length for each in spaced(two, WEB)] == [40, 40]


def test_a_tip_on_the_side_of_another_slot_is_drawn_back_by_a_web():
    two = [slit((-20, 0), (20, 0), rank=2), slit((0, 0), (0, 30), cut=1)]
    main, vein = spaced(two, WEB)
    assert main.line.length == 40
    assert main.line.distance(vein.line) - 3.0 == pytest.approx(WEB, abs=0.06)
    assert vein.line.length == pytest.approx(25, abs=0.1)


def test_tips_that_meet_in_a_corner_stay_joined():
    two = [slit((-20, 0), (0, 20)), slit((20, 0), (0, 20), cut=1)]
    assert sum(each.line.length for each in spaced(two, WEB)) == pytest.approx(2 * 800**0.5)


def test_a_free_tip_gives_way_to_a_passing_slot_even_a_lighter_one():
    two = [slit((0, 4), (0, 40), rank=9), slit((-20, 0), (20, 0), rank=1, cut=1)]
    left = spaced(two, WEB)
    assert [each.line.length for each in left if each.cut == 1] == [40]
    assert gaps(left) >= WEB


@pytest.mark.parametrize("turn", range(0, 360, 45))
def test_of_two_alike_the_one_further_clockwise_gives_way_however_they_are_listed(turn):
    """So copies about the crown give way all alike, and the plate is as even as its loaf."""
    elbows = [(0, 20), (10, 40), (0, 60)], [(22.5, 20), (12.5, 40), (22.5, 60)]
    lines = [shapely.LineString(points) for points in elbows]
    turned = [shapely.affinity.rotate(line, turn, (0, 0)) for line in lines]
    two = [Slit(line, 3.0, cut, "slash", 1.0) for cut, line in enumerate(turned)]
    for pair in (two, two[::-1]):
        left = spaced(pair, WEB)
        lengths = [sum(each.line.length for each in left if each.cut == cut) for cut in (0, 1)]
        assert lengths[0] == pytest.approx(lines[0].length)
        assert lengths[1] < lines[1].length - WEB


def loop(x, half_mm, deep_mm=10.0):
    """A slot that comes back to where it began, all but a gap of 1 mm, `half_mm` wide each way."""
    return [(x - 0.5, 0), (x - half_mm, deep_mm), (x + half_mm, deep_mm), (x + 0.5, 0)]


def test_the_ends_of_a_loop_are_drawn_back_until_a_web_holds():
    (left,) = spaced([slit(*loop(0, 8))], WEB)
    first, last = (shapely.Point(left.line.coords[index]) for index in (0, -1))
    assert first.distance(last) - 3.0 == pytest.approx(WEB, abs=0.2)


def test_a_slot_folded_on_itself_is_left_out_instead_of_searched_for_ever():
    """There is no place along it where its two halves are a slot and a web apart."""
    folded, straight = slit(*loop(0, 2, 30)), slit((40, 0), (40, 50), cut=1)
    assert [each.cut for each in spaced([folded, straight], WEB)] == [1]


def test_facing_tips_of_one_rank_give_way_alike():
    two = [slit((-30, 0), (-1, 0)), slit((1, 0), (30, 0), cut=1)]
    left, right = spaced(two, WEB)
    assert left.line.length == pytest.approx(right.line.length)
    assert gaps([left, right]) == pytest.approx(WEB, abs=0.06)


def test_slots_side_by_side_are_made_narrower_all_copies_alike():
    three = [
        slit((0, 0), (0, 50)),
        slit((4.4, 0), (4.4, 50), cut=1),
        slit((40, 0), (40, 50), cut=2),
    ]
    left = spaced(three, WEB)
    assert {round(each.width_mm, 3) for each in left} == {round(4.4 - WEB - 0.04, 3)}
    assert [each.line.length for each in left] == [50, 50, 50]


def test_slots_too_near_for_that_lose_the_lighter_one():
    two = [slit((0, 0), (0, 50), rank=1), slit((2.5, -30), (2.5, 80), rank=2, cut=1)]
    left = spaced(two, WEB)
    assert [each.cut for each in left] == [1]
    assert gaps(left) >= WEB


def test_an_almost_closed_line_opens_wide_enough():
    line = shapely.Point(0, 0).buffer(20, quad_segs=32).exterior
    coords = list(line.coords)[:-2]
    (left,) = spaced([slit(*coords)], WEB)
    gap = shapely.Point(left.line.coords[0]).distance(shapely.Point(left.line.coords[-1]))
    assert gap - 3.0 >= WEB


def test_nothing_is_drawn_twice():
    lines = [
        shapely.LineString([(0, 0), (30, 0)]),
        shapely.LineString([(40, 0), (10, 0)]),
        shapely.LineString([(20, -5), (20, 5)]),
    ]
    whole, rest, crossing = without_doubles(lines)
    assert whole == [lines[0]] and crossing == [lines[2]]
    assert [each.length for each in rest] == [pytest.approx(10, abs=0.1)]


FORMS = ["round width {w}mm", "oval width {w}mm length {l}mm", "long width {w}mm length {l}mm",
         "square width {w}mm"]  # fmt: skip
LOAVES = [
    f"{FORMS[k % 4]} height {{h}}mm".format(w=60 + 8 * k, l=90 + 15 * k, h=30 + 3 * k)
    for k in range(40)
]


@pytest.mark.parametrize(("number", "name"), list(enumerate(some(0, 2))))
def test_slots_of_every_pattern_come_to_an_end_on_loaves_of_all_forms_and_sizes(number, name):
    """One for 60 mm never did; each pattern takes its turn on one of forty loaves."""
    layout = make(name, loaf=LOAVES[7 * number % 40]).layout
    wanted = slits(layout, slot_mm=SLOT_MM.value)
    left = spaced(wanted, WEB)
    assert sum(each.line.length for each in left) <= sum(each.line.length for each in wanted)
    for each in left:
        tips = shapely.Point(each.line.coords[0]).distance(shapely.Point(each.line.coords[-1]))
        long = each.line.length >= 3 * (each.width_mm + WEB)
        assert each.closed or not long or tips <= JOINED_MM or tips > each.width_mm + WEB - 0.1


@pytest.mark.parametrize(("length", "left"), [(3.85, 0), (3.95, 1)])
def test_a_slot_no_longer_than_a_dot_goes(length, left):
    assert len(spaced([slit((0, 0), (length, 0))], WEB)) == left


@pytest.mark.parametrize(("apart", "narrower"), [(3.95, True), (3.75, False)])
def test_slots_are_narrowed_to_six_tenths_and_no_further(apart, narrower):
    two = [slit((0, 0), (0, 50)), slit((apart, 0), (apart, 50), cut=1, rank=2)]
    left = spaced(two, WEB)
    assert len(left) == (2 if narrower else 1)
    assert {each.width_mm < 3.0 for each in left} == {narrower}


@pytest.mark.parametrize(("gap", "joined"), [(0.2, True), (0.3, False)])
def test_tips_a_quarter_of_a_millimetre_apart_meet(gap, joined):
    left = spaced([slit((-20, 0), (0, 20)), slit((20, 0), (gap, 20), cut=1)], WEB)
    assert (gaps(left) == float("inf")) is joined


@pytest.mark.parametrize(("length", "narrower"), [(7.3, False), (8.0, True)])
def test_slots_side_by_side_for_a_while_are_narrowed_and_others_drawn_back(length, narrower):
    """One and a half times the 5 mm from middle to middle that slots need."""
    two = [slit((0, 0), (0, 50), rank=2), slit((4.4, -40), (4.4, length - 2.3), cut=1)]
    assert (spaced(two, WEB)[0].width_mm < 3.0) is narrower


def test_a_slot_whose_tip_is_in_the_way_gives_way_also_where_it_passes_by():
    """It touches down twice, once by its tip; the other, lighter slot stays whole."""
    passing = slit((-20, 4), (-10, 30), (10, 4), (20, 30), rank=9)
    left = spaced([passing, slit((-40, 0), (40, 0), rank=1, cut=1)], WEB)
    assert [each.line.length for each in left if each.cut == 1] == [80]
    assert {each.width_mm for each in left} == {3.0} and gaps(left) >= WEB


def test_of_two_passing_slots_the_lighter_gives_way():
    for heavy, light in ((0, 1), (1, 0)):
        two = [
            slit((-40, 0), (40, 0), rank=1 + light),
            slit((-20, 30), (0, 3.5), (20, 30), rank=1 + heavy, cut=1),
        ]
        whole = [each.line.length for each in two]
        left = spaced(two, WEB)
        lengths = [sum(each.line.length for each in left if each.cut == k) for k in (0, 1)]
        heavier = 0 if light else 1
        assert lengths[heavier] == pytest.approx(whole[heavier])
        assert lengths[1 - heavier] < whole[1 - heavier] - 2
        assert WEB <= gaps(left) < WEB + 0.1


def test_a_tip_before_a_corner_is_drawn_back_not_joined():
    """A tip joins another slot only at that slot's own end."""
    corner = [slit((0, 0), (30, 0)), slit((0, 0), (0, 30), cut=1)]
    assert [each.line.length for each in spaced(corner, WEB)] == [30, 30]
    three = [*corner, slit((15, 0.1), (15, 30), cut=2, rank=0.5)]
    (tee,) = [each for each in spaced(three, WEB) if each.cut == 2]
    assert tee.line.coords[0][1] == pytest.approx(3 + WEB, abs=0.06)


@pytest.mark.parametrize(("gap", "opened"), [(0.2, False), (0.3, True), (4.9, True), (5.1, False)])
def test_the_ends_of_a_line_meet_or_leave_a_web(gap, opened):
    square = [(gap / 2, 0), (15, 0), (15, 30), (-15, 30), (-15, 0), (-gap / 2, 0)]
    line = slit(*square)
    (left,) = spaced([line], WEB)
    between = left.line.boundary.geoms[0].distance(left.line.boundary.geoms[1])
    assert between == pytest.approx(3 + WEB + 0.04 if opened else gap, abs=0.21)
    assert between >= 3 + WEB or not opened


def test_a_short_bent_line_is_no_loop():
    """Shorter than three times a slot and a web: its ends lie apart by its own bend."""
    hook = slit((0, 0), (0, 6), (4, 6), (4, 2))
    (left,) = spaced([hook], WEB)
    assert left.line.length == 14


def test_facing_tips_are_drawn_back_no_further_than_a_web_also_at_their_last_ends():
    for one in (((-30, 0), (-1, 0)), ((-1, 0), (-30, 0))):
        for other in (((1, 0), (30, 0)), ((30, 0), (1, 0))):
            left, right = spaced([slit(*one), slit(*other, cut=1)], WEB)
            assert left.line.distance(right.line) - 3 == pytest.approx(WEB + 0.04, abs=0.02)
            assert left.line.length == pytest.approx(right.line.length)
