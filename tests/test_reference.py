"""The reference in gallery/: the table of words with a drawing of every figure, as it is made.

`python -m pytest tests/test_reference.py --remake` writes it anew; look at it before committing.
"""

import re

import numpy as np
import pytest
from support.figures import figure, measure_your_loaf, strokes
from support.golden import GALLERY, compare
from support.reference_page import DRAWN, page

from scorecraft.checks import CHECKS
from scorecraft.drawing.figure import HIGH, WIDE
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.picture import Label, Shape, walk
from scorecraft.drawing.svg import svg
from scorecraft.language.words import WORDS

FIGURES = GALLERY / "figures"
NAMES = [word.name for word in WORDS.values() if word.group in DRAWN]
MOST_BYTES = 8000


@pytest.mark.parametrize("name", NAMES)
def test_every_motif_and_texture_has_its_drawing(name, remake):
    FIGURES.mkdir(exist_ok=True)
    path = FIGURES / f"{name}.svg"
    compare(path, svg(figure(WORDS[name]), text="text"), remake)
    assert path.stat().st_size < MOST_BYTES


@pytest.mark.parametrize("name", NAMES)
def test_nothing_of_a_drawing_is_clipped(name):
    items = list(walk(figure(WORDS[name]).items))
    points = [line for item in items if isinstance(item, Shape) for line in item.lines]
    points += [label_box(item) for item in items if isinstance(item, Label)]
    (left, top), (right, low) = np.vstack(points).min(axis=0), np.vstack(points).max(axis=0)
    assert min(left, top) >= 0 and right <= WIDE and low <= HIGH


def test_no_drawing_stands_for_another():
    drawn = {name: svg(figure(WORDS[name])) for name in NAMES}
    shown = {re.sub("<(title|desc)>.*?</|aria-label=.*? ", "", text) for text in drawn.values()}
    assert len(shown) == len(NAMES)


def test_a_leaf_is_drawn_as_large_as_its_keys_say():
    points = np.concatenate(strokes(WORDS["leaf"]))
    assert np.ptp(points, axis=0) == pytest.approx([26.0, 60.0], abs=0.05)
    texts = [item.text for item in walk(figure(WORDS["leaf"]).items) if isinstance(item, Label)]
    assert {"length 60 mm", "width 26 mm", "+y forward"} <= set(texts)


def test_how_to_measure_a_loaf_is_drawn(remake):
    path = GALLERY / "measure-your-loaf.svg"
    drawn = measure_your_loaf()
    compare(path, svg(drawn, text="text"), remake)
    texts = {item.text for item in walk(drawn.items) if isinstance(item, Label)}
    assert {"width", "length", "height", "reach"} <= texts
    assert path.stat().st_size < 1.5 * MOST_BYTES


def test_the_reference_is_the_table_of_words_with_its_drawings(remake):
    compare(GALLERY / "reference.md", page("figures") + checks(), remake)


def checks() -> str:
    """List what every check says, in its own words."""
    rows = "".join(f"| `{check.name}` | {check.says} |\n" for check in CHECKS.values())
    return f"\n### Checks\n\n| check | what it says |\n| --- | --- |\n{rows}"


def test_the_reference_shows_every_drawing_and_no_other():
    shown = re.findall(r'<img src="figures/(.*?)"', page("figures"))
    assert shown == [f"{name}.svg" for name in NAMES]
    assert {path.name for path in FIGURES.iterdir()} == set(shown)
    assert all(f"| `{name}` |" in page("figures") for name in WORDS)
