"""A cure for too little room, made on the layout, mends it and raises nothing new."""

from dataclasses import replace

import numpy as np
import pytest
import shapely

from scorecraft.checks import room as check
from scorecraft.checks import run
from scorecraft.checks.cures import no_graver, with_cuts
from scorecraft.checks.room import cured
from scorecraft.checks.telling_loaf import NO_CURE
from scorecraft.designing import make
from scorecraft.opening.predict import predict
from scorecraft.opening.room import room, verdict_of
from scorecraft.practice import ROOM_ENOUGH

LOAVES = [
    "round width 80mm height 40mm",
    "round width 350mm height 20mm",
    "round width 120mm height 55mm",
    "round width 220mm height 95mm",
    "oval width 100mm length 180mm height 45mm",
    "oval width 160mm length 280mm height 90mm",
    "oval width 200mm length 350mm height 40mm",
    "long width 80mm length 300mm height 60mm",
    "long width 60mm length 200mm height 30mm",
    "square width 180mm height 70mm",
    "square width 90mm height 45mm",
]
NAMES = ["swirl", "chevron-loaf", "tree", "lotus", "overlapping-slashes", "fern", "leaf-crown"]
PANEL_MM = 6.0
LIGHT_MM = 2.0


def looked_at(layout, skin):
    """The room finding of a layout, its opening from coarse panels."""
    return check.room(layout, predict(layout, skin, panel_mm=PANEL_MM), skin)


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
    found = room(opening, layout.loaf.sheet_rim())
    (told,) = check.room(layout, opening, made.skin)
    cure = cured(layout, found, made.skin)
    if cure is None:
        assert told.hint == NO_CURE
        return
    assert told.hint == cure.told
    assert passes(layout, cure)
    assert enough(cure.layout, made.skin)


def passes(layout, cure):
    return no_graver(run(layout), run(cure.layout))


def enough(layout, skin):
    found = room(predict(layout, skin, panel_mm=3.0), layout.loaf.sheet_rim())
    return verdict_of(found.taken) == "enough" and found.taken > ROOM_ENOUGH.value


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
    changed = with_cuts(made.layout, told.shapes, 10.0, np.pi / 2)
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


def test_so_many_cuts_that_they_are_taken_coarsely_are_told(monkeypatch):
    text = "loaf round width 200mm height 90mm\nfill disc 90% with crosshatch size 6mm depth 3mm\n"
    assert not check.coarse(make(text).opening)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PANELS", 1000.0)
    monkeypatch.setattr("scorecraft.opening.system.OPENING_MOST_PAIRS", 1e6)
    made = make(text)
    (told,) = (each for each in made.findings if "only estimate roughly" in each.message)
    assert (told.check, told.severity) == ("room", "note")
    assert f"{len(made.cuts):,} cuts" in told.message
