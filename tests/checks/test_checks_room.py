"""A cure for too little room, made on the layout, mends it and raises nothing new."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from scorecraft.checks import room as check
from scorecraft.checks import run
from scorecraft.checks.changes import applied
from scorecraft.checks.cures import no_graver
from scorecraft.checks.symmetry import fold
from scorecraft.checks.telling_loaf import NO_CURE
from scorecraft.designing import make
from scorecraft.opening.predict import predict
from scorecraft.opening.room import room
from scorecraft.practice import ROOM_ENOUGH

LOAVES = [
    "round width 80mm height 40mm",
    "round width 220mm height 95mm",
    "oval width 160mm length 280mm height 90mm",
    "long width 80mm length 300mm height 60mm",
    "square width 90mm height 45mm",
]
NAMES = ["swirl", "chevron-loaf", "lotus", "overlapping-slashes", "fern", "leaf-crown"]
PANEL_MM = 6.0
LIGHT_MM = 2.0


def looked_at(layout, skin):
    """The room finding of a layout, its opening from coarse panels."""
    opening = predict(layout, skin, panel_mm=PANEL_MM)
    return check.room(layout, room(opening, layout.bake.strength), opening, skin)


def light(made, *, expand=True):
    """The same with all cuts light, and none for expansion if told so."""
    kind = {} if expand else {"kind": "decorative"}
    return replace(
        made.layout,
        cuts=tuple(replace(cut, depth_mm=min(cut.depth_mm, LIGHT_MM), **kind) for cut in made.cuts),
    )


@pytest.mark.parametrize("expand", [True, False], ids=["shallow", "none"])
@pytest.mark.parametrize(("count", "loaf"), list(enumerate(LOAVES)), ids=LOAVES)
def test_a_told_cure_mends_the_room_and_raises_nothing_new(count, loaf, expand):
    """Shipped patterns whose expansion cuts are shallow, or light lines like all others."""
    made = make(NAMES[count % len(NAMES)], loaf=loaf)
    layout = light(made, expand=expand)
    opening = predict(layout, made.skin, panel_mm=PANEL_MM)
    (told,) = check.room(layout, room(opening, layout.bake.strength), opening, made.skin)
    if not told.cures:
        assert told.hint == NO_CURE
        return
    assert told.hint == ", or ".join(cure.told for cure in told.cures)
    for cure in told.cures:
        cured = applied(layout, cure.changes)
        assert no_graver(run(layout), run(cured))
        found = room(predict(cured, made.skin, panel_mm=3.0))
        assert found.taken > ROOM_ENOUGH.value


def bare(loaf):
    return make(f"loaf {loaf}\nmarks spokes 8\n")


def test_a_flat_loaf_is_not_told_to_cut_deeper_than_its_height_allows():
    made = bare("round width 350mm height 20mm")
    (told,) = looked_at(made.layout, made.skin)
    assert "10 mm deep" not in told.hint
    assert "5 mm deep" in told.hint or told.hint == NO_CURE


def test_a_small_roll_is_told_a_cut_that_keeps_off_its_rim():
    made = bare("round width 80mm height 40mm")
    (told,) = looked_at(made.layout, made.skin)
    assert "through the crown" in told.hint
    changed = applied(made.layout, told.cures[0].changes)
    assert {finding.severity for finding in run(changed)} <= {"note"}


BIRD = """<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 99 99" width="99mm" height="99mm">
<path d="M10 50 C30 10 70 10 90 50 C70 90 30 90 10 50 Z" fill="none" stroke="black"/></svg>"""


def test_no_cut_is_told_through_a_traced_drawing(tmp_path):
    (tmp_path / "bird.svg").write_text(BIRD)
    file = tmp_path / "mine.score"
    file.write_text('loaf round width 220mm height 90mm\ntrace "bird.svg" width 90mm depth 2mm\n')
    made = make(file)
    (told,) = looked_at(made.layout, made.skin)
    hull = shapely.MultiPoint(np.concatenate([cut.line for cut in made.cuts])).convex_hull
    assert told.hint == NO_CURE or not any(
        hull.intersects(shapely.LineString(line)) for line in told.shapes
    )
    assert "through the crown" not in told.hint


BATARD = "loaf oval width 150mm length 240mm height 75mm\n"
BOULE = "loaf round width 220mm height 95mm\n"


def kinds(text):
    """What the cures of a pattern's room change, cure by cure, and the words."""
    made = make(text)
    (told,) = looked_at(made.layout, made.skin)
    return [[each.kind for each in cure.changes] for cure in told.cures], told


def test_a_slash_is_first_cut_deeper_by_no_more_than_it_takes_then_one_is_added():
    found, told = kinds(BATARD + "slash 200mm depth 4mm kind expansion\n")
    assert found == [["deeper"], ["add"]]
    assert told.hint.startswith("cut the slash 5.5 mm deep, or add two expansion cuts")
    assert told.cuts == (0,) and len(told.shapes) == 2


def test_a_deep_short_slash_is_made_longer():
    found, told = kinds(BOULE + "slash 60mm depth 13mm\n")
    assert found == [["longer"], ["add"]]
    assert told.hint.startswith("make the slash ")
    found, _ = kinds(BATARD + "slash 60mm depth 3mm kind expansion\n")
    assert found[0] == ["longer", "deeper"]


def test_wished_openings_are_not_made_deeper():
    found, _ = kinds(BATARD + "slash 200mm opens 3mm kind expansion\n")
    assert ["deeper"] not in found


def test_an_added_cut_keeps_the_turns_of_the_pattern_and_off_its_figures():
    text = BOULE + "around 5 radius 20mm:\n    leaf length 45mm width 18mm depth 2mm\n"
    found, told = kinds(text)
    assert found == [["add"]]
    (add,) = told.cures[0].changes
    made = make(text).layout
    assert fold(made) == fold(applied(made, [add])) == 5
    leaves = [shapely.MultiPoint(cut.line).convex_hull for cut in made.cuts]
    drawn = [shapely.LineString(line) for line in add.lines]
    assert not any(leaf.intersects(line) for leaf in leaves for line in drawn)


def test_along_a_texture_light_cuts_give_way():
    found, told = kinds(BOULE + "fill disc 80% with crosshatch size 12mm depth 2mm\n")
    assert found == [["remove", "add"]]
    assert "leave out the light cuts in its way" in told.hint


@pytest.mark.parametrize(
    ("text", "count"),
    [
        (BOULE + "around 7:\n    slash 40mm depth 2mm", 7),
        (BOULE + "cross 90mm width 90mm", 4),
        (BOULE + "cross 90mm width 60mm", 2),
        (BOULE + "at x 30mm:\n    slash 90mm", 1),
        (BATARD + "around 6 radius 20mm:\n    slash 20mm", 2),
        (BOULE, 1),
    ],
)
def test_how_often_a_pattern_lies_on_itself(text, count):
    assert fold(make(text + "\n").layout) == count


def test_so_many_cuts_that_they_are_taken_coarsely_are_told(monkeypatch):
    text = "loaf round width 200mm height 90mm\nfill disc 90% with crosshatch size 6mm depth 3mm\n"
    assert not check.coarse(make(text).opening)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PANELS", 1000.0)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PAIRS", 1e6)
    made = make(text)
    (told,) = (each for each in made.findings if "only estimate roughly" in each.message)
    assert (told.check, told.severity) == ("room", "note")
    assert f"{len(made.cuts):,} cuts" in told.message
