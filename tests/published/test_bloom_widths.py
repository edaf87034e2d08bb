"""The picture of the baked loaf is true: openings measured on its pixels are those predicted.

The picture is read as grey pixels, 6 to the mm, along a straight line across the middle of a cut.
Nothing of the drawing's own geometry is used to measure. The flank of an ellipsoid:
z = H sqrt(1 - r^2 / R^2), so its slope is tan = H r / (R sqrt(R^2 - r^2)); a width that points down
the slope shrinks in plan by the cosine.
"""

import io
import math

import numpy as np
import pytest
from PIL import Image

from scorecraft.cuts import Cut, Layout
from scorecraft.drawing.bloom.bloom import bloom
from scorecraft.drawing.bloom.mouths import mouths_of, predicted
from scorecraft.drawing.pdf import png
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

PIXELS_PER_MM = 6
PIXELS = 800
"""Of the picture itself: about 4 to the mm."""
AS_DARK_AS_THE_EDGE = 88
WORST_MM = 0.5
RADIUS, HEIGHT = 80.0, 66.0


def layout_of(lines, depth):
    cuts = tuple(
        Cut(np.array(line, float), "slash", "slash", k, k, depth, math.pi / 2, "expansion", PLACE)
        for k, line in enumerate(lines)
    )
    return Layout("Slashes", (), make_loaf("round", 2 * RADIUS, None, HEIGHT), Bake(), cuts)


PLACE = Place("made.score", 1, 1)


def pixels(layout, mouths, **more):
    picture = bloom(layout, mouths, pixels=PIXELS, **more)
    data = png(picture, dpi=25.4 * PIXELS_PER_MM)
    return np.asarray(Image.open(io.BytesIO(data)).convert("L")).astype(int)


def measured(grey, middle, across):
    """Walk from the middle of an opening to both sides, up to its dark edge; in mm."""
    height, width = grey.shape
    start = np.array([width / 2, height / 2]) + np.array(middle) * [1, -1] * PIXELS_PER_MM
    total = 0.0
    for way in (1, -1):
        step = np.array(across) / np.hypot(*across) * [1, -1] * way / 2
        for count in range(2000):
            x, y = np.floor(start + step * count).astype(int)
            if grey[y, x] < AS_DARK_AS_THE_EDGE:
                total += count / 2 / PIXELS_PER_MM
                break
        else:
            raise AssertionError("no edge was met")
    return total


def slash(angle, length=90.0):
    along = np.array([math.cos(angle), math.sin(angle)]) * length / 2
    return [-along, along]


@pytest.mark.parametrize(("degrees", "depth"), [(0, 9.0), (35, 5.0), (90, 7.0), (130, 9.0)])
def test_a_lone_slash_opens_on_the_picture_as_predicted(degrees, depth):
    angle = math.radians(degrees)
    layout = layout_of([slash(angle)], depth)
    opening = predicted(layout)
    seen = measured(pixels(layout, mouths_of(opening)), (0, 0), (-math.sin(angle), math.cos(angle)))
    assert opening.widest_mm[0] > 4
    assert seen == pytest.approx(opening.widest_mm[0], abs=WORST_MM)


def test_on_the_flank_a_width_is_foreshortened_as_the_slope_says():
    away = 62.0
    layout = layout_of([[[away, -32], [away, 32]]], 8.0)
    opening = predicted(layout)
    grow, rise = layout.bake.sideways, layout.bake.upward
    r = layout.loaf.sheet_to_plan(np.array([[away, 0.0]]))[0, 0] * grow
    big, tall = RADIUS * grow, HEIGHT * rise
    slope = math.atan2(tall * r, big * math.sqrt(big**2 - r**2))
    assert math.degrees(slope) > 35
    seen = measured(pixels(layout, mouths_of(opening)), (r, 0), (1, 0))
    assert seen == pytest.approx(opening.widest_mm[0] * math.cos(slope), abs=WORST_MM)


def test_neighbours_take_width_from_one_another_on_the_picture_too():
    """Two parallel slashes: each measured opening is the predicted one, less than that of one."""
    layout = layout_of([[[x, -45], [x, 45]] for x in (-13, 13)], 8.0)
    alone = predicted(layout_of([[[-13, -45], [-13, 45]]], 8.0)).widest_mm[0]
    opening = predicted(layout)
    grey = pixels(layout, mouths_of(opening))
    for line, x in enumerate((-13, 13)):
        middle = layout.loaf.sheet_to_plan(np.array([[x, 0.0]]))[0] * layout.bake.sideways
        seen = measured(grey, middle, (1, 0))
        level = layout.loaf.normal(middle[None] / layout.bake.sideways)[0, 2]
        assert seen == pytest.approx(opening.widest_mm[line] * level, abs=WORST_MM)
        assert seen < alone - 2


def test_a_smaller_picture_shows_the_same_loaf_smaller():
    layout = layout_of([slash(math.pi / 2)], 9.0)
    opening = predicted(layout)
    mouths = mouths_of(opening)
    full = bloom(layout, mouths).width_mm
    seen = measured(pixels(layout, mouths, width_mm=full / 2), (0, 0), (1, 0))
    assert seen * 2 == pytest.approx(opening.widest_mm[0], abs=2 * WORST_MM)
