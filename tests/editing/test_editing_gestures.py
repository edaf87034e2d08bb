"""Random gestures on every statement of every shipped pattern: never wrong, and undone whole."""

import re
from collections import Counter
from dataclasses import replace
from functools import cache
from random import Random

import numpy as np
import pytest

from scorecraft.editing import gestures as g
from scorecraft.editing.hand import done
from scorecraft.editing.handles import handles
from scorecraft.editing.scene import draws, scene
from scorecraft.editing.slots import LockedError
from scorecraft.editing.written import Edit, Written, edited
from scorecraft.errors import ScorecraftError
from scorecraft.shelf import from_file, shelf

NAMES = sorted(shelf())
WAYS = ("", "multiply", "own")
LANDS_MM = 0.5


@cache
def shipped(name):
    source = from_file(shelf()[name])
    return scene(source.text, source.name, folder=source.folder)


def selectable(found):
    """The statements that a hand can select: they draw, or hold what draws."""
    return [
        line
        for line, each in found.written.statements.items()
        if found.runs[line] and (draws(each) or each.body) and each.word != "define"
    ]


def comments(text):
    lines = (re.sub(r'"[^"]*"', "", line) for line in re.split(r"\r\n|\r|\n", text))
    return [line[line.index("#") :] for line in lines if "#" in line]


def blanks(text):
    return sum(not line.strip() for line in text.splitlines())


def heads(tree):
    """Count what the lines of a tree say."""
    return Counter(str(replace(each, body=())) for each in Written("", tree).statements.values())


def undone(old, edits):
    """The edits that take others back."""
    back, gained = [], 0
    for start, end, new in sorted(edits, key=lambda edit: edit[:2]):
        at = start + gained
        back.append(Edit(at, at + len(new), old[start:end]))
        gained += len(new) - (end - start)
    return back


def away(random, most):
    return np.array([random.uniform(-most, most), random.uniform(-most, most)])


def gesture(random, found, line, kind, way=""):
    """Make a random gesture of a kind on a random copy of a statement; None where there is none."""
    copy = random.randrange(len(found.runs[line]))
    step = found.run(line, copy)
    on = (line, copy, way)
    if kind == "move":
        cuts = found.cuts[step]
        if not cuts:
            return None
        points = found.traced.layout.cuts[random.choice(cuts)].line
        taken = found.plan(points[random.randrange(len(points))])
        to = taken + away(random, 30)
        return g.Move(*on, to=tuple(to), taken=tuple(taken))
    if kind == "drag":
        all_handles = handles(found, step)
        if not all_handles:
            return None
        handle = random.choice(all_handles)
        taken = found.plan(handle.place)
        to = taken + away(random, 9)
        return g.Drag(*on, name=handle.name, taken=tuple(taken), to=tuple(to))
    return {
        "turn": lambda: g.Turn(*on, by_rad=random.uniform(-1, 1)),
        "repeat": lambda: g.Repeat(*on, count=random.choice((1, 2, 7))),
        "mirror": lambda: g.Mirror(*on),
        "duplicate": lambda: g.Duplicate(*on),
        "delete": lambda: g.Delete(*on),
        "free": lambda: g.Free(*on),
        "set": lambda: g.Set(*on, key="depth", value=random.choice(("4mm", ""))),
    }[kind]()


LINES_CHANGED = {"turn": 2, "drag": 2, "repeat": 1, "mirror": 1, "duplicate": 0, "set": 1}
"""So many lines of the old text may say something else; a handle may turn both numbers of one."""


def hold_to_text(old, made, kind):
    """A new text can be read, says no more anew than it should, and keeps the baker's words."""
    new = edited(old.text, made.edits)
    tree = Written.read(new).tree
    gone = heads(old.tree) - heads(tree)
    if kind in LINES_CHANGED:
        assert gone.total() <= LINES_CHANGED[kind], gone
    if kind == "delete":
        assert not heads(tree) - heads(old.tree)
    if kind != "duplicate":
        assert comments(new) == comments(old.text)
    assert blanks(new) == blanks(old.text)
    assert edited(new, undone(old.text, made.edits)) == old.text


@pytest.mark.parametrize("name", NAMES)
def test_whatever_is_done_to_a_statement_only_that_changes(name):
    random, found = Random(name), shipped(name)
    kinds = [*LINES_CHANGED, "delete", "free"]
    for line in selectable(found):
        for kind in random.sample(kinds, 3):
            way = random.choice(WAYS)
            wanted = gesture(random, found, line, kind, way)
            try:
                made = wanted and g.change(found, wanted)
            except ScorecraftError as error:
                assert error.message and way not in getattr(error, "ways", ())
                continue
            if made:
                hold_to_text(found.written, made, kind)


@pytest.mark.parametrize("name", NAMES[::2])
def test_a_moved_cut_lands_where_the_finger_let_go(name):
    random, found = Random(name), shipped(name)
    folder = from_file(shelf()[name]).folder
    moved = 0
    for line in selectable(found):
        wanted = gesture(random, found, line, "move")
        try:
            made = wanted and moved_somehow(found, wanted, folder)
        except ScorecraftError as error:
            assert "within" in error.message, error  # what a rule draws within itself
            continue
        if made:
            moved += 1
            assert lands(found, wanted, made) <= LANDS_MM or "as far as it goes" in made.said
    assert moved


def moved_somehow(found, wanted, folder):
    """Move as it stands, or else in the first way that is offered."""
    try:
        return done(found, wanted, folder=folder)
    except LockedError as error:
        return done(found, replace(wanted, way=error.ways[0]), folder=folder)


def lands(found, wanted, made):
    """How far from where it was let go the held point of the figure is now (mm of the plan)."""
    old = found.run(wanted.line, wanted.copy).scope.frame
    held = np.linalg.solve(old.axes, found.sheet(wanted.taken) - old.origin)
    new = made.scene.run(made.line, made.copy).scope.frame
    return np.hypot(*(made.scene.plan(new.place(held[None])[0]) - wanted.to))


@pytest.mark.parametrize("name", ["leaf-bough", "swirl", "wheat-sheaf"])
def test_gestures_follow_one_another_and_all_are_taken_back(name):
    random, found = Random(f"one after another: {name}"), shipped(name)
    folder, texts, steps = from_file(shelf()[name]).folder, [], []
    kinds = ["move", *LINES_CHANGED, "delete", "free"]
    while len(steps) < 8 and selectable(found):
        kind = random.choice(kinds)
        wanted = gesture(random, found, random.choice(selectable(found)), kind, "own")
        try:
            made = wanted and done(found, wanted, folder=folder)
        except ScorecraftError as error:
            assert error.message
            continue
        if made:
            hold_to_text(found.written, made.change, kind)
            texts.append(found.written.text)
            steps.append(made.change.edits)
            found = made.scene
    text = found.written.text
    for old, edits in zip(reversed(texts), reversed(steps), strict=True):
        text = edited(text, undone(old, edits))
        assert text == old
    assert text == from_file(shelf()[name]).text


NESTED = """loaf oval width 180mm length 260mm height 85mm
# a mirror, a scale, a repeat and wedges around one slash
mirror angle 20deg:
    at x 12mm y 8mm turn 30deg scale 1.6:
        repeat 3 shift (9mm, 4mm) turn 25deg scale 0.7:
            wedges 3 turn 10deg:
                at x 4mm y 20mm:
                    slash 30mm
            inside disc radius 60mm:
                vary length 20% turn 8deg:
                    slash 12mm turn 40deg
row 3 spacing 30mm angle 70deg turn 20deg:
    along arc radius 40mm from -30deg to 30deg every 25mm facing left:
        slash 10mm
grid hexagon spacing 60mm turn 12deg:
    slash 8mm
"""


def test_a_cut_lands_at_any_nesting_through_mirror_scale_repeat_and_wedges():
    found, random = scene(NESTED), Random(3)
    for line in selectable(found):
        for _ in range(3):
            if wanted := gesture(random, found, line, "move"):
                assert lands(found, wanted, done(found, wanted)) <= LANDS_MM, wanted
