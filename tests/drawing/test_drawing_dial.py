"""The ring of degrees: ticks lie on rays from the crown, clockwise from 12 o'clock."""

import numpy as np
import pytest

from scorecraft.drawing.guide.dial import DIAL_MM, NUMBER_MM, dial
from scorecraft.drawing.picture import Label, Shape, walk
from scorecraft.drawing.text import CAP_HEIGHT, outline
from scorecraft.loaf.dome import make_loaf

LOAVES = [make_loaf("round", 220.0, None, 95.0), make_loaf("long", 120.0, 330.0, 80.0)]


def labels(loaf):
    return [item for item in walk(dial(loaf, (0.0, 0.0)).items) if isinstance(item, Label)]


@pytest.mark.parametrize("loaf", LOAVES, ids=["round", "long"])
def test_every_tick_and_number_stands_at_its_turntable_angle(loaf):
    shapes = [item for item in walk(dial(loaf, (0.0, 0.0)).items) if isinstance(item, Shape)]
    ticks = np.array(shapes[1].lines)
    assert len(ticks) == 36
    turns = np.degrees(np.arctan2(ticks[..., 0], -ticks[..., 1])) % 360
    off = (turns - np.arange(0, 360, 10)[:, None] + 180) % 360 - 180
    assert np.abs(off).max() < 1e-6
    assert [label.text for label in labels(loaf)] == [f"{d}°" for d in range(0, 360, 30)]
    for label in labels(loaf):
        x, y = label.at
        at = np.degrees(np.arctan2(x, -y)) % 360
        assert (at - float(label.text[:-1]) + 180) % 360 - 180 == pytest.approx(0, abs=1e-6)


@pytest.mark.parametrize("loaf", LOAVES, ids=["round", "long"])
def test_numbers_keep_off_the_rim_and_within_the_ring_and_are_legible(loaf):
    half = np.array([loaf.width_mm, loaf.length_mm]) / 2
    for label in labels(loaf):
        assert label.size * CAP_HEIGHT == pytest.approx(NUMBER_MM) and NUMBER_MM >= 4
        points = np.array([p for _, seg in outline(label.text, label.size).segments for p in seg])
        low, high = points.min(axis=0), points.max(axis=0)
        corners = np.array([[low[0], low[1]], [high[0], low[1]], high, [low[0], high[1]]])
        corners -= [(high[0] + low[0]) / 2, -label.size * CAP_HEIGHT / 2]
        c, s = np.cos(label.turn), np.sin(label.turn)
        box = corners @ np.array([[c, s], [-s, c]]) + label.at
        outside = loaf.outline.radius(np.arctan2(-box[:, 1], box[:, 0])) < np.hypot(*box.T)
        assert outside.all()
        assert (np.abs(box).max(axis=0) <= half + DIAL_MM + 0.1).all()


def test_numbers_are_never_upside_down():
    assert all(np.cos(label.turn) > -1e-9 for label in labels(LOAVES[0]))
