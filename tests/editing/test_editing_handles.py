"""Every motif of the table has handles from its row, and they sit where they pull."""

import numpy as np
import pytest

from scorecraft.editing import gestures as g
from scorecraft.editing.hand import done
from scorecraft.editing.handles import handles
from scorecraft.editing.scene import scene
from scorecraft.language.words import WORDS

LOAF = "loaf round width 320mm height 95mm\n"
MOTIFS = [word for word in WORDS.values() if word.group == "motif" and word.name != "trace"]


@pytest.mark.parametrize("word", MOTIFS, ids=lambda word: word.name)
def test_a_handle_follows_the_finger(word):
    line = word.example.splitlines()[0]
    line = line if line.startswith(word.name) else word.name
    found = scene(LOAF + f"at x 9mm turn 20deg:\n    {line}\n")
    step = found.run(3, 0)
    held = handles(found, step)
    assert held and {each.name for each in held if each.pull is not None} <= {
        key.name for key in word.handles
    }
    for each in held[:2]:
        way = each.pull if each.pull is not None else np.array([0.5, 0.5])
        way = each.frame.axes @ (way / np.hypot(*way))
        taken, to = found.plan(each.place), found.plan(each.place + 6 * way)
        made = done(found, g.Drag(3, name=each.name, taken=tuple(taken), to=tuple(to)))
        after = {new.name: new for new in handles(made.scene, made.scene.run(3, 0))}[each.name]
        astray = after.place - found.sheet(to)  # along a side the outermost point may slide
        far = abs(astray @ way) if each.pull is not None else np.hypot(*astray)
        assert far < 2, (each.name, made.text)


def test_the_tip_and_the_side_of_a_leaf():
    found = scene(LOAF + "leaf 60mm width 24mm\n")
    tip, side = handles(found, found.run(2, 0))
    assert tip.name == "length" and np.abs(tip.at - (0, 60)).max() < 0.1
    assert side.name == "width" and abs(side.at[0] - 12) < 0.1 and side.pull[1] == 0


def test_a_row_may_name_its_handles():
    assert [key.name for key in WORDS["letters"].handles] == ["height"]
    assert [key.name for key in WORDS["arc"].handles] == ["radius", "from", "to"]


def test_the_width_of_a_drawing(tmp_path):
    path = '<path d="M0 0 L40 30" stroke="black" fill="none"/>'
    (tmp_path / "line.svg").write_text(
        f'<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="30mm" '
        f'viewBox="0 0 40 30">{path}</svg>'
    )
    found = scene(LOAF + 'trace "line.svg"\n', folder=tmp_path)
    (handle,) = handles(found, found.run(2, 0))
    taken, to = found.plan(handle.place), found.plan(handle.place + 10 * handle.at / 20)
    drag = g.Drag(2, name="width", taken=tuple(taken), to=tuple(to))
    assert "width 60mm" in done(found, drag, folder=tmp_path).text


def test_the_call_of_a_rule_has_its_lengths_and_angles_in_the_hand():
    body = "    slash long\n    at turn lean:\n        at y 30mm:\n            slash 20mm\n"
    rule = f"define twig long=40mm n=2 lean=20deg:\n{body}"
    found = scene(LOAF + rule + "at x 9mm turn 30deg:\n    twig\n")
    step = found.run(8, 0)
    held = {each.name: each for each in handles(found, step)}
    assert set(held) == {"long", "lean"} and held["lean"].round
    tip = held["long"]
    to = tip.place + 10 * tip.frame.axes @ tip.pull
    drag = g.Drag(8, name="long", taken=tuple(found.plan(tip.place)), to=tuple(found.plan(to)))
    made = done(found, drag)
    assert made.text.endswith("    twig long 50mm\n")
