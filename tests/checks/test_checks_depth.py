import pytest

from scorecraft.checks.depth import depth
from scorecraft.loaf.dome import make_loaf

LINE = ((-40, 0), (40, 0))


@pytest.mark.parametrize(
    ("mm", "kind", "severity"),
    [
        (30, "expansion", "stop"),
        (22, "expansion", "warning"),
        (13, "expansion", None),
        (2.5, "expansion", "warning"),
        (2.5, "decorative", None),
        (0.5, "decorative", "warning"),
    ],
)
def test_depth_on_a_usual_loaf(cut, lay, mm, kind, severity):
    found = depth(lay(cut(*LINE, depth=mm, kind=kind)))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_a_flat_loaf_takes_less(cut, lay):
    flat = make_loaf("round", 200, None, 40)
    (found,) = depth(lay(cut(*LINE, depth=12), loaf=flat))
    assert found.severity == "warning"
    assert "30% of the loaf's height" in found.message
    assert found.offers[0].told == "cut it no deeper than 10 mm"
    (found,) = depth(lay(cut(*LINE, depth=17), loaf=flat))
    assert found.severity == "stop"


@pytest.mark.parametrize(("mm", "kind"), [(30, "expansion"), (2, "expansion"), (0.4, "decorative")])
def test_cures_work(cut, lay, mm, kind):
    (found,) = depth(lay(cut(*LINE, depth=mm, kind=kind)))
    told = found.figures.get("most_mm", found.figures.get("least_mm"))
    assert depth(lay(cut(*LINE, depth=told, kind=kind))) == []


def test_copies_are_told_once(cut, lay):
    cuts = [cut((-40, y), (40, y), depth=d) for y, d in ((0, 20), (20, 24), (40, 8))]
    (found,) = depth(lay(*cuts))
    assert found.figures["count"] == 2
    assert found.figures["depth_mm"] == 24
    assert depth(lay()) == []
