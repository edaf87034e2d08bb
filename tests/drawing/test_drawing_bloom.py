import io

import numpy as np
import pytest
from PIL import Image
from support.drawing_layouts import cut, ellipses, make_layout

import scorecraft.drawing.bloom.cast as cast
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.bloom import MARGIN_MM, alone, bloom
from scorecraft.drawing.bloom.mouths import Mouths, closed
from scorecraft.drawing.bloom.relief import Bread
from scorecraft.drawing.pdf import png
from scorecraft.drawing.picture import Label, Layer, Shape, walk
from scorecraft.drawing.write import encoded
from scorecraft.errors import UsageError
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import Loaf, make_loaf
from scorecraft.loaf.outline import traced_outline

PIXELS = 260


def mouths_for(layout):
    return ellipses([0.3 + 0.25 * cut.depth_mm**1.5 for cut in layout.cuts])


def openings(picture):
    found = [each for each in walk(picture.items) if isinstance(each, Shape)]
    return [each for each in found if each.css == "opening"]


def bread(layout, **more):
    return bloom(layout, mouths_for(layout), pixels=PIXELS, **more)


def grey(picture):
    return picture.photo[..., :3].astype(float).mean(axis=2)


def loaf_of(picture, within=0.6):
    """The middle of a photograph, where there is only loaf."""
    high, wide, _ = picture.photo.shape
    rows, columns = (
        slice(int(n * (1 - within) / 2), int(n * (1 + within) / 2)) for n in (high, wide)
    )
    return picture.photo[rows, columns].astype(float)


@pytest.fixture(scope="module")
def petals(petal_layout):
    return petal_layout, bread(petal_layout)


def test_the_loaf_has_grown_sideways_by_the_bake(petals):
    layout, picture = petals
    wide = 220 * layout.bake.sideways + 2 * MARGIN_MM
    assert picture.width_mm == pytest.approx(wide, abs=picture.width_mm / PIXELS)
    assert picture.photo.shape == (PIXELS, PIXELS, 3)
    row = grey(picture)[PIXELS // 2]
    edge = np.flatnonzero(np.abs(row - row[:4].mean()) > 25)[0] * picture.width_mm / PIXELS
    assert edge == pytest.approx(MARGIN_MM, abs=2.5)


def test_every_cut_is_one_outline_with_its_number_and_words(petals):
    layout, picture = petals
    (layer,) = (each for each in picture.items if isinstance(each, Layer))
    assert layer.name == "openings"
    drawn = openings(picture)
    assert [int(each.data["cut"]) for each in drawn] == list(range(len(layout.cuts)))
    assert drawn[0].title == "petal rib: opens 4 mm"


def test_outlines_lie_on_the_mouths_of_the_photograph():
    layout = make_layout([cut([[-40, 20], [40, 20]])])
    picture = bloom(layout, ellipses([14.0]), pixels=600)
    (line,) = openings(picture)[0].lines
    low, high = line.min(axis=0), line.max(axis=0)
    step = picture.width_mm / picture.photo.shape[1]
    column = grey(picture)[:, round((low + high)[0] / 2 / step)]
    for edge in (low[1], high[1]):
        near = np.arange(round(edge / step) - 5, round(edge / step) + 6)
        assert abs(near[column[near].argmin()] * step - edge) < 1.0


def test_the_same_loaf_is_the_same_to_the_last_byte(petals):
    layout, picture = petals
    assert np.array_equal(bread(layout).photo, picture.photo)


@pytest.mark.parametrize("view", ["top", "30"])
def test_strips_leave_no_seams(petal_layout, view, monkeypatch):
    whole = bread(petal_layout, view=view).photo.astype(int)
    monkeypatch.setattr(cast, "STRIP_PIXELS", 20_000)
    strips = bread(petal_layout, view=view).photo.astype(int)
    off = np.abs(whole - strips).max(axis=2)
    assert np.percentile(off, 99) < 12 and off.mean() < 2


def test_it_has_the_colours_of_bread(petals):
    """White flour on top, brown and darker toward the rim, pale crumb in the cuts."""
    _, picture = petals
    middle, mm = PIXELS // 2, PIXELS / picture.width_mm

    def ring(radius):
        angle = np.linspace(0, 2 * np.pi, 720)
        rows = (middle - radius * mm * np.sin(angle)).astype(int)
        columns = (middle + radius * mm * np.cos(angle)).astype(int)
        return np.median(picture.photo[rows, columns], axis=0)

    crown, side, rim = ring(18), ring(100), ring(115)
    assert crown.min() > 180
    assert crown.sum() > side.sum() > rim.sum()
    assert side[0] > side[1] + 15 > side[2] + 30


def test_crusts_and_flours_are_as_a_baker_says_them(long_layout):
    light, golden, dark = (
        loaf_of(bread(long_layout, crust=each, flour="none")).mean()
        for each in ("light", "golden", "dark")
    )
    assert light > golden + 8 > dark + 16
    none, some, heavy = (
        loaf_of(bread(long_layout, flour=each)).mean() for each in ("none", "light", "heavy")
    )
    assert heavy > some + 10 > none + 20


def test_a_proofed_loaf_is_pale_and_its_cuts_are_closed(petal_layout):
    picture = bloom(petal_layout, closed(petal_layout), proofed=True, pixels=PIXELS)
    assert np.percentile(loaf_of(picture, 0.7), 2) > 90 and loaf_of(picture).mean() > 190
    assert picture.title.endswith("scored") and "opens" not in openings(picture)[0].title
    assert np.ptp(openings(picture)[0].lines[0][:, 0]) < 1.5


def test_on_its_way_through_the_oven_a_loaf_grows_and_browns(petal_layout):
    mouths = mouths_for(petal_layout)
    shares = (0.0, 0.5, 1.0)
    made = [alone(Bread(petal_layout, mouths, share=share), PIXELS) for share in shares]
    widths = [each.width_mm for each in made]
    assert widths == sorted(widths) and widths[0] + 8 < widths[2]
    blue = [loaf_of(each, 0.7)[..., 2].mean() for each in made]
    assert blue[0] > blue[1] > blue[2]


def test_without_the_table_only_loaf_and_shadow_are_left(petal_layout):
    photo = alone(Bread(petal_layout, mouths_for(petal_layout)), PIXELS).photo
    assert photo.shape[2] == 4 and photo[PIXELS // 2, PIXELS // 2, 3] == 255
    upper_left, lower_right = photo[3, 3, 3], photo[PIXELS // 6 * 5, PIXELS // 6 * 5, 3]
    assert upper_left < 30 < lower_right


def test_before_stands_beside_after_at_the_same_scale(long_layout):
    picture = bread(long_layout, before=True)
    words = [each.text for each in walk(picture.items) if isinstance(each, Label)]
    assert words == ["scored, 130 × 320 mm", "baked (model estimate), 141 × 348 mm"]
    assert [each.name for each in picture.items if isinstance(each, Layer)] == ["cuts", "openings"]
    half = picture.photo.shape[1] // 2
    assert grey(picture)[80:180, 20:half].mean() > grey(picture)[80:180, half:-20].mean() + 15


def test_a_picture_of_a_width_is_the_same_one_smaller(petals):
    layout, full = petals
    small = bread(layout, width_mm=90.0)
    assert small.width_mm == pytest.approx(90.0)
    one, other = (openings(each)[-1].lines[0] for each in (full, small))
    assert other == pytest.approx(one * 90 / full.width_mm, abs=0.01)
    assert np.array_equal(full.photo, small.photo)


def test_a_view_from_the_front_is_less_high_and_hides_the_far_side(petal_layout):
    front = bread(petal_layout, view="front")
    assert front.height_mm < 0.75 * front.width_mm
    shown = {int(each.data["cut"]) for each in openings(front) if each.lines}
    y = [each.line[:, 1] for each in petal_layout.cuts]
    assert {cut for cut, at in enumerate(y) if at.max() < 0} <= shown
    far = {cut for cut, at in enumerate(y) if at.min() > 40}
    assert far and not far & shown


def test_a_loaf_without_cuts_is_bread_all_the_same():
    layout = make_layout([], make_loaf("oval", 120.0, 190.0, 70.0))
    picture = bread(layout)
    assert not openings(picture) and picture.desc.startswith("The baked loaf, a model estimate. 0")
    assert loaf_of(picture)[..., 0].mean() > loaf_of(picture)[..., 2].mean() + 25


def test_a_ring_opens_as_a_ring():
    angle = np.linspace(0, 2 * np.pi, 80)
    layout = make_layout([cut(40 * np.column_stack([np.cos(angle), np.sin(angle)]))])
    even = Mouths((np.array([0.0, 1.0]),), (np.array([6.0, 6.0]),))
    picture = bloom(layout, even, pixels=PIXELS, flour="heavy")
    middle, step = PIXELS // 2, picture.width_mm / PIXELS
    away = round(40 * layout.bake.sideways / step)
    rows = picture.photo[[middle - away, middle + away, middle], middle].astype(float)
    assert (rows[:2, 0] - rows[:2, 2]).min() > rows[2, 0] - rows[2, 2] + 20


@pytest.mark.parametrize("view", ["above", "-5", "91", "", "nan"])
def test_an_unknown_view_is_refused(petal_layout, view):
    with pytest.raises(UsageError, match="cannot be viewed"):
        bread(petal_layout, view=view)


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
    high, wide, _ = picture.photo.shape
    assert len(openings(picture)[0].lines) >= 1
    brown = picture.photo[..., 0].astype(int) - picture.photo[..., 2] > 40
    assert brown[:, wide // 2].any() and not brown[: high // 30].any()


def test_a_bake_that_does_not_spread_leaves_the_outline(petal_layout):
    still = Layout("Still", (), petal_layout.loaf, Bake(spring=1.4, spread=0.0), petal_layout.cuts)
    assert bread(still).width_mm == pytest.approx(220 + 2 * MARGIN_MM, abs=1)


@pytest.mark.parametrize("form", ["png", "jpg", "webp"])
def test_files_of_pixels_hold_the_photograph_in_its_own_size(petals, form):
    _, picture = petals
    image = Image.open(io.BytesIO(encoded([picture], form)))
    assert image.size == (PIXELS, PIXELS)
    off = np.abs(np.asarray(image.convert("RGB"), float) - picture.photo)
    assert off.mean() < (2 if form == "png" else 8)


def test_a_png_carries_the_drawing_too(long_layout, both_ways):
    """The captions of two loaves stand below them."""
    picture = bread(long_layout, before=True)
    image = np.asarray(Image.open(io.BytesIO(png(picture))).convert("L")).astype(int)
    assert image.shape == picture.photo.shape[:2]
    foot = slice(int(0.93 * len(image)), None)
    assert (grey(picture)[foot] - image[foot]).max() > 60
