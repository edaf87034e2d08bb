import numpy as np
import pytest

from scorecraft.drawing.picture import Ink, Label, Layer, Picture, Shape, line, ring
from scorecraft.drawing.templates.dxf import dxf
from scorecraft.errors import ScorecraftError


def picture(*items):
    return Picture(100, 80, "Flat", "", items)


def test_lines_become_polylines_on_the_layer_of_their_group():
    made = picture(Layer("cut slots!", (Shape((line(10, 5, 40, 5),), ink=Ink(0.1, "#ff0000")),)))
    text = dxf(made).decode()
    assert "CUT_SLOTS_" in text and text.count("\nPOLYLINE\n") == 1 and text.endswith("EOF\n")
    assert text.count("\nVERTEX\n") == 2
    assert "\n 20\n75\n" in text, "5 mm below the top of 80 mm is 75 mm up"


def test_closed_rings_are_closed():
    made = picture(Layer("edge", (Shape((ring(50, 40, 10),), closed=True, ink=Ink(0.1)),)))
    assert "\n 70\n1\n" in dxf(made).decode().split("ENTITIES")[1]


@pytest.mark.parametrize(
    "item",
    [
        Shape((line(0, 0, 1, 1),), ink=Ink(0.1)),
        Layer("words", (Label("12", (5, 5), 3),)),
        Layer("area", (Shape((ring(5, 5, 3),), closed=True, fill="#000000"),)),
        Layer("clipped", (Shape((line(0, 0, 1, 1),), ink=Ink(0.1)),), clip=(ring(5, 5, 3),)),
    ],
)
def test_what_a_cutter_cannot_follow_is_refused(item):
    with pytest.raises(ScorecraftError):
        dxf(picture(item))


def test_points_must_be_finite():
    wrong = Shape((np.array([[0.0, 0.0], [np.nan, 1.0]]),), ink=Ink(0.1))
    with pytest.raises(ScorecraftError, match="finite"):
        dxf(picture(Layer("cut", (wrong,))))
