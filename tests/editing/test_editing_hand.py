"""Gestures on the loaf as edits of the text."""

import numpy as np
import pytest

from scorecraft.editing import gestures as g
from scorecraft.editing.hand import done
from scorecraft.editing.scene import scene
from scorecraft.editing.slots import LockedError
from scorecraft.errors import ScorecraftError

LOAF = "loaf round width 220mm height 95mm\n"
ROUND = 2 * np.pi


def after(text, gesture):
    """Do a gesture on a text below a loaf; give the text below it."""
    return done(scene(LOAF + text), gesture).text.removeprefix(LOAF)


@pytest.mark.parametrize(
    ("text", "gesture", "new"),
    [
        pytest.param(
            "slash 80mm  # the ear\n",
            g.Shift(2, by=(20, 0)),
            "at x 20mm:\n    slash 80mm  # the ear\n",
            id="a place of its own",
        ),
        pytest.param(
            "at x 3cm y 10%: # here\n\n  slash 80mm\n",
            g.Move(4, to=(40, 12), taken=(30, 12)),
            "at x 4cm y 10%: # here\n\n  slash 80mm\n",
            id="units stay",
        ),
        pytest.param(
            "mirror:\n    at x 30mm:\n        slash 60mm\n",
            g.Move(4, 1, to=(-40, 0), taken=(-30, 0)),
            "mirror:\n    at x 40mm:\n        slash 60mm\n",
            id="through a mirror",
        ),
        pytest.param(
            "at x 30mm:\n    slash 60mm\n    slash 40mm\n",
            g.Shift(3, by=(0, 10)),
            "at x 30mm:\n    at y 10mm:\n        slash 60mm\n    slash 40mm\n",
            id="only what is selected",
        ),
        pytest.param(
            "around 4 radius 20mm:\n    leaf 40mm\n",
            g.Move(3, 1, to=(40, 0), taken=(30, 0)),
            "around 4 radius 30mm:\n    leaf 40mm\n",
            id="outward",
        ),
        pytest.param(
            "around 4 radius 20mm:\n    leaf 40mm\n",
            g.Move(3, 0, to=(30 * np.sin(0.2), 30 * np.cos(0.2)), taken=(0, 30)),
            "around 4 radius 20mm from 11deg:\n    leaf 40mm\n",
            id="sideways",
        ),
        pytest.param(
            "at radius 50mm angle 90deg:\n    slash 40mm\n",
            g.Move(3, to=(0, 49), taken=(49, 0)),
            "at radius 50mm angle 0deg:\n    slash 40mm\n",
            id="a place by angle",
        ),
        pytest.param(
            "slash 80mm\n", g.Turn(2, by_rad=ROUND / 12), "slash 80mm turn 30deg\n", id="turn"
        ),
        pytest.param(
            "mirror:\n    slash 80mm turn 10deg\n",
            g.Turn(3, 1, by_rad=ROUND / 36),
            "mirror:\n    slash 80mm turn 0deg\n",
            id="turn the mirrored copy",
        ),
        pytest.param(
            "define twig n=2:\n    slash 30mm\ntwig\n",
            g.Turn(4, by_rad=0.5),
            "define twig n=2:\n    slash 30mm\nat turn 29deg:\n    twig\n",
            id="turn the call of a rule",
        ),
        pytest.param(
            "slash 80mm\n",
            g.Repeat(2, count=6),
            "around 6:\n    slash 80mm\n",
            id="repeat",
        ),
        pytest.param(
            "at y 30mm:\n    slash 80mm\n",
            g.Repeat(3, count=6),
            "around 6:\n    at y 30mm:\n        slash 80mm\n",
            id="repeat with its place",
        ),
        pytest.param(
            "around 6 radius 20%: # six\n    leaf 40mm\n",
            g.Repeat(3, count=9),
            "around 9 radius 20%: # six\n    leaf 40mm\n",
            id="repeat more often",
        ),
        pytest.param(
            "around 6 radius 20% from 10deg to 370deg depth 4mm: # six\n    leaf 40mm\n",
            g.Repeat(3, count=1),
            "at radius 20% angle 10deg depth 4mm: # six\n    leaf 40mm\n",
            id="one is left",
        ),
        pytest.param(
            "around 6: # six\n    # a star\n\n    at x 30mm:\n        star\n",
            g.Repeat(6, count=1),
            "# six\n# a star\n\nat x 30mm:\n    star\n",
            id="unwrapped",
        ),
        pytest.param("slash 80mm\n", g.Mirror(2), "mirror:\n    slash 80mm\n", id="mirror"),
        pytest.param("mirror:\n    slash 80mm\n", g.Mirror(3), "slash 80mm\n", id="mirror no more"),
        pytest.param(
            "at x 5mm: # a\n    slash 80mm # b\n",
            g.Duplicate(3),
            "at x 5mm: # a\n    slash 80mm # b\nat x 15mm y -10mm:\n    slash 80mm\n",
            id="duplicate",
        ),
        pytest.param(
            "around 3: # a\n    # b\n    mirror:\n        slash 80mm # c\nring 20mm\n",
            g.Delete(5),
            "# a\n    # b\n        # c\nring 20mm\n",
            id="delete empties parents",
        ),
        pytest.param("slash 80mm", g.Delete(2), "", id="delete the last line"),
        pytest.param(
            "leaf 60mm veins 3 # x\n",
            g.Set(2, key="veins", value=""),
            "leaf 60mm # x\n",
            id="a key is taken away",
        ),
        pytest.param(
            "leaf 60mm # x\n",
            g.Set(2, key="depth", value="4mm"),
            "leaf 60mm depth 4mm # x\n",
            id="a key is added",
        ),
        pytest.param(
            "slash 80mm\n",
            g.Drag(2, name="length", taken=(0, 40), to=(0, 49)),
            "slash 99mm\n",
            id="the tip sets the length, the middle stays",
        ),
        pytest.param(
            "arc 60mm from -40deg to 40deg\n",
            g.Drag(2, name="to", taken=(30, 40), to=(40, 30)),
            "arc 60mm from -40deg to 56deg\n",
            id="an end goes round",
        ),
        pytest.param(
            "path (0mm, 0mm) (1cm, 40mm)\n",
            g.Drag(2, name="point 2", taken=(10, 39), to=(20, 39)),
            "path (0mm, 0mm) (2cm, 40mm)\n",
            id="a point of a path",
        ),
        pytest.param(
            "fill disc radius 30mm and box width 20mm length 90mm with hatch size 8mm\n",
            g.Drag(2, name="radius", taken=(0, 30), to=(0, 39)),
            "fill disc radius 39mm and box width 20mm length 90mm with hatch size 8mm\n",
            id="a region has the handles",
        ),
        pytest.param(
            "around 4:\n    ring 20mm\n",
            g.Drag(2, name="radius", taken=(0, 0), to=(0, 29)),
            "around 4 radius 29mm:\n    ring 20mm\n",
            id="how far out the copies stand",
        ),
        pytest.param(
            "ring 20mm\n",
            g.New(word="slash", at=(30, 0)),
            "ring 20mm\nat x 30mm:\n    slash 80mm\n",
            id="new",
        ),
        pytest.param(
            "around 4:\n  ring 20mm\n",
            g.New(2, 1, word="slash", at=(30, 0)),
            "around 4:\n  ring 20mm\n  at x 30mm:\n      slash 80mm\n",
            id="new in a block",
        ),
    ],
)
def test_gesture(text, gesture, new):
    assert after(text, gesture) == new


KNOB = "knob long 60mm min 50mm max 70mm step 2mm\n"


def test_a_handle_turns_the_knob_that_stands_there():
    text = KNOB + "slash long\nslash long turn 90deg\n"
    made = done(scene(LOAF + text), g.Drag(3, name="length", taken=(0, 30), to=(0, 32.4)))
    assert made.text == LOAF + text.replace("60mm", "64mm")
    assert made.said.endswith('the knob "long" is 64mm; also changes slash in line 4')
    far = done(scene(LOAF + text), g.Drag(3, name="length", taken=(0, 30), to=(0, 90)))
    assert far.text == LOAF + text.replace("60mm", "70mm") and "as far as it goes" in far.said


def test_a_typed_number_turns_the_knob_as_far_as_it_goes():
    assert after(KNOB + "slash long\n", g.Set(3, key="length", value="68mm")).startswith(
        "knob long 68mm"
    )
    with pytest.raises(LockedError, match="ends at 70") as caught:
        after(KNOB + "slash long\n", g.Set(3, key="length", value="9cm"))
    assert caught.value.ways == ("own",)
    assert (
        after(KNOB + "slash long\n", g.Set(3, way="own", key="length", value="9cm"))
        == KNOB + "slash 9cm\n"
    )


@pytest.mark.parametrize(
    ("line", "ways", "way", "new"),
    [
        ("slash tip", ("own", "multiply"), "own", "slash 80mm"),
        ("slash tip", ("own", "multiply"), "multiply", "slash (1.33 * tip)"),
        (
            "slash (tip + 2mm - 2mm)",
            ("own", "multiply"),
            "multiply",
            "slash (1.33 * (tip + 2mm - 2mm))",
        ),
        ("slash (1.5 * (tip * 1))", ("own", "multiply"), "multiply", "slash (1.83 * (tip * 1))"),
        ("slash (tip + k * 0mm)", ("multiply",), "multiply", "slash (1.33 * (tip + k * 0mm))"),
    ],
)
def test_what_is_worked_out_turns_only_in_ways_that_are_asked_for(line, ways, way, new):
    text = f"let tip 60mm\n{line}\n"
    drag = g.Drag(3, name="length", taken=(0, 30), to=(0, 39.6))
    with pytest.raises(LockedError, match="length of slash") as caught:
        after(text, drag)
    assert caught.value.ways == ways
    moved = g.Drag(3, way=way, name="length", taken=(0, 30), to=(0, 39.6))
    assert after(text, moved) == f"let tip 60mm\n{new}\n"


def test_freed_copies_lie_where_they_lay_and_know_their_number():
    text = "row 3 spacing 30mm angle 60deg: # r\n    # keep\n    slash (20mm + k * 5mm) turn 9deg\n"
    before = scene(LOAF + text)
    made = done(before, g.Free(4, 2))
    assert "(20mm + 0 * 5mm)" in made.text and "(20mm + 2 * 5mm)" in made.text
    assert made.text.count("# r") == made.text.count("# keep") == 1
    for old, new in zip(before.traced.layout.cuts, made.scene.traced.layout.cuts, strict=True):
        assert np.abs(old.line - new.line).max() < 0.02
    assert made.scene.cuts[made.scene.run(made.line, made.copy)] == [2]


@pytest.mark.parametrize(
    ("text", "gesture", "why"),
    [
        ("mirror:\n    slash 80mm\n", g.Free(3), '"mirror" cannot stand alone'),
        ("around 30:\n    slash 80mm\n", g.Free(3), "too many to write out"),
        ("slash 80mm\n", g.Free(2), "no copies"),
        (
            "define t:\n    slash (k * 9mm + 9mm)\naround 3:\n    t\n",
            g.Free(5),
            "number of the copy",
        ),
        ("define t:\n    slash 30mm\nt\n", g.Delete(3), 'unknown word "t"'),
        ("slash 80mm\n", g.Delete(1), "not something on the loaf"),
        ("slash 80mm\n", g.Drag(2, name="width"), "no handle"),
        ("slash 80mm\n", g.Delete(7), "no statement begins in line 7"),
        ("when (k > 3):\n    slash 80mm\n", g.Delete(3), "draws nothing"),
        ("rim inset 20mm\n", g.Turn(2, by_rad=1), "lies where the loaf has it"),
        ("slash 80mm\n", g.New(word="fill"), "in the tray"),
        ("slash 80mm\n", g.New(2, word="leaf"), "has no block"),
        ("slash 80mm\n", g.Stroke(points=((0, 0), (3, 0))), "too short"),
        ("slash 80mm\n", g.Set(2, key="length", value="3mm depth 9mm"), "more than its own place"),
        ("slash 80mm\n", g.Set(2, key="length", value="(3mm"), "expected"),
        (
            "define t n=3:\n  slash 20mm\n  when (n > 1):\n    at y 9mm:\n      t n (n - 1)\nt\n",
            g.Shift(3, 1, by=(9, 0)),
            'drawn by "t" within "t"',
        ),
    ],
)
def test_what_cannot_be_done_is_refused_in_words(text, gesture, why):
    with pytest.raises(ScorecraftError, match=why):
        after(text, gesture)


def test_a_stroke_becomes_a_path_that_follows_the_finger():
    x = np.linspace(-60, 60, 200)
    y = 25 * np.sin(x / 20) + 0.4 * np.sin(x * 3)  # a hand trembles
    before = scene(LOAF + "ring 30mm\n")
    stroke = g.Stroke(points=tuple(zip(x, y, strict=True)), repeat=3, pressure=(0.9,) * 200)
    made = done(before, stroke)
    path = made.scene.statement(made.line)
    assert path.word == "path" and len(path.get("points").value.pairs) <= 12
    assert [each.statement.word for each in made.scene.run(made.line, 0).chain] == [
        "around",
        "at",
        "path",
    ]
    drawn = made.scene.loaf.sheet_to_plan(made.scene.traced.layout.cuts[1].line)
    astray = [np.hypot(*(drawn - (a, 25 * np.sin(a / 20))).T).min() for a in x]
    assert max(astray) < 2.5 and made.scene.traced.layout.cuts[1].depth_mm == 8


def test_a_closed_stroke_stays_closed():
    turn = np.linspace(0, ROUND, 90)
    ring = g.Stroke(points=tuple(zip(40 * np.cos(turn), 30 * np.sin(turn), strict=True)))
    made = done(scene(LOAF + "ring 9mm\n"), ring)
    line = made.scene.traced.layout.cuts[1].line
    assert np.array_equal(line[0], line[-1]) and len(line) > 20
