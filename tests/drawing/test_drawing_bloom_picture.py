import pytest

from scorecraft.drawing.bloom_picture import Wanted, picture
from scorecraft.errors import UsageError


@pytest.mark.parametrize(
    ("wanted", "css", "name"),
    [
        (Wanted(), "bloom", "bloom"),
        (Wanted(before=True, view="front"), "bloom", "bloom"),
        (Wanted(proofed=True, view="side"), "view", "proofed"),
        (Wanted(tension=True), "tension", "tension"),
    ],
)
def test_what_is_wanted_is_drawn(long_layout, wanted, css, name):
    made = picture(long_layout, wanted, width_mm=80.0)
    assert made.css == css and wanted.name == name
    assert made.width_mm == pytest.approx(80.0)


@pytest.mark.parametrize("two", [("before", "tension"), ("proofed", "tension")])
def test_pictures_that_exclude_one_another_are_refused(two):
    with pytest.raises(UsageError, match="different pictures"):
        Wanted(**dict.fromkeys(two, True))


def test_tension_has_no_views():
    with pytest.raises(UsageError, match="from the top only"):
        Wanted(tension=True, view="side")
