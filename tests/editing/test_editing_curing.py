"""Cures of the checks, written into the text: what is drawn then is what the cure says."""

import numpy as np
import pytest

from scorecraft.checks.cure import Change
from scorecraft.editing import gestures as g
from scorecraft.editing.hand import done
from scorecraft.editing.scene import scene
from scorecraft.errors import ScorecraftError

TEXT = """loaf round width 220mm height 95mm
knob deep 6mm min 5mm max 8mm
around 6 radius 20%:
    leaf 47% width 20mm veins 2 depth deep
at x 10mm: # here
    slash 100mm opens 12mm
    arc 60mm
mirror:
    at x 40mm:
        path (0mm, 0mm) (10mm, 30mm) depth 3mm
row 2 spacing 20mm:
    star 20mm depth deep
"""


@pytest.fixture(scope="module")
def before():
    return scene(TEXT)


def cuts_of(found, word, part=""):
    cuts = found.traced.layout.cuts
    return tuple(i for i, cut in enumerate(cuts) if cut.word == word and part in (cut.part, ""))


def cured(before, *changes):
    return done(before, g.Cure(changes=changes))


@pytest.mark.parametrize(
    ("kind", "word", "part", "amount", "line", "says"),
    [
        ("deeper", "leaf", "outline", 7.2, 4, "depth deep outline_depth 7.5mm"),
        ("shallower", "arc", "", 2.2, 7, "arc 60mm depth 2mm"),
        ("deeper", "slash", "", 9.1, 6, "slash 100mm depth 9.5mm"),
        ("deeper", "star", "", 6.8, 2, "knob deep 7mm min"),
        ("deeper", "star", "", 9.0, 12, "star 20mm depth 9mm"),
    ],
)
def test_depths(before, kind, word, part, amount, line, says):
    made = cured(before, Change(kind, cuts_of(before, word, part), mm=amount))
    assert says in made.text.splitlines()[line - 1]
    depths = [made.scene.traced.layout.cuts[i].depth_mm for i in cuts_of(before, word, part)]
    assert min(depths) >= amount if kind == "deeper" else max(depths) <= amount


def test_a_blade_is_held_steeper(before):
    made = cured(before, Change("steeper", cuts_of(before, "slash"), rad=1.2))
    assert "blade 69deg" in made.text


@pytest.mark.parametrize(
    ("kind", "word", "ends", "mm"),
    [
        ("longer", "slash", ("first",), 12.0),
        ("shorter", "slash", ("both",), 12.0),
        ("shorter", "arc", ("last",), 10.0),
        ("longer", "path", ("last", "last"), 10.0),
    ],
)
def test_only_the_ends_that_are_named_move(before, kind, word, ends, mm):
    cuts = cuts_of(before, word)
    made = cured(before, Change(kind, cuts, mm=mm, ends=ends))
    for cut, end in zip(cuts, ends, strict=True):
        old, new = (s.traced.layout.cuts[cut].line for s in (before, made.scene))
        for index, name in ((0, "first"), (-1, "last")):
            far = mm if end in (name, "both") else 0.0
            assert np.hypot(*(new[index] - old[index])) == pytest.approx(far, abs=1.0)


def test_a_cure_moves_and_turns_as_it_says(before):
    (slash,) = cuts_of(before, "slash")
    old = before.traced.layout.cuts[slash].line
    made = cured(before, Change("move", (slash,), points=((5.0, -7.0),)))
    assert np.abs(made.scene.traced.layout.cuts[slash].line - old - (5, -7)).max() < 0.5
    made = cured(before, Change("turn", (slash,), rad=np.pi / 6, points=((30.0, 10.0),)))
    c, s = np.cos(np.pi / 6), 0.5
    wanted = (old - (30, 10)) @ np.array([[c, s], [-s, c]]) + (30, 10)
    assert np.abs(made.scene.traced.layout.cuts[slash].line - wanted).max() < 0.5


def test_what_is_in_the_way_goes_and_a_new_cut_comes(before):
    gone = (*cuts_of(before, "slash"), *cuts_of(before, "arc"))
    lines = (((0.0, 0.0), (30.0, 40.0)), ((-50.0, 0.0), (-40.0, 20.0), (-45.0, 50.0)))
    made = cured(before, Change("remove", gone), Change("add", mm=8, rad=0.7, lines=lines))
    assert "# here" in made.text and "slash 100mm" not in made.text
    straight, bent = made.scene.traced.layout.cuts[-2:]
    for cut, line in ((straight, lines[0]), (bent, lines[1])):
        assert np.hypot(*(cut.line[[0, -1]] - np.array(line)[[0, -1]]).T).max() < 1.5
        assert cut.depth_mm == 8 and np.degrees(cut.blade_rad) == pytest.approx(40)
    assert made.scene.statement(made.line).word == "path"


@pytest.mark.parametrize(
    ("change", "why"),
    [
        (Change("remove", (0,)), "draws other cuts too"),
        (Change("gap", (0,), mm=4, points=((0, 0),)), "gap"),
        (Change("longer", (0,), mm=4, ends=("last",)), "ends of a leaf"),
        (Change("deeper", (999,), mm=4), "no longer there"),
    ],
)
def test_what_the_text_cannot_say_is_refused(before, change, why):
    with pytest.raises(ScorecraftError, match=why):
        cured(before, change)
