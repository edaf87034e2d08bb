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


@pytest.mark.parametrize(
    ("mm", "severity"),
    [(19.0, None), (19.1, "warning"), (25.0, "warning"), (25.1, "stop")],
)
def test_a_tall_loaf_takes_an_inch_at_most(cut, lay, mm, severity):
    found = depth(lay(cut(*LINE, depth=mm), loaf=make_loaf("round", 260, None, 110)))
    assert [each.severity for each in found] == ([severity] if severity else [])


def test_offers_work(cut, lay):
    flat = make_loaf("round", 200, None, 39)
    (found,) = depth(lay(cut(*LINE, depth=12), cut((-40, 30), (40, 30), depth=5), loaf=flat))
    (offer,) = found.offers
    assert offer.told == "cut it no deeper than 9.5 mm" and found.cuts == (0,)
    assert [each.depth_mm for each in offer.layout().cuts] == [9.5, 5]
    assert found.figures["most_mm"] == pytest.approx(39 / 4)
    light = [cut((-40, y), (40, y), depth=d, kind="expansion") for y, d in ((0, 2.5), (30, 1.5))]
    (found,) = depth(lay(*light))
    assert found.figures == {"count": 2, "depth_mm": 1.5, "least_mm": 3}
    assert [each.depth_mm for each in found.offers[0].layout().cuts] == [3, 3]
    assert found.offers[0].told == "cut it 3 mm deep"
