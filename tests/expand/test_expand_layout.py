"""Patterns become cuts where they belong: each placing, clipping, attributes, names and limits."""

import math

import numpy as np
import pytest

from scorecraft.cuts import Cut, Layout
from scorecraft.errors import PatternError, ScorecraftError, UsageError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.units import Quantity

ROUND = "loaf round width 220mm height 95mm\n"


def layout(text: str, head: str = ROUND, **options) -> Layout:
    return expand(parse(head + text, "a.score"), head + text, **options)


def cuts(text: str, **options) -> tuple[Cut, ...]:
    return layout(text, **options).cuts


def ends(cut: Cut) -> list[tuple[float, float]]:
    return [tuple(np.round(point, 6) + 0.0) for point in (cut.line[0], cut.line[-1])]


def clock(point) -> float:
    """Turntable degrees of a point: 0 is 12 o'clock, clockwise."""
    return round(math.degrees(math.atan2(point[0], point[1])) % 360, 6)


def test_a_slash_runs_away_from_the_baker_through_the_crown():
    (cut,) = cuts("slash 40mm")
    assert ends(cut) == [(0, -20), (0, 20)]
    assert not cut.line.flags.writeable


def test_turn_is_clockwise():
    (cut,) = cuts("slash 40mm turn 90deg")
    assert ends(cut) == [(-20, 0), (20, 0)]


def test_around_faces_outward_by_the_clock():
    found = cuts("around 4 radius 50mm:\n    leaf 20mm veins 0\n")
    tips = [cut.line[-1] for cut in found if cut.part == "midrib"]
    assert [clock(tip) for tip in tips] == [0, 90, 180, 270]
    assert all(np.hypot(*tip) > 60 for tip in tips)


@pytest.mark.parametrize(("facing", "way"), [("out", (0, 1)), ("in", (0, -1)), ("along", (1, 0))])
def test_facing_at_twelve_o_clock(facing, way):
    cut = cuts(f"around 3 radius 50mm facing {facing}:\n    slash 10mm\n")[0]
    direction = (cut.line[-1] - cut.line[0]) / 10
    assert direction == pytest.approx(way, abs=1e-9)
    assert cut.line.mean(axis=0) == pytest.approx((0, 50))


def test_around_a_part_of_the_turn_includes_both_ends():
    found = cuts("around 3 radius 50mm from -30deg to 30deg:\n    slash 10mm\n")
    assert [clock(cut.line.mean(axis=0)) for cut in found] == [330, 0, 30]


def test_around_from_an_angle_goes_all_the_way_unless_an_end_is_given():
    found = cuts("around 4 radius 50mm from 45deg:\n    slash 10mm\n")
    assert [clock(cut.line.mean(axis=0)) for cut in found] == [45, 135, 225, 315]
    found = cuts("around 2 radius 50mm from 90deg to 90deg:\n    slash 10mm\n")
    assert [clock(cut.line.mean(axis=0)) for cut in found] == [90, 90]


def test_figures_of_one_rule_that_are_cut_alike_are_one_family():
    rule = "define sprig cut=3mm:\n    at x 20mm:\n        slash 10mm depth cut\n"
    again = "    at x -20mm:\n        slash 20mm depth {}\n"
    found = cuts(rule + again.format("3mm") + "around 3:\n    sprig\n")
    assert len({cut.family for cut in found}) == 1
    found = cuts(rule + again.format("2mm") + "around 3:\n    sprig\n")
    assert len({cut.family for cut in found}) == 2
    apart = "slash 10mm depth 3mm\nat x 20mm:\n    slash 10mm depth 3mm\n"
    assert len({cut.family for cut in cuts(apart)}) == 2


@pytest.mark.parametrize(("part", "low"), [("base", 0), ("middle", -20)])
def test_a_motif_stands_on_its_base_or_its_middle(part, low):
    for figure in ("leaf 40mm", "wave 40mm"):
        lines = [cut.line for cut in cuts(f"{figure} from {part}\n")]
        assert min(line[:, 1].min() for line in lines) == pytest.approx(low, abs=0.7)
    (path,) = cuts("along wave 40mm from base every 100mm:\n    slash 10mm\n")
    assert path.line.mean(axis=0)[1] == pytest.approx(20, abs=1e-6)


def test_a_share_of_the_reach_follows_the_rim_of_an_oval():
    text = "around 4 radius 50%:\n    ring 2mm\n"
    found = layout(text, "loaf oval width 150mm length 280mm height 80mm\n")
    reach = found.loaf.reach(np.array([math.pi / 2, 0.0, -math.pi / 2, math.pi]))
    middles = [np.hypot(*cut.line[:-1].mean(axis=0)) for cut in found.cuts]
    assert middles == pytest.approx(reach / 2, abs=1e-3)
    assert middles[0] > middles[1] + 20


def test_at_by_place_and_by_angle():
    by_place, by_angle = cuts(
        "at x 10mm y 20mm:\n    slash 10mm\nat radius 30mm angle 90deg:\n    slash 10mm\n"
    )
    assert ends(by_place) == [(10, 15), (10, 25)]
    assert ends(by_angle) == [(25, 0), (35, 0)]


def test_row_is_centred_and_runs_rightward():
    found = cuts("row 3 spacing 20mm turn 10deg:\n    slash 10mm\n")
    assert [cut.line.mean(axis=0)[0] for cut in found] == pytest.approx([-20, 0, 20])
    assert found[0].line[-1][0] - found[0].line[0][0] == pytest.approx(
        10 * math.sin(math.radians(10))
    )


def test_mirror_keeps_one_side_and_turns_the_other_over():
    right, left = cuts("mirror:\n    at x 20mm:\n        slash 30mm turn 20deg\n")
    assert left.line == pytest.approx(right.line * (-1, 1))


def test_repeat_goes_step_by_step():
    found = cuts("repeat 3 shift (0mm, 10mm) turn 90deg scale 0.5:\n    slash 8mm\n")
    assert ends(found[0]) == [(0, -4), (0, 4)]
    assert ends(found[1]) == [(-2, 10), (2, 10)]
    assert found[2].line.mean(axis=0) == pytest.approx((5, 10))
    assert np.ptp(found[2].line[:, 1]) == pytest.approx(2)


def test_wedges_clip_to_their_sector():
    found = cuts("wedges 4:\n    at y 40mm:\n        slash 160mm turn 90deg depth 2mm\n")
    assert len(found) == 4
    assert [np.ptp(cut.line, axis=0).max() for cut in found] == pytest.approx([80] * 4)


def test_inside_and_outside_keep_the_two_halves_of_a_cut():
    (kept,) = cuts("inside disc radius 30mm:\n    slash 100mm\n")
    assert kept.line[[0, -1], 1] == pytest.approx([-30, 30], abs=0.05)
    left = cuts("outside disc radius 30mm:\n    slash 100mm\n")
    found = sorted(tuple(cut.line[[0, -1], 1]) for cut in left)
    assert found == [pytest.approx((-50, -30), abs=0.05), pytest.approx((30, 50), abs=0.05)]


def test_regions_join_and_nest():
    (kept,) = cuts(
        "inside disc radius 40mm less disc radius 30mm y 20mm:\n"
        "    inside box width 20mm length 200mm:\n        slash 200mm\n"
    )
    assert kept.line[[0, -1], 1] == pytest.approx([-40, -10], abs=0.05)


def test_along_spreads_figures_evenly_facing_along():
    found = cuts("along slash 60mm turn 90deg every 20mm:\n    leaf 10mm veins 0\n")
    ribs = [cut for cut in found if cut.part == "midrib"]
    assert [cut.line[0][0] for cut in ribs] == pytest.approx([-30, -10, 10, 30])
    assert all(cut.line[-1][0] > cut.line[0][0] + 5 for cut in ribs)


def test_grid_fills_the_loaf_within_its_margin():
    square = cuts("grid square spacing 30mm:\n    ring 3mm\n")
    hexagon = cuts("grid hexagon spacing 30mm:\n    ring 3mm\n")
    middles = np.array([cut.line[:-1].mean(axis=0) for cut in hexagon])
    gaps = np.hypot(*(middles[:, None] - middles[None]).transpose(2, 0, 1))
    np.fill_diagonal(gaps, np.inf)
    assert gaps.min(axis=1) == pytest.approx(30)
    assert len(hexagon) > len(square) > 20
    few = cuts("grid square spacing 30mm columns 3 rows 2:\n    ring 3mm\n")
    assert len(few) == 6


def test_a_mirrored_lattice_is_symmetric():
    found = cuts("grid diamond spacing 30mm within disc radius 70mm:\n    ring 3mm\n")
    middles = {tuple(np.round(c.line[:-1].mean(axis=0), 3) + 0.0) for c in found}
    assert middles == {(round(-x, 3) + 0.0, y) for x, y in middles}


def test_names_at_hand_follow_the_loaf_and_the_copy():
    found = cuts("around 3 radius 40mm:\n    slash (10mm + k * 5mm)\n")
    assert [np.hypot(*(c.line[-1] - c.line[0])) for c in found] == pytest.approx([10, 15, 20])
    (half,) = cuts("slash (width / 2)")
    assert np.ptp(half.line[:, 1]) == pytest.approx(110)


def test_attributes_are_inherited_and_overridden():
    outer, inner, asked = cuts(
        "at x 1mm depth 9mm blade 30deg kind decorative:\n"
        "    slash 20mm\n    slash 20mm depth 2mm kind expansion\n    slash 20mm opens 12mm\n"
    )
    assert (outer.depth_mm, outer.kind, outer.opens_mm) == (9, "decorative", None)
    assert outer.blade_rad == pytest.approx(math.radians(30))
    assert (inner.depth_mm, inner.kind) == (2, "expansion")
    assert asked.opens_mm == 12


def test_a_figure_is_called_as_the_pattern_says():
    found = cuts(
        'at x 1mm called "rib":\n    slash 20mm\n    leaf 40mm veins 0\n'
        '    wave 20mm called "sea"\n'
    )
    assert [cut.name for cut in found] == ["rib", "rib midrib", "rib outline", "rib outline", "sea"]


def test_kind_blade_and_depth_by_habit():
    deep, shallow, leaf_vein = (
        cuts("slash 20mm depth 9mm")[0],
        cuts("slash 20mm depth 2mm")[0],
        next(c for c in cuts("leaf 50mm depth 7mm") if c.part == "vein"),
    )
    assert (deep.kind, shallow.kind, leaf_vein.kind) == ("expansion", "decorative", "decorative")
    assert leaf_vein.depth_mm == 2.5
    assert math.degrees(deep.blade_rad) == pytest.approx(40)
    assert math.degrees(shallow.blade_rad) == pytest.approx(90)
    light = next(c for c in cuts("leaf 50mm depth 2mm") if c.part == "vein")
    assert light.depth_mm == 2.0, "a vein is not deeper than its leaf by default"
    deep = cuts("leaf 50mm depth 3mm midrib_depth 8mm midrib_blade 30deg")
    assert {c.part: c.depth_mm for c in deep} == {"midrib": 8, "outline": 3, "vein": 2.5}


def test_a_rule_draws_one_figure_and_may_use_itself():
    text = (
        "define twig size=40mm n=2:\n    slash size\n    when (n > 0):\n"
        "        at y (size / 2) turn 30deg:\n            twig size (size / 2) n (n - 1)\n"
        "twig n 3\ntwig\n"
    )
    found = cuts(text)
    assert len(found) == 4 + 3
    assert len({cut.figure for cut in found}) == 2
    assert len({cut.family for cut in found}) == 1


def test_let_in_a_block_ends_with_it():
    text = "at x 1mm:\n    let half 20mm\n    slash half\n"
    assert len(cuts(text)) == 1
    with pytest.raises(PatternError, match="unknown name"):
        cuts(text + "slash half\n")


def test_vary_wanders_within_bounds_and_always_the_same_way():
    text = "vary length 10% turn 5deg seed 7:\n    around 12 radius 60mm:\n        slash 20mm\n"
    one, two = cuts(text), cuts(text)
    assert all(np.array_equal(a.line, b.line) for a, b in zip(one, two, strict=True))
    lengths = [np.hypot(*(c.line[-1] - c.line[0])) for c in one]
    assert 18 <= min(lengths) < 20 < max(lengths) <= 22
    other = cuts(text.replace("seed 7", "seed 8"))
    assert not np.array_equal(one[0].line, other[0].line)


def test_knobs_turn_within_their_range():
    text = "knob petals 8 min 5 max 12\naround petals radius 40mm:\n    slash 10mm\n"
    assert len(cuts(text)) == 8
    found = layout(text, knobs={"petals": Quantity(11.0)})
    assert len(found.cuts) == 11
    assert (found.knobs[0].value, found.knobs[0].low, found.knobs[0].high) == (11, 5, 12)
    with pytest.raises(UsageError, match="outside its range, 5 to 12"):
        layout(text, knobs={"petals": Quantity(13.0)})
    with pytest.raises(UsageError, match='no knob "leaves"'):
        layout(text, knobs={"leaves": Quantity(6.0)})
    with pytest.raises(UsageError, match="takes a plain number"):
        layout(text, knobs={"petals": Quantity(6.0, (1, 0, 0, 0, 0))})


def test_another_loaf_and_oven_stand_in_for_the_files_own():
    found = layout("slash 50%", loaf="oval width 140mm length 260mm height 75mm", bake="spring 1.6")
    assert (found.loaf.width_mm, found.loaf.length_mm) == (140, 260)
    assert found.bake.spring == 1.6
    with pytest.raises(PatternError) as caught:
        layout("slash 50%", loaf="ruond width 1mm")
    assert caught.value.problems[0].place.file == "--loaf"


def test_marks_are_lines_not_cuts():
    found = layout("marks spokes 6\nmarks ring radius 50%\nmarks lines 3 spacing 30mm\n")
    assert len(found.cuts) == 0
    assert len(found.marks.lines) == 6 + 1 + 3
    reach = float(found.loaf.reach(0.0))
    assert np.hypot(*found.marks.lines[0][-1]) == pytest.approx(reach)
    assert np.hypot(*found.marks.lines[6].T) == pytest.approx(reach / 2)


def test_scraps_are_dropped_and_told():
    found = layout("inside disc radius 30mm:\n    at x 29.99mm:\n        slash 60mm\n")
    assert not found.cuts
    assert "1 scrap at" in found.remarks[0][0] and found.remarks[0][1].line == 4


@pytest.mark.parametrize(
    ("text", "message", "line"),
    [
        ("slash (k * 3mm)", "cannot be zero", 2),
        ("around 100000 radius 40mm:\n    slash 3mm", "100,000 copies are too many", 2),
        ("around 0:\n    slash 3mm", "below 1", 2),
        ("repeat 2000:\n    repeat 2000:\n        slash 3mm", "more than", 4),
        ("around 8:\n    slash (1mm / k)", "division by zero|cannot", 3),
        ("define a:\n    b\ndefine b:\n    a\na", "more than 40 levels deep", 5),
        ("star 20mm inner 30mm", "inner", 2),
        ("fill band inner 30mm outer 20mm with hatch", "inner radius", 2),
        ("fill disc radius 10mm less disc radius 12mm with hatch", "empty", 2),
        ("fill disc radius 100mm with hatch size 0.001mm", "too fine", 2),
        ("inside disc radius 10mm less disc radius 12mm:\n    slash 9mm", "empty", 2),
        ("knob n 8 min 9 max 12", "outside its range", 2),
        ("knob n 8 min 5mm max 12", "takes a plain number", 2),
        ("loaf round width 200mm", 'a second "loaf"', 2),
        ('title "a"\ntitle "b"', 'a second "title"', 3),
        ('trace "../x.svg"', "not in a file", 2),
        ("grid square spacing 0.001mm:\n    slash 3mm", "too fine", 2),
    ],
)
def test_what_cannot_be_laid_out_is_told_at_its_line(text, message, line):
    with pytest.raises(PatternError, match=message) as caught:
        cuts(text)
    assert line in [p.place.line for p in caught.value.problems]
    assert "a.score" in {p.place.file for p in caught.value.problems}


def test_a_problem_of_many_copies_is_told_once_and_all_problems_are_told():
    with pytest.raises(PatternError) as caught:
        cuts("around 8:\n    slash (3mm - 5mm)\nstar 20mm inner 30mm\n")
    assert [p.place.line for p in caught.value.problems] == [3, 4]


@pytest.mark.parametrize(
    ("head", "message"),
    [
        ("", "no loaf"),
        ("loaf round height 80mm\n", "no width and no dough"),
        ("loaf round dough 2g\n", '"dough" is below 20g'),
        ("loaf round dough 900g proof late\n", "has no proof"),
        ("loaf round dough 900g proof 12\n", "above 5"),
        ("loaf round width 220mm length 300mm\n", "as long as it is wide"),
        ("loaf round width 9000mm\n", "."),
    ],
)
def test_a_loaf_that_cannot_be_made_is_told(head, message):
    with pytest.raises(ScorecraftError, match=message):
        layout("slash 20mm\n", head)


def test_a_loaf_from_its_dough_and_a_size_given_always_wins():
    from_dough = layout("slash 50%\n", "loaf round dough 900g\n")
    assert 180 < from_dough.loaf.width_mm < 300
    assert len(from_dough.size.steps) >= 3
    given = layout("slash 50%\n", "loaf round dough 900g width 230mm proof over\n")
    assert given.loaf.width_mm == 230
    wet = layout("slash 50%\n", "loaf oval dough 900g proof 3.2 basket 28cm\n")
    assert wet.loaf.length_mm > wet.loaf.width_mm


def test_a_file_outside_the_folder_is_refused(tmp_path):
    with pytest.raises(PatternError, match="outside the pattern's folder"):
        layout('trace "../secret.svg"\n', folder=tmp_path)
