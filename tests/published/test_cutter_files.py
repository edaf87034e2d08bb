"""Cutter files as other readers see them: svgelements for SVG, ezdxf for DXF."""

import io
import re

import ezdxf
import numpy as np
import pytest
import shapely
import svgelements
from ezdxf import recover

from scorecraft.designing import make
from scorecraft.drawing.plan import cut_plans
from scorecraft.drawing.svg import svg
from scorecraft.drawing.templates.cutter import cuts_cutter, plate_cutter
from scorecraft.drawing.templates.cutter_file import encoded_for_cutter
from scorecraft.drawing.templates.dxf import dxf
from scorecraft.plate.plate import make_plate

PX_PER_MM = 96 / 25.4
WORST_MM = 0.1
FINE_MM = 0.05


@pytest.fixture(scope="module")
def layout():
    return make("rose-bowl").layout


@pytest.fixture(scope="module")
def plate(layout):
    return make_plate(layout)


@pytest.fixture(scope="module")
def pictures(layout, plate):
    return {"plate": plate_cutter(plate, layout.title), "cuts": cuts_cutter(layout)}


def svg_lines(text):
    """Every path of an SVG as (group, points in mm), read by svgelements (which counts in px)."""
    document = svgelements.SVG.parse(io.StringIO(text), ppi=96)
    out = []
    for path in document.elements(lambda each: isinstance(each, svgelements.Path)):
        points = [segment.end for segment in path if segment.end is not None]
        out.append(np.array([(point.x, point.y) for point in points]) / PX_PER_MM)
    return out


def dxf_lines(data):
    """Every polyline of a DXF by layer: points as they are, y up, and whether it is closed."""
    document = ezdxf.read(io.StringIO(data.decode("ascii")))
    assert document.dxfversion == "AC1009"
    return [
        (each.dxf.layer, np.array([(v.dxf.location.x, v.dxf.location.y) for v in each.vertices]),
         each.is_closed)
        for each in document.modelspace().query("POLYLINE")
    ]  # fmt: skip


@pytest.mark.parametrize("which", ["plate", "cuts"])
def test_dxf_has_no_errors(pictures, which):
    data = dxf(pictures[which])
    document, auditor = recover.read(io.BytesIO(data))
    assert not auditor.errors and not auditor.fixes
    assert not ezdxf.read(io.StringIO(data.decode("ascii"))).audit().errors
    assert len(document.modelspace()) == sum(
        len(shape.lines) for group in pictures[which].items for shape in group.items
    )


@pytest.mark.parametrize("which", ["plate", "cuts"])
def test_the_check_line_is_100_mm_in_both(pictures, which):
    (line,) = [points for name, points, _ in dxf_lines(dxf(pictures[which])) if "CHECK" in name]
    assert np.hypot(*(line[1] - line[0])) == pytest.approx(100, abs=0.002)
    spans = [np.ptp(each, axis=0) for each in svg_lines(svg(pictures[which]))]
    assert min(abs(span - [100, 0]).max() for span in spans) < 0.002


def test_the_plate_has_its_size_and_y_points_up_in_dxf(plate, pictures):
    (edge,) = [p for name, p, closed in dxf_lines(dxf(pictures["plate"])) if name == "CUT_EDGE"]
    left, low, right, high = plate.polygon.bounds
    assert np.ptp(edge, axis=0) == pytest.approx((right - left, high - low), abs=WORST_MM)
    crown = edge.min(axis=0) - (left, low)
    moved = shapely.Polygon(edge - crown)
    assert moved.hausdorff_distance(shapely.Polygon(plate.polygon.exterior)) < FINE_MM
    svg_edge = max(svg_lines(svg(pictures["plate"])), key=lambda line: np.ptp(line[:, 0]))
    assert np.ptp(svg_edge, axis=0) == pytest.approx((right - left, high - low), abs=WORST_MM)


def test_all_slots_are_there_and_closed(plate, pictures):
    slots = [
        (p, closed) for name, p, closed in dxf_lines(dxf(pictures["plate"])) if "SLOTS" in name
    ]
    assert len(slots) == len(plate.polygon.interiors) and all(closed for _, closed in slots)
    area = sum(shapely.Polygon(points).area for points, _ in slots)
    holes = sum(shapely.Polygon(ring).area for ring in plate.polygon.interiors)
    assert area == pytest.approx(holes, rel=0.002)


def test_cut_lines_lie_on_the_plan(layout, pictures):
    drawn = dxf_lines(dxf(pictures["cuts"]))
    (rim,) = [points for name, points, _ in drawn if name == "MARK_RIM"]
    crown = (rim.min(axis=0) + rim.max(axis=0)) / 2
    assert np.hypot(*(rim - crown).T) == pytest.approx(110, abs=FINE_MM)
    lines = [points - crown for name, points, _ in drawn if name.endswith("_MM_DEEP")]
    found = shapely.union_all([shapely.LineString(points) for points in lines])
    meant = shapely.union_all([shapely.LineString(points) for points in cut_plans(layout)])
    assert found.hausdorff_distance(meant) < FINE_MM
    depths = {name for name, _, _ in drawn if name.endswith("_MM_DEEP")}
    assert len(depths) == len({cut.depth_mm for cut in layout.cuts})


@pytest.mark.parametrize("which", ["plate", "cuts"])
def test_the_svg_is_flat(pictures, which):
    text = svg(pictures[which])
    for word in ("clip", "<use", "transform", "dasharray", "<text", "style", 'fill="#'):
        assert word not in text
    widths = set(re.findall(r'stroke-width="([\d.]+)"', text))
    assert {float(width) for width in widths} == {0.1}


@pytest.mark.parametrize("which", ["plate", "cuts"])
def test_no_line_is_drawn_twice(pictures, which):
    lines = [shapely.LineString(points) for _, points, _ in dxf_lines(dxf(pictures[which]))]
    tree = shapely.STRtree(lines)
    for index, line in enumerate(lines):
        for other in tree.query(line, predicate="intersects").tolist():
            if other > index:
                shared = line.intersection(lines[other].buffer(0.005, cap_style="flat"))
                assert shared.length < 0.7


@pytest.mark.parametrize("which", ["plate", "cuts"])
def test_black_is_cut_and_grey_is_not_and_layers_tell_them_apart(pictures, which):
    document = ezdxf.read(io.StringIO(dxf(pictures[which]).decode("ascii")))
    indexes = {layer.dxf.name: layer.color for layer in document.layers if layer.dxf.name != "0"}
    names = {group.name for group in pictures[which].items}
    assert len(names) == len(indexes) - ("DEFPOINTS" in {n.upper() for n in indexes}) > 2
    for name, index in indexes.items():
        if name.startswith(("CUT", "MARK", "CHECK")):
            assert index == (7 if name.startswith("CUT") else 8), name
    text = encoded_for_cutter(pictures[which], "svg").decode()
    for group in pictures[which].items:
        (layer,) = re.findall(rf'<g [^>]*id="{group.name.replace(" ", "-")}"[^>]*>', text)
        assert f'data-layer="{group.name}"' in layer
    assert set(re.findall(r'stroke="(#\w+)"', text)) == {"#000000", "#808080"}
