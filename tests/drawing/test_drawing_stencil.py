from dataclasses import replace

import numpy as np
import pytest
from support.drawing_layouts import cut, make_layout

from scorecraft.drawing.picture import words
from scorecraft.drawing.templates.stencil import stencil
from scorecraft.drawing.templates.telling import stencil_words
from scorecraft.plate.plate import make_plate


@pytest.fixture(scope="module")
def layout():
    return make_layout(
        [cut([[-50, 20], [50, 20]], depth=9.0), cut([[-30, -30], [30, -30]], depth=2.0)]
    )


@pytest.fixture(scope="module")
def plate(layout):
    return make_plate(layout)


def layer(figure, name):
    (found,) = [item for item in figure.items if item.name == name]
    return found


def test_the_plate_is_drawn_at_full_size(plate, layout):
    figure = stencil(plate, layout)
    left, low, right, high = plate.polygon.bounds
    edge = layer(figure, "edge").items[0].lines[0]
    assert np.ptp(edge, axis=0) == pytest.approx((right - left, high - low), abs=0.02)
    assert edge.min() == pytest.approx(2.0)
    (slots,) = layer(figure, "slots").items
    assert len(slots.lines) == len(plate.polygon.interiors) and slots.fill


def test_its_notch_is_at_the_top_and_marked(plate, layout):
    figure = stencil(plate, layout)
    (twelve,) = [item for item in layer(figure, "names").items if item.text == "12"]
    assert twelve.at[1] < 20 and "this side up" in words(figure.items)


def test_what_is_told(plate, layout):
    text = " ".join(stencil_words(plate))
    assert "2.5 to 3.5 mm wide" in text and "1.6 mm or more" in text
    assert "bridges" not in text and "left out" not in text
    assert "cross-hair" in text
    crossed = make_plate(make_layout([cut([[-50, 0], [50, 0]])]))
    assert not crossed.hair and "cross-hair" not in " ".join(stencil_words(crossed))
    over = make_plate(layout, mirrored=True)
    assert stencil_words(over)[0].startswith("Mirrored")
    assert "this side to the dough" in words(stencil(over, layout).items)


def test_one_bridge_is_no_bridges(plate):
    for count, said in ((1, "held by 1 bridge of 3 mm"), (4, "held by 4 bridges of 3 mm")):
        bridged = replace(plate, bridges=(None,) * count)
        assert said in " ".join(stencil_words(bridged))
