"""The plot of predicted against measured openings."""

import numpy as np
import pytest

from scorecraft.drawing.picture import Layer, Shape, walk, words
from scorecraft.drawing.svg import svg
from scorecraft.drawing.tune_plot import tune_plot


def points(picture):
    group = next(i for i in walk(picture.items) if isinstance(i, Layer) and i.name == "openings")
    return [item.lines[0].mean(axis=0) for item in group.items]


def diagonal(picture):
    return next(
        i.lines[0] for i in walk(picture.items) if isinstance(i, Shape) and i.ink and i.ink.dash
    )


def test_right_predictions_lie_on_the_line_and_others_to_their_side():
    picture = tune_plot([(4.0, 4.0), (11.0, 11.0), (10.0, 6.0), (6.0, 10.0)], "Sun", "skin 12 mm")
    start, end = diagonal(picture)
    way = (end - start) / np.linalg.norm(end - start)
    aside = np.array([-way[1], way[0]])
    off = [float((point - start) @ aside) for point in points(picture)]
    assert off[:2] == pytest.approx([0, 0], abs=1e-6)
    assert off[2] > 1 and off[3] < -1  # too little lies below the line, too much above
    assert "Sun" in words(picture.items)


@pytest.mark.parametrize("most", [0.0, 0.4, 3.0, 27.0, 149.0])
def test_every_point_lies_within_the_axes(most):
    picture = tune_plot([(most, most / 2), (0.0, 0.0)], "Sun")
    for x, y in points(picture):
        assert 0 <= x <= picture.width_mm and 0 <= y <= picture.height_mm
    ticks = [text for text in words(picture.items) if text.replace(".", "").isdigit()]
    assert 4 <= len(ticks) <= 20
    assert max(float(text) for text in ticks) >= most


def test_a_plot_without_openings_can_be_drawn():
    assert "<svg" in svg(tune_plot([], "No bakes"))
