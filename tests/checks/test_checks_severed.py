import pytest

from scorecraft.checks import run
from scorecraft.expand import expand
from scorecraft.language.parse import parse

LEAF = "loaf fougasse width 230mm length 310mm height 24mm\n"
EAR = "loaf epi width 62mm length 460mm height 40mm\n"


def found(text, check):
    layout = expand(parse(text, "pattern"), text)
    return [each for each in run(layout) if each.check == check]


def lone(text, check):
    (only,) = found(text, check)
    return only


def test_what_goes_right_through_is_no_fault_of_depth_or_density():
    for text in (
        LEAF + "row 3 spacing 60mm:\n    slash 90mm through pulled 18mm\n",
        EAR + "row 6 spacing 66mm angle 0deg:\n    snip 54mm\n",
    ):
        layout = expand(parse(text, "pattern"), text)
        assert run(layout) == ()
    mixed = LEAF + "slash 90mm through\nat x 60mm:\n    slash 90mm depth 20mm\n"
    assert found(mixed, "depth")  # a plain cut is still told


def test_narrow_strips_tear():
    told = lone(LEAF + "row 2 spacing 9mm:\n    slash 90mm through pulled 18mm\n", "tears")
    assert told.severity == "warning" and "is 9 mm wide: it tears" in told.message
    assert told.hint == "leave 15 mm or more between them"
    assert not found(LEAF + "row 2 spacing 16mm:\n    slash 90mm through pulled 18mm\n", "tears")


def test_cuts_that_meet_leave_a_corner():
    told = lone(LEAF + "cross 90mm width 90mm through\n", "tears")
    assert "the corner between them tears off" in told.message


def test_dough_at_the_edge_and_pieces_that_fall_out():
    edge = lone(LEAF + "at y -135mm:\n    slash 60mm turn 90deg through\n", "tears")
    assert "of dough at the edge" in edge.message and "15 mm" in edge.hint
    out = lone(LEAF + "ring 40mm through\n", "tears")
    assert out.severity == "stop" and "the piece falls out" in out.message


def test_ends_tear_where_a_cut_is_pulled_too_far():
    told = lone(LEAF + "slash 60mm through pulled 40mm\n", "tears")
    assert told.figures["most_mm"] == pytest.approx(27, abs=0.3)
    assert told.hint == "pull it 27 mm at most, or cut it 89 mm long"


@pytest.mark.parametrize(
    ("keys", "said"),
    [
        ("hinge 2mm", "leaves 2 mm uncut: the piece tears off"),
        ("hinge 20mm", "the piece cannot be laid aside"),
        ("blade 20deg", "scissors at 20°: its tongue is too thin"),
        ("blade 60deg", "scissors at 60°: its piece is blunt"),
    ],
)
def test_hinge_and_scissors(keys, said):
    told = found(EAR + f"row 5 spacing 75mm angle 0deg:\n    snip 54mm {keys}\n", "snips")[0]
    assert said in told.message and told.figures["count"] == 5
    assert "mm" in told.hint or "°" in told.hint


def test_scissors_must_not_run_under_the_next_cut():
    told = lone(EAR + "row 5 spacing 40mm angle 0deg:\n    snip 54mm\n", "snips")
    assert "is 40 mm from the next one and runs under it" in told.message
    least = told.figures["least_mm"]
    assert not found(EAR + f"row 5 spacing {least + 1}mm angle 0deg:\n    snip 54mm\n", "snips")
