"""The stencil as a print: layers, plates of a size, parts, and what the pattern says of it."""

import pytest

from scorecraft import design
from scorecraft.errors import UsageError

TEXT = """title "Hearts"
loaf round width 160mm height 70mm
stencil slot 3mm fill "heart" layers "flour=heart; cocoa=slash" plate "300x300mm"
heart 40mm length 36mm
mirror:
    at x 44mm:
        slash 60mm depth 8mm
"""


@pytest.fixture(scope="module")
def made():
    return design(TEXT)


def titles(printed):
    return [page.title for page in printed.pages]


def test_each_layer_is_a_plate_of_its_own(made):
    printed = made.printed("stencil", "pdf")
    assert titles(printed) == ["Hearts: stencil, flour", "Hearts: stencil, cocoa"]
    assert "Slots are" not in printed.pages[0].desc
    assert "Slots are 4.2 mm wide" in printed.pages[1].desc  # 3 mm, as the pattern says, and deep
    one = made.printed("stencil", "svg", layer="cocoa", slot_mm=2.0)
    assert titles(one) == ["Hearts: stencil, cocoa"] and "2.8 mm" in one.pages[0].desc
    assert titles(made.printed("stencil", "svg", only="slash")) == ["Hearts: stencil"]


def test_a_file_of_one_plate_asks_which(made):
    for options in ({"cutter": True}, {}):
        with pytest.raises(UsageError, match="holds one plate") as caught:
            made.printed("stencil", "svg", **options)
        assert "--layer flour or --layer cocoa" in caught.value.hint
    with pytest.raises(UsageError, match="no layer"):
        made.printed("stencil", "svg", layer="sugar")


def test_a_plate_too_small_is_refused_or_split(made):
    with pytest.raises(UsageError, match="does not hold it"):
        made.printed("stencil", "pdf", plate="150x200mm")
    printed = made.printed("stencil", "pdf", layer="flour", plate="150x200mm", split=True)
    assert titles(printed) == [f"Hearts: stencil, flour, part {n} of 2" for n in "12"]
    assert all("lay the parts edge to edge" in page.desc for page in printed.pages)
    flat = made.printed(
        "stencil", "dxf", layer="flour", plate="150x200mm", split=True, part="2"
    ).flat
    assert flat is not None and flat.width_mm < 210


def test_a_turned_plate_is_told_and_turned_for_the_cutter():
    long = design("loaf long width 90mm length 290mm height 60mm\nslash 180mm depth 8mm\n")
    printed = long.printed("stencil", "svg", cutter=True, plate="360x180mm")
    assert printed.remark == "it fits the plate turned by 90° counter-clockwise"
    assert printed.flat is not None and printed.flat.width_mm > printed.flat.height_mm
