"""Prints are true to scale, with and without Cairo: read back by a reader not ours (PDFium).

Paper: ISO 216 (A0 is 841 x 1189 mm, each next size is half of it, cut down to whole mm) and
ANSI/ASME Y14.1 (A 8.5 x 11 in, B 11 x 17 in). PDF unit: 1/72 in, ISO 32000-1 clause 8.3.2.3.
Plan of a hemisphere from its sheet: azimuthal equidistant to orthographic, r = R sin(s / R),
Snyder, Map Projections: A Working Manual, USGS Professional Paper 1395 (1987), chs. 20 and 25.
"""

import math

import numpy as np
import pypdfium2
import pytest
import shapely
from support.guides import guide_of
from support.printed_paths import MM, read_paths

from scorecraft.cuts import Cut, Layout
from scorecraft.drawing.paper.sheet import PAPERS
from scorecraft.drawing.pdf import pdf
from scorecraft.errors import Place
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf

WORST_MM = 0.1

pytestmark = pytest.mark.usefixtures("both_ways")


def halved(times):
    wide, high = 841, 1189
    for _ in range(times):
        wide, high = high // 2, wide
    return wide, high


@pytest.mark.parametrize(
    ("name", "size"),
    [
        ("A4", halved(4)),
        ("A3", halved(3)),
        ("Letter", (8.5 * 25.4, 11 * 25.4)),
        ("Tabloid", (11 * 25.4, 17 * 25.4)),
    ],
)
def test_paper_sizes(name, size):
    (paper,) = (each for each in PAPERS if each.name == name)
    assert (paper.width_mm, paper.height_mm) == pytest.approx(size)


def fan(radius):
    """Straight sheet cuts in all directions and places of the loaf."""
    cuts = []
    for k, turn in enumerate(np.linspace(0, 2 * math.pi, 24, endpoint=False)):
        out = np.array([math.cos(turn), math.sin(turn)])
        side = np.array([-out[1], out[0]])
        middle = out * radius * (0.35 + 0.5 * (k % 3))
        cuts.append(np.array([middle - 18 * side, middle + 18 * side + 6 * out]))
    return cuts


def hemisphere_layout(radius):
    loaf = make_loaf("round", 2 * radius, None, radius, profile=(2.0, 2.0))
    place = Place("made.score", 1, 1)
    cuts = tuple(
        Cut(line, "slash", "slash", k, 0, (8.0, 4.0, 2.0)[k % 3], math.pi / 2, "expansion", place)
        for k, line in enumerate(fan(radius))
    )
    return Layout("Fan", (), loaf, Bake(), cuts)


def printed(radius, **more):
    layout = hemisphere_layout(radius)
    (picture,) = guide_of(layout, **more)
    document = pypdfium2.PdfDocument(pdf([picture], "fan"))
    page = document[0]
    return layout, picture, page, list(read_paths(page))


@pytest.mark.parametrize(("radius", "paper"), [(85.0, "A4"), (110.0, "Tabloid")])
def test_page_rules_and_cuts_are_printed_where_they_belong(radius, paper):
    layout, picture, page, paths = printed(radius, paper=paper)
    size = page.get_width() * MM, page.get_height() * MM
    assert size == pytest.approx((picture.width_mm, picture.height_mm), abs=0.001)

    single = [path[0] for path in paths if len(path) == 1]
    straight = [float(np.hypot(*(line[1] - line[0]))) for line in single if len(line) == 2]
    assert min(abs(span - 100.0) for span in straight) <= WORST_MM / 2
    assert min(abs(span - 4 * 25.4) for span in straight) <= WORST_MM / 2

    crosses = [path for path in paths if [len(each) for each in path] == [2, 2]]
    (crown,) = (path for path in crosses if np.ptp(path[0][:, 0]) == pytest.approx(7, abs=0.01))
    centre = np.vstack(crown).mean(axis=0)
    drawn = [shapely.LineString(line) for line in single if len(line) > 1]
    for cut in layout.cuts:
        fine = np.linspace(cut.line[0], cut.line[1], 400)
        s = np.hypot(*fine.T)[:, None]
        plan = fine / s * radius * np.sin(s / radius)
        expected = shapely.LineString(centre + plan * [1, -1])
        assert min(shapely.hausdorff_distance(expected, each) for each in drawn) <= WORST_MM


def test_the_rim_is_printed_at_its_size():
    _, _, _, paths = printed(85.0, paper="A4")
    spans = [np.ptp(path[0], axis=0) for path in paths if len(path) == 1 and len(path[0]) > 100]
    assert min(np.abs(span - 170.0).max() for span in spans) <= WORST_MM


def test_register_crosses_of_neighbouring_sheets_meet():
    """Laid so that the drawing agrees, every cross lies within 0.2 mm of one of another sheet."""
    layout = hemisphere_layout(150.0)
    document = pypdfium2.PdfDocument(pdf(guide_of(layout, tiled=True, paper="A4"), "fan"))
    assert len(document) == 4
    sheets = []
    for index in range(1, len(document)):
        paths = list(read_paths(document[index]))
        rim = next(path[0] for path in paths if len(path) == 1 and len(path[0]) > 300)
        middle = (rim.min(axis=0) + rim.max(axis=0)) / 2
        shapes = [path for path in paths if [len(each) for each in path[:2]] == [2, 2]]
        sheets.append([path[0].mean(axis=0) - middle for path in shapes if len(path) == 3])
    for own, crosses in enumerate(sheets):
        others = [at for index, each in enumerate(sheets) if index != own for at in each]
        assert len(crosses) >= 2
        for cross in crosses:
            assert min(np.hypot(*(cross - other)) for other in others) <= 0.2
