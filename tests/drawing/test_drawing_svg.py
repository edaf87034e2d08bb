"""SVG: checked with the XML parser of the library and with svgelements, a reader not ours."""

import io
import re
from xml.etree import ElementTree

import numpy as np
import pytest
import svgelements
from hypothesis import given, settings
from hypothesis import strategies as st

from scorecraft.drawing.paint import LinearGradient, RadialGradient, Stop
from scorecraft.drawing.picture import (
    Ink,
    Label,
    Layer,
    Picture,
    Shape,
    box,
    line,
    placed,
    ring,
    walk,
    words,
)
from scorecraft.drawing.svg import number, path_data, svg
from scorecraft.errors import ScorecraftError

NS = "{http://www.w3.org/2000/svg}"
GLOW = RadialGradient((50, 50), (40, 20), (Stop(0, "#ffffff"), Stop(1, "#884400")))


def picture(*items, title="A loaf", **more):
    return Picture(210, 297, title, items=items, **more)


def parsed(*items, **more):
    return ElementTree.fromstring(svg(picture(*items), **more))


def stroke(points, **more):
    return Shape((np.asarray(points, float),), ink=Ink(0.5), **more)


def test_one_unit_is_one_millimetre_to_a_reader_not_ours():
    document = svg(picture(stroke([[10, 20], [110, 20]])))
    read = svgelements.SVG.parse(io.StringIO(document), ppi=25.4)
    path = next(each for each in read.elements() if isinstance(each, svgelements.Path))
    assert (read.width, read.height) == pytest.approx((210, 297))
    assert path.bbox() == pytest.approx((10, 20, 110, 20))
    assert abs(path).stroke_width == pytest.approx(0.5)


def test_no_units_and_no_style_attributes_below_the_root():
    label = Label("12 mm", (5, 5), 4, turn=0.3)
    shape = Shape((box(1, 2, 3, 4),), closed=True, fill=GLOW, ink=Ink(1, dash=(3, 1.5)))
    root = parsed(Layer("all", (label, shape), clip=(box(0, 0, 9, 9),)), text="text")
    assert root.get("width") == "210mm"
    assert root.get("viewBox") == "0 0 210 297"
    for element in root.iter():
        assert element.get("style") is None
        if element is not root:
            values = [v for k, v in element.attrib.items() if k != "id"]
            assert not [v for v in values if re.search(r"\d(mm|px|pt|in|cm)\b", v)]


def test_text_always_carries_a_font_size():
    (text,) = parsed(Label("12 mm", (5, 5), 4), text="text").iter(f"{NS}text")
    assert text.get("font-size") == "4"
    assert text.text == "12 mm"


def test_words_stay_in_the_file_when_labels_are_outlines():
    root = parsed(Label("épi 麦", (5, 5), 4))
    assert root.find(f".//{NS}path").get("aria-label") == "épi 麦"
    assert root.find(f"{NS}title").text == "A loaf"
    assert (root.get("role"), root.get("aria-label")) == ("img", "A loaf")


def test_outline_and_text_labels_are_anchored_alike():
    """The outline's box is set by anchor, level and turn: checked for an H, 7.52 x 7.29 of 10."""
    label = Label("H", (50, 50), 10, anchor="middle", level="middle")
    (path,) = (
        e
        for e in svgelements.SVG.parse(io.StringIO(svg(picture(label))), ppi=25.4).elements()
        if isinstance(e, svgelements.Path)
    )
    x0, y0, x1, y1 = path.bbox()
    assert ((x0 + x1) / 2, (y0 + y1) / 2) == pytest.approx((50, 50), abs=0.01)
    assert y1 - y0 == pytest.approx(7.29, abs=0.01)


def test_a_quarter_turn_clockwise_makes_text_run_down():
    label = Label("HHHH", (50, 50), 10, turn=np.pi / 2)
    (path,) = (
        e
        for e in svgelements.SVG.parse(io.StringIO(svg(picture(label))), ppi=25.4).elements()
        if isinstance(e, svgelements.Path)
    )
    x0, y0, x1, y1 = path.bbox()
    assert y0 > 50 and y1 > 75
    assert (x0, x1) == pytest.approx((50, 57.29), abs=0.01)


def test_data_classes_titles_and_layers_are_written():
    shape = stroke([[0, 0], [1, 1]], css="cut deep", data={"cut": "12"}, title="leaf vein")
    root = parsed(Layer("cuts", (shape,), css="layer"))
    group = root.find(f"{NS}g")
    path = group.find(f"{NS}path")
    assert (group.get("data-layer"), group.get("class")) == ("cuts", "layer")
    assert (path.get("data-cut"), path.get("class")) == ("12", "cut deep")
    assert path.find(f"{NS}title").text == "leaf vein"


@pytest.mark.parametrize("bad", [np.nan, np.inf, -np.inf])
def test_a_point_that_is_not_finite_is_refused(bad):
    with pytest.raises(ScorecraftError, match="not a finite number"):
        svg(picture(stroke([[0, 0], [bad, 1]])))
    with pytest.raises(ScorecraftError, match="cannot draw"):
        svg(picture(Label("x", (bad, 0), 3)))


def test_user_text_with_forbidden_characters_and_markup_stays_text():
    wild = "a\x0b\x00<b>&\"'\ud800\u2028end"
    root = ElementTree.fromstring(svg(picture(Label(wild, (1, 1), 3), title=wild), text="text"))
    assert root.find(f".//{NS}text").text == "a <b>&\"' end"
    assert root.get("aria-label") == "a <b>&\"' end"


def test_same_picture_same_text_and_prefixed_ids():
    shape = Shape((ring(50, 50, 40),), closed=True, fill=GLOW)
    drawing = picture(Layer("a", (shape, shape), clip=(box(0, 0, 60, 60),)))
    first = svg(drawing, ids="left")
    assert first == svg(drawing, ids="left")
    ids = re.findall(r'id="([^"]+)"', first)
    assert sorted(ids) == ["left1", "left2"]
    assert set(re.findall(r"url\(#([^)]+)\)", first)) == set(ids)


def test_elliptic_gradient_reaches_its_radii():
    root = parsed(Shape((box(0, 0, 90, 90),), closed=True, fill=GLOW))
    gradient = root.find(f".//{NS}radialGradient")
    a, b, c, d, e, f = map(float, re.findall(r"[-\d.]+", gradient.get("gradientTransform")))
    r, cx, cy = (float(gradient.get(key)) for key in ("r", "cx", "cy"))
    right, low = (cx + r, cy), (cx, cy + r)
    assert (a * right[0] + c * right[1] + e, b * right[0] + d * right[1] + f) == (90, 50)
    assert (a * low[0] + c * low[1] + e, b * low[0] + d * low[1] + f) == (50, 70)


def test_linear_gradient_is_written_in_drawing_units():
    fade = LinearGradient((0, 10), (0, 20), (Stop(0, "#000000"), Stop(1, "#ffffff")))
    gradient = parsed(Shape((box(0, 0, 9, 9),), fill=fade)).find(f".//{NS}linearGradient")
    assert gradient.get("gradientUnits") == "userSpaceOnUse"
    assert [gradient.get(k) for k in ("x1", "y1", "x2", "y2")] == ["0", "10", "0", "20"]


@given(st.floats(-5000, 5000))
@settings(max_examples=60)
def test_numbers_are_plain_short_and_right(value):
    text = number(value)
    assert re.fullmatch(r"-?\d+(\.\d{1,3})?", text)
    assert text != "-0"
    assert float(text) == pytest.approx(value, abs=0.000501)


def test_path_data_rounds_and_closes():
    points = np.array([[-0.0004, 1 / 3], [1234.56789, 2]])
    assert path_data((points,), closed=True) == "M0,0.333 1234.568,2Z"
    assert path_data((np.empty((0, 2)),), closed=True) == ""


def test_placed_moves_everything():
    group = Layer(
        "g",
        (stroke([[1, 2], [3, 4]]), Label("x", (1, 2), 3), Shape((box(0, 0, 1, 1),), fill=GLOW)),
        clip=(box(0, 0, 5, 5),),
    )
    moved = placed(group, 10, 20, 2)
    cut, label, area = moved.items
    assert cut.lines[0].tolist() == [[12, 24], [16, 28]]
    assert cut.ink.width == 1
    assert (label.at, label.size) == ((12, 24), 6)
    assert (area.fill.centre, area.fill.radii) == ((110, 120), (80, 40))
    assert moved.clip[0][2].tolist() == [20, 30]


def test_walk_and_words_reach_into_groups():
    group = Layer("g", (Label("one", (0, 0), 3), Layer("h", (Label("two", (0, 0), 3),))))
    assert words([group]) == ("one", "two")
    assert len(list(walk([group]))) == 4


def test_ring_is_round_to_its_chord():
    points = ring(5, 6, 110)
    middles = (points + np.roll(points, 1, axis=0)) / 2
    assert np.hypot(*(points - [5, 6]).T) == pytest.approx(110)
    assert np.hypot(*(middles - [5, 6]).T).min() > 110 - 0.0031
    assert line(0, 0, 1, 1).shape == (2, 2)


def test_what_has_nothing_to_draw_is_not_written():
    """A path without points is no path: readers and cutters stumble over it."""
    none = (
        Shape((), ink=Ink(1.0)),
        Shape((np.empty((0, 2)),), fill="#000000"),
        Label(" ", (5, 5), 3),
    )
    text = svg(Picture(10, 10, "t", items=(*none, Layer("g", none))))
    assert "<path" not in text
    assert svg(Picture(10, 10, "t", items=none), text="text").count("<text") == 0
