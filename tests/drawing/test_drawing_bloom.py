import io
import re

import numpy as np
import pytest
from PIL import Image
from support.drawing_layouts import cut, ellipses, make_layout

from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.bloom import MARGIN_MM, bloom
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.drawing.pdf import png
from scorecraft.drawing.picture import Label, Layer, Shape, walk
from scorecraft.drawing.svg import svg
from scorecraft.errors import UsageError
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import traced_outline

MISREAD_BY_CAIRO = r"<(filter|mask|use|style|image|foreignObject)|clip-rule|clip-path|style=|hsl\("


def mouths_for(layout):
    return ellipses([0.3 + 0.25 * cut.depth_mm**1.5 for cut in layout.cuts])


def shapes(picture, css):
    found = [each for each in walk(picture.items) if isinstance(each, Shape)]
    return [each for each in found if each.css == css]


def bounds(lines):
    points = np.concatenate(lines)
    return points.min(axis=0), points.max(axis=0)


@pytest.fixture(scope="module")
def petals(petal_layout):
    return petal_layout, bloom(petal_layout, mouths_for(petal_layout))


def test_the_loaf_has_grown_sideways_by_the_bake(petals):
    layout, picture = petals
    low, high = bounds(shapes(picture, "crust")[0].lines)
    assert high - low == pytest.approx(220 * layout.bake.sideways, abs=0.1)
    assert low == pytest.approx((MARGIN_MM, MARGIN_MM), abs=0.1)


def test_a_bake_that_does_not_spread_leaves_the_outline(petal_layout):
    still = Layout("Still", (), petal_layout.loaf, Bake(spring=1.4, spread=0.0), petal_layout.cuts)
    low, high = bounds(shapes(bloom(still, mouths_for(still)), "crust")[0].lines)
    assert high - low == pytest.approx((220.0, 220.0), abs=0.1)


def test_every_cut_is_one_opening_with_its_number_and_words_the_widest_on_top(petals):
    layout, picture = petals
    openings = shapes(picture, "opening")
    assert sorted(int(each.data["cut"]) for each in openings) == list(range(len(layout.cuts)))
    depths = [layout.cuts[int(each.data["cut"])].depth_mm for each in openings]
    assert depths == sorted(depths)
    assert openings[-1].title == "petal rib: opens 4 mm"


def test_the_layers_lie_in_the_order_in_which_a_loaf_is_made(petals):
    _, picture = petals
    (group,) = (each for each in picture.items if isinstance(each, Layer))
    names = [each.name for each in group.items]
    assert names == [
        "shadow", "crust", "flour", "blisters", "toast", "edges", "openings", "texture",
        "depth", "ears",
    ]  # fmt: skip


def test_the_same_design_gives_the_same_picture(petal_layout):
    once, again = (svg(bloom(petal_layout, mouths_for(petal_layout))) for _ in (0, 1))
    assert once == again


def test_nothing_is_used_that_a_renderer_misreads(petals):
    assert not re.search(MISREAD_BY_CAIRO, svg(petals[1]))


def test_it_has_the_colours_of_bread(petals):
    """White flour on top, cream and brown in the cuts, brown and darker towards the rim."""
    _, picture = petals
    pixels = np.asarray(Image.open(io.BytesIO(png(picture, dpi=100))).convert("RGB")).astype(int)
    mm = 100 / 25.4
    middle = np.array(pixels.shape[:2]) // 2

    def ring(radius):
        angle = np.linspace(0, 2 * np.pi, 720)
        rows = (middle[0] - radius * mm * np.sin(angle)).astype(int)
        columns = (middle[1] + radius * mm * np.cos(angle)).astype(int)
        return np.median(pixels[rows, columns], axis=0)

    crown, side, rim = ring(18), ring(96), ring(115)
    assert crown.min() > 200
    assert crown.sum() > side.sum() > rim.sum() + 80
    assert side[0] > side[1] > side[2] and rim[0] > rim[1] > rim[2]
    x, y = middle[1], middle[0] - int(52 * mm)
    rib = pixels[y - 20 : y + 20, x]
    assert (rib[:, 0] > rib[:, 2] + 30).mean() > 0.9


def test_before_stands_beside_after_at_the_same_scale(long_layout):
    picture = bloom(long_layout, mouths_for(long_layout), before=True)
    wide = [np.ptp(each.lines[0], axis=0) for each in shapes(picture, "crust")]
    grown = long_layout.bake.sideways
    assert any(each == pytest.approx((130, 320), abs=0.1) for each in wide)
    assert any(each == pytest.approx((130 * grown, 320 * grown), abs=0.1) for each in wide)
    words = [each.text for each in walk(picture.items) if isinstance(each, Label)]
    assert words == ["scored, 130 × 320 mm", "baked (model estimate), 141 × 348 mm"]
    scored = [int(each.data["cut"]) for each in shapes(picture, "cut deep expansion")]
    assert scored == [0]


def test_a_picture_of_a_width_is_the_same_one_smaller(petal_layout):
    mouths = mouths_for(petal_layout)
    full, small = bloom(petal_layout, mouths), bloom(petal_layout, mouths, width_mm=90.0)
    assert small.width_mm == 90.0
    scale = 90 / full.width_mm
    assert small.height_mm == pytest.approx(full.height_mm * scale)
    one, other = (bounds(shapes(each, "opening")[-1].lines) for each in (full, small))
    assert np.array(other) == pytest.approx(np.array(one) * scale, abs=0.05)


def test_a_view_from_the_front_is_less_high_and_hides_the_far_side(petal_layout):
    mouths = mouths_for(petal_layout)
    top, front = bloom(petal_layout, mouths), bloom(petal_layout, mouths, view="front")
    assert front.width_mm == pytest.approx(top.width_mm, abs=0.1)
    assert front.height_mm < 0.75 * top.height_mm
    shown = {int(each.data["cut"]) for each in shapes(front, "opening")}
    y = [each.line[:, 1] for each in petal_layout.cuts]
    assert {cut for cut, at in enumerate(y) if at.max() < 0} <= shown
    far = {cut for cut, at in enumerate(y) if at.min() > 40}
    assert far and not far & shown


def test_a_loaf_without_cuts_is_bread_all_the_same():
    layout = make_layout([], make_loaf("oval", 120.0, 190.0, 70.0))
    picture = bloom(layout, ellipses([]))
    assert shapes(picture, "crust") and not shapes(picture, "opening")
    assert picture.desc.startswith("The baked loaf, a model estimate. 0 cuts")


def test_cuts_that_do_not_open_are_still_seen():
    layout = make_layout([cut([[-20, 0], [20, 0]])])
    (opening,) = shapes(bloom(layout, ellipses([0.0])), "opening")
    assert 0.2 < np.ptp(opening.lines[0][:, 1]) < 1.0


def test_a_ring_opens_as_a_ring():
    angle = np.linspace(0, 2 * np.pi, 80)
    layout = make_layout([cut(40 * np.column_stack([np.cos(angle), np.sin(angle)]))])
    even = Mouths((np.array([0.0, 1.0]),), (np.array([3.0, 3.0]),))
    (opening,) = shapes(bloom(layout, even), "opening")
    assert len(opening.lines) == 2


@pytest.mark.parametrize("view", ["above", "-5", "91", "", "nan"])
def test_an_unknown_view_is_refused(petal_layout, view):
    with pytest.raises(UsageError, match="cannot be viewed"):
        bloom(petal_layout, mouths_for(petal_layout), view=view)


def test_openings_must_belong_to_the_cuts(petal_layout):
    with pytest.raises(ValueError, match="43 cuts need as many openings, not 2"):
        bloom(petal_layout, ellipses([1.0, 2.0]))


@pytest.mark.parametrize("view", ["top", "front", 0])
def test_a_traced_loaf_with_lobes_is_drawn_from_everywhere(view):
    theta = np.linspace(0, 2 * np.pi, 361)[:-1]
    radius = 80 * (0.5 + 0.5 * np.sin(1.5 * theta) ** 2)
    rim = radius[:, None] * np.column_stack([np.cos(theta), np.sin(theta)])
    loaf = Loaf(traced_outline(rim), 50.0, (2.0, 2.0))
    picture = bloom(make_layout([cut([[-5, -40], [0, 40]])], loaf), ellipses([8.0]), view=view)
    rim = shapes(picture, "crust")[0]
    assert np.ptp(rim.lines[0][:, 0]) == pytest.approx(picture.width_mm - 2 * MARGIN_MM, abs=0.2)
    assert len(shapes(picture, "opening")) == 1
