import numpy as np
import pytest
import shapely
from shapely.ops import substring

from scorecraft.errors import PatternError, UsageError
from scorecraft.expand import expand
from scorecraft.language.parse import parse
from scorecraft.loaf.dome import make_loaf
from scorecraft.motifs.rim import rim

RING = make_loaf("ring", 280, None, 52, hole_mm=80)


def laid(body, loaf="oval width 180mm length 260mm height 80mm"):
    text = f"loaf {loaf}\n{body}\n"
    return expand(parse(text, "pattern"), text)


def test_it_goes_once_around_clockwise_from_noon():
    (stroke,) = rim(loaf=make_loaf("heart", 220, 210, 70), inset=20.0, of="outer")
    line = stroke.line
    assert line[0] == pytest.approx(line[-1]) and line[0, 0] == pytest.approx(0) and line[0, 1] > 0
    assert line[len(line) // 4, 0] > 0
    assert not shapely.LinearRing(line).is_ccw


def test_it_keeps_its_distance_from_rim_and_hole():
    for of, edge in (("outer", RING.sheet_rim(720)), ("hole", RING.sheet_hole(720))):
        (stroke,) = rim(loaf=RING, inset=15.0, of=of)
        away = shapely.distance(shapely.LinearRing(edge), shapely.points(stroke.line))
        assert away == pytest.approx(np.full(len(away), 15.0), abs=0.02)


def test_what_has_no_way_around_is_refused():
    with pytest.raises(UsageError, match="no way around"):
        rim(loaf=RING, inset=400.0, of="outer")
    with pytest.raises(PatternError, match="this loaf has no hole"):
        laid("rim of hole")


def test_it_is_the_loafs_rim_in_any_frame():
    plain, moved = laid("rim 20mm"), laid("at x 30mm turn 40deg scale 0.5:\n    rim 20mm")
    assert moved.cuts[0].line == pytest.approx(plain.cuts[0].line)


def test_steps_along_it_are_equal_on_the_dough():
    layout = laid("along rim inset 25mm count 24 facing in:\n    slash 4mm")
    middles = np.array([cut.line.mean(axis=0) for cut in layout.cuts])
    (way,) = (cut.line for cut in laid("rim 25mm").cuts)
    path = shapely.LineString(way)
    at = np.sort([path.project(shapely.Point(each)) for each in middles])
    pieces = [
        shapely.get_coordinates(substring(path, a, b))
        for a, b in zip(at, [*at[1:], path.length], strict=True)
    ]
    steps = layout.loaf.lengths_on_dough(pieces)
    assert len(steps) == 24 and np.ptp(steps) < 0.1


def test_copies_face_out_in_and_by_turns():
    out, inward, turns = (
        [
            cut.line
            for cut in laid(
                f"along rim 40mm count 4 facing {way}:\n    path (0mm, 0mm) (0mm, 9mm)"
            ).cuts
        ]
        for way in ("out", "in", "alternate")
    )

    def rises(lines):
        return [float(np.hypot(*line[-1]) - np.hypot(*line[0])) for line in lines]

    assert rises(out) == pytest.approx([9] * 4, abs=0.1)
    assert rises(inward) == pytest.approx([-9] * 4, abs=0.1)
    assert rises(turns) == pytest.approx([9, -9, 9, -9], abs=0.1)


def test_a_path_needs_a_step():
    with pytest.raises(PatternError, match="without saying how often"):
        laid("along rim 30mm:\n    slash 9mm")
    even = laid("along ring 50mm every 21mm:\n    slash 9mm").cuts
    assert len(even) == 15  # 314 mm shared out
    assert len(laid("along slash 90mm count 4:\n    slash 9mm").cuts) == 4
