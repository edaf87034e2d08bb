import io

import numpy as np
import pytest
from PIL import Image

from scorecraft.drawing.loafview import CUT_COLOR, loaf_layer, loaf_picture
from scorecraft.drawing.pdf import png
from scorecraft.drawing.picture import Layer, Shape, walk
from scorecraft.drawing.plan import cut_plans


def shapes(picture):
    return [item for item in walk(picture.items) if isinstance(item, Shape)]


@pytest.mark.parametrize("which", ["petal_layout", "long_layout"])
def test_the_loaf_fills_the_picture_and_keeps_its_proportions(request, which):
    layout = request.getfixturevalue(which)
    picture = loaf_picture(layout, width_mm=60)
    dough = next(each for each in shapes(picture) if each.css == "dough")
    low, high = dough.lines[0].min(axis=0), dough.lines[0].max(axis=0)
    wide, tall = high - low
    assert tall / wide == pytest.approx(layout.loaf.length_mm / layout.loaf.width_mm, rel=1e-3)
    assert low == pytest.approx((2.4, 2.4), abs=0.01)
    assert picture.width_mm - high[0] == pytest.approx(2.4, abs=0.01)
    assert picture.height_mm - high[1] == pytest.approx(2.4, abs=0.01)


def test_all_cuts_are_dark_and_deeper_ones_bolder_and_on_top(petal_layout):
    cuts = [each for each in shapes(loaf_picture(petal_layout, width_mm=100)) if each.data]
    depths = [petal_layout.cuts[int(each.data["cut"])].depth_mm for each in cuts]
    assert len(cuts) == len(petal_layout.cuts)
    assert depths == sorted(depths)
    widths = [each.ink.width for each in cuts]
    assert widths == sorted(widths) and widths[0] < widths[-1]
    assert {each.ink.color for each in cuts} == {CUT_COLOR}


def test_known_plans_draw_the_same(petal_layout):
    plans = cut_plans(petal_layout)
    one = loaf_layer(petal_layout, (50, 50), 0.4)
    other = loaf_layer(petal_layout, (50, 50), 0.4, plans=plans)
    pairs = zip(walk(one.items), walk(other.items), strict=True)
    assert all(np.array_equal(a.lines[0], b.lines[0]) for a, b in pairs if not isinstance(a, Layer))


def test_shading_is_warm_and_darker_at_the_rim(petal_layout):
    image = Image.open(io.BytesIO(png(loaf_picture(petal_layout, width_mm=100), dpi=100)))
    pixels = np.asarray(image.convert("RGB")).astype(int)
    middle = len(pixels) // 2
    crown, rim = pixels[middle - 60, middle + 25], pixels[middle + 175, middle + 12]
    assert crown.sum() > rim.sum() + 60
    assert rim[0] > rim[1] > rim[2]
