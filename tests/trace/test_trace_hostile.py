"""Drawings that mean harm, or are broken: they end with strokes or a word, and within bounds.

Nothing here is timed: what is drawn is counted before it is made, and numbers are read by
patterns that cannot match the same characters in two ways (tests/test_patterns.py).
"""

from importlib import import_module
from random import Random

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.trace import strokes
from scorecraft.trace.path_data import LARGEST_DRAWING_MM, MOST_TRACED_POINTS

path_data = import_module("scorecraft.trace.path_data")
HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="100mm" height="100mm" viewBox="0 0 100 100">'
NUMBERS = ("0", "1", "-7.5", "60", "1e-15", "1e-200", "1e-320", "-1e9", "1e200", "1e308", "99999")


@pytest.fixture
def drawing(tmp_path):
    def write(inside, head=HEAD):
        path = tmp_path / "drawing.svg"
        path.write_text(f"{head}{inside}</svg>", encoding="utf-8")
        return path

    return write


def bounded(path):
    """The strokes of a drawing, or the word it is refused with."""
    try:
        lines = strokes(path)
    except UsageError as error:
        assert error.message
        return error.message
    assert sum(map(len, lines)) <= 2 * MOST_TRACED_POINTS
    for line in lines:
        assert np.isfinite(line).all() and np.abs(line).max() <= 2 * LARGEST_DRAWING_MM
    return lines


@pytest.mark.parametrize("seed", range(60))
def test_any_path_ends_within_bounds(seed, drawing):
    random = Random(seed)
    numbers = random.sample(NUMBERS, 5)

    def step():
        letter = random.choice("MmLlHhVvCcSsQqTtAaZz" + "Aa" * 5)
        values = [random.choice(numbers) for _ in range(path_data.COUNTS[letter.upper()])]
        if letter in "Aa":
            values[3:5] = random.choices("01", k=2)
        return letter + " ".join(values)

    for _ in range(40):
        data = "M10 10" + "".join(step() for _ in range(4))
        shift = f"{random.choice(('scale', 'translate', 'skewX'))}({random.choice(NUMBERS)})"
        bounded(drawing(f'<path d="{data}" transform="{shift}"/>'))


@pytest.mark.parametrize("radius", ["1e-15", "1e-200", "1e-320", "0.001", "14.9"])
@pytest.mark.parametrize("sweep", [0, 1])
def test_radii_too_small_to_reach_make_half_a_circle(radius, sweep, drawing):
    """W3C SVG 1.1, F.6.6: they are scaled up until they reach, here to half the chord."""
    (line,) = bounded(drawing(f'<path d="M10 50A{radius} {radius} 0 0 {sweep} 40 50"/>'))
    middle = (line[0] + line[-1]) / 2
    assert np.hypot(*(line - middle).T) == pytest.approx(np.full(len(line), 15))
    assert len(line) > 10


@pytest.mark.parametrize("radii", ["1e-15 60", "60 1e-320", "0 5", "1e-300 1e-200"])
def test_an_ellipse_without_a_width_is_a_straight_line(radii, drawing):
    (line,) = bounded(drawing(f'<path d="M10 50A{radii} 0 0 1 40 50"/>'))
    assert len(line) == 2


def test_a_flat_ellipse_that_must_grow_out_of_the_drawing_is_refused(drawing):
    assert "reaches beyond" in bounded(drawing('<path d="M10 10A1e-5 60 90 0 1 10 40"/>'))


def test_almost_a_whole_circle_stays_one(drawing):
    (line,) = bounded(drawing('<path d="M60 50A30 30 0 1 1 60 50.0001"/>'))
    assert np.ptp(line, axis=0) == pytest.approx([60, 60], abs=0.1)


@pytest.mark.parametrize(
    "step", ["a9000 9000 0 1 1 1 1 ", "c9e3 0 0 9e3 1 1 ", "h1h-1", "q9e3 0 1 1 "]
)
def test_points_are_counted_before_they_are_made(step, drawing, monkeypatch):
    made = []
    for name in ("bezier_steps", "elliptic_arc"):
        plain = getattr(path_data, name)
        monkeypatch.setattr(path_data, name, lambda *a, f=plain, **k: made.append(1) or f(*a, **k))
    kept = []
    adding = path_data._Pen._add
    monkeypatch.setattr(
        path_data._Pen,
        "_add",
        lambda pen, piece, end: kept.append(len(piece)) or adding(pen, piece, end),
    )
    file = drawing(f'<path d="M0 0{step * 30_000}"/>')
    assert "the drawing has too many" in bounded(file)
    assert sum(kept) <= 2 * MOST_TRACED_POINTS
    assert len(made) <= len(kept) + 1


DIGITS = "0." + "1234567890" * 5_000
LONG = {
    "transform left open": f'<path d="M0 0h9" transform="translate({DIGITS * 2}"/>',
    "transform of many numbers": f'<path d="M0 0h9" transform="matrix({"1.5 " * 50_000}"/>',
    "transform of many steps": f'<path d="M0 0h9" transform="{"scale(1) " * 50_000}"/>',
    "length": f'<circle r="{"9" * 50_000}furlongs"/>',
    "length of blanks": f'<circle r="9{" " * 50_000}!"/>',
    "number": f'<path d="M0 0h{"9" * 50_000}"/>',
    "number in time": f'<path d="M0 0h0.{"3" * 101}"/>',
    "blanks in a style": f'<path d="M0 0h9" style="{("url(" + " " * 9_000) * 5}"/>',
}


@pytest.mark.parametrize("inside", LONG.values(), ids=LONG)
def test_long_attributes_are_refused(inside, drawing):
    said = bounded(drawing(inside))
    assert isinstance(said, str) and len(said) < 200


def test_a_view_box_is_four_numbers_and_nothing_else(drawing):
    for box in ("0 0 100 100 mm", "0 0 1" + "0" * 200 + " 9", "0 0 1e308 1e400", "a0 0 9 9"):
        said = bounded(drawing('<path d="M0 0h9"/>', HEAD.replace("0 0 100 100", box)))
        assert isinstance(said, str), box


def test_references_out_are_found_however_they_are_written(drawing):
    for value in ("URL(a.svg)", "url(''a.svg)", "url( ' a.svg')", "url()", "@IMPORT 'a'"):
        assert "may not refer" in bounded(drawing(f'<path d="M0 0h9" style="fill:{value}"/>'))
    for value in ("url(#a)", "url( '#a' ) url(&quot;#b&quot;)"):
        assert len(bounded(drawing(f'<path d="M0 0h9" style="fill:{value}"/>'))) == 1
