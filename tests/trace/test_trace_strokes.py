"""Strokes of a drawing, against another reader of SVG (svgelements) and against formulas."""

import io
from math import pi, radians

import numpy as np
import pytest
import shapely
import svgelements

from scorecraft.errors import UsageError
from scorecraft.loaf.outline import traced_outline
from scorecraft.trace import strokes, traced_rims

SQUARE = 'width="300mm" height="300mm" viewBox="0 0 300 300">'
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" '
FRAME = HEAD + 'width="120mm" height="100mm" viewBox="-10 5 240 200">'


@pytest.fixture
def drawing(tmp_path):
    def write(text):
        path = tmp_path / "drawing.svg"
        path.write_text(text, encoding="utf-8")
        return path

    return write


def other_reader(text):
    """Polylines in mm, y up, about the middle of their box, as svgelements reads them."""
    lines = []
    for shape in svgelements.SVG.parse(io.StringIO(text), ppi=96).elements():
        if isinstance(shape, svgelements.Shape):
            for part in abs(svgelements.Path(shape)).as_subpaths():
                lines.append(sampled(svgelements.Path(part)))
    points = np.concatenate(lines)
    middle = (points.min(axis=0) + points.max(axis=0)) / 2
    return [(line - middle) * (1, -1) for line in lines]


def sampled(path):
    points = []
    for piece in path:
        if isinstance(piece, svgelements.Move):
            points.append(piece.end)
        else:
            points += [] if points else [piece.start]
            points += [piece.point(t) for t in np.linspace(0, 1, 100)[1:]]
    return np.array([(p.x, p.y) for p in points]) * 25.4 / 96


PATHS = {
    "lines": "M10,20 l30 5 H5 h-8.5V70v-9zm3 3 L9 9 11-4.5 .5.5",
    "cubics": "M10 60c10-5 20,5 30 0S50 10 80 20s-10,30-20 5 3 9-4-4C1 2 3 4 5 60z",
    "quadratics": "M0 0 Q 20 40 60 10 T 90 30 t-20 40 q5 5-9 20t4 4 L1 1 T 30 3",
    "arcs": "M10 10A20 10 25 0150 70 a 8 5 -10 1 0 4.5.5 A30 30 0 1 1 80 20 a5 5 0 0 0 9-1",
    "arcs too small to reach": "M10 10 A 1 2 30 0 1 60 40 a 0 5 0 0 1 9 9",
    "closed and on": "M0 0 h40 v30 z l-10 -10 h5",
}


@pytest.mark.parametrize("data", PATHS.values(), ids=PATHS)
def test_path_data_agrees_with_another_reader(drawing, data):
    # The other reader keeps arcs right only under turns and even scales.
    turned = 'transform="translate(4 5) rotate(30 5 6) scale(1.5)"'
    compare(drawing, f'{FRAME}<g {turned}><path d="{data}"/></g></svg>')


@pytest.mark.parametrize(
    "transform",
    [
        "translate(7)",
        "scale(2 -0.5)",
        "rotate(-40)",
        "rotate(20, 3 4)",
        "skewX(20)",
        "skewY(-15)",
        "matrix(1 .2 -.1 .9 3 4)",
        "translate(1,2),scale(3)rotate(10) skewX(5)",
    ],
)
def test_transforms_agree_with_another_reader(drawing, transform):
    inner = f'<g transform="scale(0.8)"><path transform="{transform}" d="{PATHS["cubics"]}"/></g>'
    compare(drawing, f'{FRAME}<path d="M0 0L200 3"/>{inner}</svg>')


def test_shapes_agree_with_another_reader(drawing):
    shapes = """
      <line x1="1" x2="33" y2="4cm"/> <polyline points="1,2 3,4 5 6 -7-8"/>
      <polygon points="0 0 10 0 10 10"/> <rect x="5" y="6" width="30" height="20"/>
      <rect x="50" y="6" width="30" height="20" rx="4"/> <rect width="12mm" height="9" ry="2"/>
      <circle cx="20" cy="30" r="17"/> <ellipse cx="60" cy="90" rx="5" ry="30"/>
    """
    compare(drawing, f'{FRAME}<g transform="rotate(12)">{shapes}</g></svg>')


@pytest.mark.parametrize(
    "frame",
    [
        "",
        'viewBox="0 0 50 80"',
        'width="5in" height="8in"',
        'width="50mm" height="80mm" viewBox="0 0 100 160"',
        'width="300pt" height="20pc" viewBox="10 20 70 90"',
        'width="9cm" height="5cm" viewBox="0 0 70 90" preserveAspectRatio="none"',
        'width="9cm" height="5cm" viewBox="0 0 70 90" preserveAspectRatio="xMidYMid slice"',
    ],
)
def test_units_and_view_boxes_agree_with_another_reader(drawing, frame):
    compare(drawing, f'{HEAD}{frame}><path d="M3 4 L40 50 L9 60z"/></svg>')


def compare(drawing, text):
    ours, theirs = strokes(drawing(text)), other_reader(text)
    assert len(ours) == len(theirs)
    for line, other in zip(ours, theirs, strict=True):
        assert line[0] == pytest.approx(other[0], abs=0.06)
        assert line[-1] == pytest.approx(other[-1], abs=0.06)
        one, two = shapely.LineString(line), shapely.LineString(other)
        assert shapely.distance(two, shapely.points(line)).max() < 0.06
        assert shapely.distance(one, shapely.points(other)).max() < 0.06


def test_a_millimetre_is_a_millimetre_and_up_is_up(drawing):
    (line,) = strokes(
        drawing(
            f'{HEAD}width="200mm" height="50mm" viewBox="0 0 400 100">'
            '<path d="M0 0 H200 V20"/></svg>'
        )
    )
    assert line == pytest.approx(np.array([[-50, 5], [50, 5], [50, -5]]))


def test_without_a_view_box_a_unit_is_a_ninety_sixth_of_an_inch(drawing):
    (line,) = strokes(drawing(f'{HEAD}><line x1="0" x2="960" y1="0" y2="0"/></svg>'))
    assert line[1, 0] - line[0, 0] == pytest.approx(254)


def test_one_given_side_sets_the_scale(drawing):
    (line,) = strokes(drawing(f'{HEAD}width="100mm" viewBox="0 0 10 20"><path d="M0 0h10"/></svg>'))
    assert line[1, 0] - line[0, 0] == pytest.approx(100)


def test_a_sheared_circle_is_the_ellipse_of_the_matrix(drawing):
    """Semi-axes of the image of a circle are r times the singular values of the matrix."""
    matrix = np.array([[1, 0.7], [0.2, 0.5]])
    text = f'{HEAD}viewBox="0 0 90 90" width="90mm" height="90mm"><circle r="30" transform="'
    (line,) = strokes(drawing(text + 'matrix(1 .2 .7 .5 40 40)"/></svg>'))
    flip = np.array([[1, 0], [0, -1]])
    on_circle = np.linalg.solve(flip @ matrix, line.T)
    assert np.hypot(*on_circle) == pytest.approx(np.full(len(line), 30), abs=1e-9)
    long, short = np.linalg.svd(matrix, compute_uv=False) * 30
    assert np.hypot(*line.T).max() == pytest.approx(long, abs=0.05)
    assert shapely.Polygon(line).area == pytest.approx(pi * long * short, rel=5e-3)


def test_hidden_and_defined_shapes_are_not_drawn(drawing):
    lines = strokes(
        drawing(
            f'{FRAME}<defs><path d="M0 0L9 9"/></defs>'
            '<g style="display: none"><path d="M1 1h5"/></g>'
            '<g display="none"><rect width="3" height="3"/></g><clipPath id="c"><path d="M0 0h1"/>'
            '</clipPath><path d="M0 0 h8"/><rect width="0" height="4"/><circle r="0"/></svg>'
        )
    )
    assert len(lines) == 1


def test_the_rim_is_the_largest_closed_stroke(drawing):
    path = drawing(
        f'{HEAD}{SQUARE}<path d="M0 0L300 300"/>'
        '<circle cx="20" cy="20" r="9"/><ellipse cx="150" cy="150" rx="70" ry="110"/></svg>'
    )
    (rim,) = traced_rims(path)
    assert np.array_equal(rim[0], rim[-1])
    assert np.ptp(rim, axis=0) == pytest.approx([140, 220], abs=0.1)
    outline = traced_outline(rim)
    assert float(outline.radius(0.0)) == pytest.approx(70, abs=0.1)
    assert float(outline.radius(radians(90))) == pytest.approx(110, abs=0.1)


def test_a_rim_that_all_but_closes_is_closed(drawing):
    text = f'{HEAD}{SQUARE}<path d="M10 10 h90 v90 h-90 v{{}}"/></svg>'
    (rim,) = traced_rims(drawing(text.format(-89.7)))
    assert np.array_equal(rim[0], rim[-1])
    with pytest.raises(UsageError, match="no closed path"):
        traced_rims(drawing(text.format(-80)))


def test_a_hole_in_the_rim_is_a_rim_too(drawing):
    ring = '<circle cx="150" cy="150" r="120"/>{}</svg>'
    one = '<circle cx="150" cy="150" r="40"/>'
    rim, hole = traced_rims(drawing(HEAD + SQUARE + ring.format(one)))
    assert np.ptp(rim, axis=0) == pytest.approx([240, 240], abs=0.1)
    assert np.ptp(hole, axis=0) == pytest.approx([80, 80], abs=0.1)
    evenodd = f'{HEAD}{SQUARE}<path d="M20 20h260v260h-260z M120 120h60v60h-60z"/></svg>'
    assert len(traced_rims(drawing(evenodd))) == 2
    two = '<circle cx="100" cy="150" r="30"/><circle cx="200" cy="150" r="30"/>'
    with pytest.raises(UsageError, match="2 closed lines"):
        traced_rims(drawing(HEAD + SQUARE + ring.format(two)))


@pytest.mark.parametrize("other", [
    '<circle cx="150" cy="150" r="2"/>',
    '<circle cx="150" cy="150" r="119"/>',
    '<circle cx="150" cy="150" r="120"/>',
    '<path d="M120 150h60v9"/>',
    '<circle cx="12" cy="12" r="9"/>',
])  # fmt: skip
def test_specks_and_the_other_edge_of_a_line_are_no_holes(other, drawing):
    (rim,) = traced_rims(drawing(f'{HEAD}{SQUARE}<circle cx="150" cy="150" r="120"/>{other}</svg>'))
    assert np.ptp(rim, axis=0) == pytest.approx([240, 240], abs=0.1)
