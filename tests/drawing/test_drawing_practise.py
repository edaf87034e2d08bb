"""Practice sheets: the hardest strokes by measure, at true length, nothing over anything else."""

import math
from dataclasses import replace

import numpy as np
import pytest
import shapely
from support.drawing_layouts import cut, make_layout, turned
from support.shelf_designs import shipped

from scorecraft.bench import work_of
from scorecraft.curves import arc, length
from scorecraft.cuts import Bench
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.paper.sheet import PAPERS
from scorecraft.drawing.picture import Label, Layer, Shape, walk, words
from scorecraft.drawing.practise.basics import basics
from scorecraft.drawing.practise.blade import WIDE_MM, blade
from scorecraft.drawing.practise.exercise import Held, bounds, part_that_fits
from scorecraft.drawing.practise.hardest import hardest, headings, quarter_turn, sharpest
from scorecraft.drawing.practise.own import own
from scorecraft.drawing.practise.row import FADED, Cells, cells, row
from scorecraft.drawing.practise.sheets import practice_sheets
from scorecraft.drawing.practise.words import CAUTIONS, FADING, FREE, TRACE
from scorecraft.drawing.svg import svg
from scorecraft.groups import groups, numbers_of
from scorecraft.practice import PRINTER_MARGIN_MM

PATTERNS = ("leaf-crown", "herringbone-batard", "petal-spiral", "swirl", "sea-and-sun", "sunflower")
ROOM = (30.0, 160.0)


def sheets(layout, **more):
    made = work_of(layout)
    return practice_sheets(layout, made, groups(layout, made.order), **more)


def exercises(layout, room=ROOM):
    made = work_of(layout)
    return own(layout, made, groups(layout, made.order), *room)


def straight(long, x=0.0, **more):
    return cut([[x, -long / 2], [x, long / 2]], **more)


def bent(degrees, x=40.0, long=30.0, **more):
    """A stroke with one corner in its middle."""
    angle, half = math.radians(degrees), long / 2
    corner = [x, 0.0]
    end = [x + half * math.sin(angle), half * math.cos(angle)]
    return cut([[x, -half], corner, end], **more)


# the measures


@pytest.mark.parametrize("radius", [5.0, 12.0, 40.0])
def test_a_circle_bends_by_its_radius_and_turns_a_quarter_in_a_quarter(radius):
    line = arc(radius, 0.0, math.pi)
    assert sharpest(*headings(line))[0] == pytest.approx(10.0 / radius, rel=0.06)
    assert quarter_turn(*headings(line))[0] == pytest.approx(radius * math.pi / 2, abs=0.6)


def test_a_straight_stroke_neither_bends_nor_turns():
    line = np.array([[0.0, 0.0], [3.0, 40.0]])
    assert sharpest(*headings(line))[0] == 0.0
    assert quarter_turn(*headings(line)) == (math.inf, 0.5)


def test_a_wide_arc_is_no_small_turn():
    assert quarter_turn(*headings(arc(60.0, 0.0, math.pi)))[0] == math.inf


def test_a_corner_bends_where_it_is():
    turn, at = sharpest(*headings(np.array([[0.0, 0.0], [0.0, 60.0], [20.0, 80.0]])))
    assert math.degrees(turn) == pytest.approx(45.0, abs=0.1)
    assert at == pytest.approx(60 / (60 + 20 * math.sqrt(2)), abs=0.06)


def test_the_longest_the_most_bent_and_the_most_crowded_are_found():
    cuts = [
        straight(90.0, x=-40.0),
        straight(40.0, x=-30.0 + 3.0, figure=1),
        straight(40.0, x=-30.0, figure=2),
        bent(25.0, figure=3),
        bent(40.0, x=60.0, figure=4),
    ]
    layout = make_layout(cuts)
    found = hardest(layout, range(5))
    assert [each.cut for each in found] == [0, 4, 2]
    assert found[0].why == (f"The longest stroke: {layout.lengths_mm[0]:.0f} mm in one pull.",)
    assert found[1].why == ("The sharpest bend: 40° within 10 mm.",)
    assert found[2].why == ("The closest neighbour: 3.0 mm to the next one.",)
    assert found[2].beside == (1,)


def test_of_two_neighbours_the_one_cut_later_is_the_hard_one():
    layout = make_layout([straight(50.0), straight(40.0, x=4.0, figure=1)])
    for order, hard in (((0, 1), 1), ((1, 0), 0)):
        crowded = [each for each in hardest(layout, order) if each.beside]
        assert [each.cut for each in crowded] == [hard]


def test_strokes_that_meet_are_no_neighbours():
    layout = make_layout([straight(60.0), cut([[0.5, 0.0], [30.0, 0.0]], figure=1)])
    assert not any(each.beside for each in hardest(layout, (0, 1)))


def test_what_is_hard_in_two_ways_is_told_once():
    (only,) = hardest(make_layout([cut(arc(30.0, 0.0, math.pi))]), (0,))
    assert [why.split(":")[0] for why in only.why] == [
        "The longest stroke", "The sharpest bend", "The smallest turn",
    ]  # fmt: skip


def test_a_layout_without_cuts_has_no_hard_stroke():
    assert hardest(make_layout([]), ()) == ()


# the exercises


@pytest.mark.parametrize("name", PATTERNS)
def test_strokes_are_as_long_as_on_the_dough_and_come_toward_you(name):
    layout = shipped(name).layout
    made = work_of(layout)
    for hard, each in zip(hardest(layout, made.order), exercises(layout, (1e3, 1e3)), strict=True):
        (line,) = each.strokes
        assert length(line) == pytest.approx(layout.lengths_mm[hard.cut], abs=0.05)
        if np.hypot(*(line[-1] - line[0])) > 0.4 * length(line):
            assert line[-1] - line[0] == pytest.approx([0.0, -np.ptp(line[[0, -1], 1])], abs=1e-6)


def test_what_the_sheet_does_not_hold_is_drawn_in_part_and_said():
    layout = shipped("herringbone-batard").layout
    (slash, *_) = exercises(layout)
    _, low, _, high = bounds(slash.strokes)
    assert high - low == pytest.approx(ROOM[1], abs=0.2)
    assert "This sheet holds 160 mm of its 266 mm" in " ".join(slash.told)


@pytest.mark.parametrize("at", [0.0, 0.3, 1.0])
def test_the_part_that_fits_holds_the_hard_place(at):
    line = arc(80.0, 0.0, math.pi)
    part = part_that_fits(line, at, 30.0, 60.0)
    assert np.all(np.ptp(part, axis=0) <= (30.0, 60.0))
    assert 0.1 < length(part) / length(line) < 0.6
    place = shapely.line_interpolate_point(shapely.LineString(line), at, normalized=True)
    assert shapely.distance(shapely.LineString(part), place) < 0.2


def test_the_handle_leans_to_the_hand_that_cuts():
    slash = cut([[0, 60], [0, -60]], depth=9.0, blade=40.0, kind="expansion")
    for hand, right in (("right", True), ("left", False)):
        layout = replace(make_layout([slash]), bench=Bench(hand=hand))
        (only,) = exercises(layout)
        assert only.held.right is right
        side = "right" if right else "left"
        assert f"9 mm deep (start 5.5 mm, finish 4.5 mm), blade at 40°, handle to the {side}" in (
            only.held.words
        )


def test_an_upright_blade_leans_to_no_side():
    assert Held((2.5, 2.5, 2.5), math.pi / 2).words == "In dough 2.5 mm deep, blade upright."


def test_the_patterns_own_leaf_is_drawn_with_the_numbers_of_the_guide():
    layout = shipped("leaf-crown").layout
    made = work_of(layout)
    numbers = numbers_of(groups(layout, made.order))
    leaf = basics(layout, made, numbers)[-1]
    parts = {numbers[k]: c.part for k, c in enumerate(layout.cuts) if c.word == "leaf"}
    assert sorted(filter(None, leaf.numbers)) == sorted(map(str, parts))
    assert [number for number in leaf.numbers if number] == sorted(filter(None, leaf.numbers))
    assert all(f"no. {number}, leaf {part}" in leaf.told[0] for number, part in parts.items())


def test_a_pattern_without_a_leaf_gets_one_light_cuts_first():
    layout = make_layout([straight(80.0)])
    made = work_of(layout)
    leaf = basics(layout, made, numbers_of(groups(layout, made.order)))[-1]
    assert len(leaf.strokes) == 9 and [each for each in leaf.numbers if each] == ["1", "2", "3"]
    assert leaf.numbers[0] == "1" and leaf.numbers[-1] == "3"


def test_basics_take_depth_and_blade_from_the_pattern():
    slash = cut([[0, 60], [0, -60]], depth=11.0, blade=33.0, kind="expansion")
    layout = make_layout([slash, straight(30.0, x=50.0, depth=2.0, figure=1)])
    made = work_of(layout)
    light, slanted, *_ = basics(layout, made, numbers_of(groups(layout, made.order)))
    assert (light.held.depths_mm[1], light.held.blade_rad) == (2.0, math.pi / 2)
    assert (slanted.held.depths_mm[1], slanted.held.blade_rad) == (11.0, math.radians(33.0))


# the row and the blade


@pytest.mark.parametrize("right", [True, False])
@pytest.mark.parametrize(
    ("depth", "degrees"), [(2.0, 90.0), (2.5, 30.0), (6.0, 60.0), (12.5, 40.0), (11.0, 30.0)]
)
def test_the_blade_is_drawn_at_its_angle_and_depth(depth, degrees, right):
    block = blade(Held((depth,) * 3, math.radians(degrees), right))
    shapes = [item for item in walk(block.items) if isinstance(item, Shape)]
    slit = shapes[4].lines[0]
    across, down = slit[0] - slit[1]
    assert down == pytest.approx(depth)
    assert math.atan2(down, abs(across)) == pytest.approx(math.radians(degrees))
    assert abs(across) < 1e-9 or bool(across < 0) is right
    texts = words(block.items)
    assert f"{depth:g} mm" in texts and f"{degrees:.0f}°" in texts
    points = np.concatenate([line for shape in shapes for line in shape.lines])
    points = np.vstack([points, *(label_box(each) for each in labels(block.items))])
    assert points.min() >= -0.01 and points[:, 0].max() <= WIDE_MM + 0.01


def test_a_very_flat_blade_stays_in_its_section():
    block = blade(Held((12.0,) * 3, math.radians(8.0)))
    left, _, right, _ = frame_of(Layer("blade", block.items))
    assert left >= -0.01 and right <= WIDE_MM + 0.01
    assert {"12 mm", "8°"} <= set(words(block.items))


@pytest.mark.parametrize("lines", [1, 2, 3])
@pytest.mark.parametrize("count", range(3, 13))
def test_cells_go_from_full_to_empty_whatever_their_number(count, lines):
    shared = Cells(14.0, count, lines)
    strengths = [shared.strength(cell) for cell in range(count * lines)]
    drawn = [each for each in strengths if each is not None]
    assert strengths == sorted(drawn) + [None] * (len(strengths) - len(drawn))
    assert drawn.count(-1) == shared.traced and 0 in drawn and None in strengths
    assert max(drawn) <= len(FADED)


def test_rows_take_more_lines_where_a_sheet_has_room():
    """The last sheet of the leaf crown held one row, its lower half was blank."""
    page = sheets(shipped("leaf-crown").layout, paper="A4")[-1]
    parts = {item.name: frame_of(item) for item in page.items}
    assert parts["exercises"][3] > 0.8 * parts["rules"][1]


def test_only_a_blade_low_enough_is_said_to_lift_an_ear():
    for blade_deg, ear in ((35.0, True), (65.0, False)):
        slash = cut([[0, 60], [0, -60]], depth=9.0, blade=blade_deg, kind="expansion")
        layout = make_layout([slash])
        made = work_of(layout)
        told = basics(layout, made, numbers_of(groups(layout, made.order)))[1].told
        assert (f"blade at {blade_deg:.0f}°" in told[1], "ear" in told[0]) == (True, ear)


def test_a_row_goes_from_full_strokes_to_none():
    layout = shipped("swirl").layout
    made = work_of(layout)
    first = basics(layout, made, numbers_of(groups(layout, made.order)))[0]
    block = row(first, 190.0)
    shared = cells(first, 190.0)
    named = [item for item in walk(block.items) if isinstance(item, Layer)]
    assert [each.name for each in named if each.name in ("trace", "guide")] == (
        ["trace"] * shared.traced + ["guide"] * shared.faded
    )
    assert shared.traced + shared.faded < shared.count
    assert {TRACE, FADING, FREE} <= set(words(block.items))
    drawn = [sum(map(len_of, each.items)) for each in named if each.name in ("trace", "guide")]
    assert drawn == sorted(drawn, reverse=True) and drawn[0] > drawn[-1]


def len_of(item):
    """How much of a line is inked (mm): dashes less their gaps."""
    if not isinstance(item, Shape) or item.ink is None:
        return 0.0
    dash = item.ink.dash
    share = dash[0] / sum(dash) if dash else 1.0
    return round(share * sum(length(each) for each in item.lines), 6)


# the sheets


def labels(items):
    return [item for item in walk(items) if isinstance(item, Label)]


def frame_of(item):
    """The box that an item's lines and letters take: left, top, right, bottom."""
    points = [line for each in walk([item]) if isinstance(each, Shape) for line in each.lines]
    points += [label_box(each) for each in labels([item])]
    return bounds(points)


@pytest.mark.parametrize(
    ("name", "paper"),
    [*((name, "A4") for name in PATTERNS), *(("swirl", each.name) for each in PAPERS)],
)
def test_all_stays_on_the_paper_and_above_the_rules(name, paper):
    edge = PRINTER_MARGIN_MM.value
    for page in sheets(shipped(name).layout, paper=paper):
        parts = {item.name: frame_of(item) for item in page.items}
        left, top, right, bottom = bounds(
            [np.array([[a, b], [c, d]]) for a, b, c, d in parts.values()]
        )
        assert min(left, top) >= edge
        assert right <= page.width_mm - edge and bottom <= page.height_mm - edge
        assert parts["words"][3] < parts["exercises"][1]
        assert parts["exercises"][3] < parts["rules"][1]


@pytest.mark.parametrize("name", PATTERNS)
def test_no_label_lies_over_a_line_or_another_label(name):
    for page in sheets(shipped(name).layout, paper="A4"):
        inked = [
            shapely.LineString(line)
            for item in walk(page.items)
            if isinstance(item, Shape) and item.ink
            for line in item.lines
        ]
        tree = shapely.STRtree(inked)
        boxes = [shapely.Polygon(label_box(each, descent=0.0)) for each in labels(page.items)]
        for label, frame in zip(labels(page.items), boxes, strict=True):
            assert not len(tree.query(frame, predicate="intersects")), label.text
        assert len(shapely.STRtree(boxes).query(boxes, predicate="intersects")[0]) == len(boxes)


def test_every_sheet_warns_and_carries_the_rules_to_measure():
    pages = sheets(shipped("leaf-crown").layout)
    assert len(pages) > 1
    for number, page in enumerate(pages, start=1):
        text = " ".join(words(page.items))
        for caution in CAUTIONS:
            assert caution in text
        assert f"{number} / {len(pages)}" in text
        (rule,) = [each for each in walk(page.items)
                   if isinstance(each, Layer) and each.name == "100 mm rule"]  # fmt: skip
        left, _, right, _ = frame_of(rule)
        assert right - left == pytest.approx(100.0)


def test_the_sheets_are_the_same_every_time():
    layout = shipped("sunflower").layout
    first, second = ([svg(page) for page in sheets(layout)] for _ in range(2))
    assert first == second


def test_a_turned_pattern_has_the_same_hard_strokes():
    """A symmetric pattern turned by one copy is the same pattern."""
    leaf = [[0.0, 30.0], [8.0, 50.0], [0.0, 80.0]]
    for start in (0.0, 60.0, 120.0):
        cuts = [cut(turned(leaf, start + 60.0 * k), figure=k) for k in range(6)]
        layout = make_layout(cuts)
        found = hardest(layout, work_of(layout).order)
        assert len(found) == 1 and found[0].why[1] == "The sharpest bend: 37° within 10 mm."
