"""What is said of room, where it is tightest, and of cuts that are modelled coarsely."""

import math
from types import SimpleNamespace

import numpy as np
import pytest

from scorecraft.checks import easier, room_cures
from scorecraft.checks import room as check
from scorecraft.checks.cure import Change, Cure
from scorecraft.loaf.dome import make_loaf
from scorecraft.loaf.skin import Skin
from scorecraft.opening.room import Room

RING = make_loaf("ring", 280, None, 45, (2.0, 2.0), hole_mm=100)
TIGHT = Room(0.1, 0.05, 0.0, 0.2, "tight")


@pytest.fixture
def said(monkeypatch):
    """Say a room of a layout that is tightest at a place, or nowhere."""

    def tell(layout, found, place):
        highest = None if place is None else (1.0, place)
        monkeypatch.setattr(check, "tightest", lambda *_: highest)
        return check.told(found, layout, None)

    return tell


def test_the_tightest_place_and_the_way_with_least_room_are_told(lay, said):
    assert said(lay(), TIGHT, (0.0, -130.0)) == (
        "barely enough room to spring; tightest at 6 o'clock, just above the base: "
        "the cuts absorb 10% of the oven spring, least from 3 to 9 o'clock"
    )
    even = Room(0.04, 0.04, 1.0, 0.04, "will burst")
    assert said(lay(), even, None) == ("likely to burst: the cuts absorb 4% of the oven spring")
    assert "tightest at 12 o'clock, on the crest:" in said(lay(loaf=RING), TIGHT, (0.0, 121.0))


def test_a_finding_has_its_cures_in_words_figures_cuts_and_lines(cut, lay, monkeypatch):
    line = ((0.0, 0.0), (9.0, 0.0))
    cures = (
        Cure("cut deeper", (Change("deeper", (2, 0), mm=9.0),)),
        Cure("add one", (Change("remove", (1,)), Change("add", lines=(line,), mm=8.0))),
    )
    monkeypatch.setattr(check, "tightest", lambda *_: None)
    monkeypatch.setattr(room_cures, "room_cures", lambda *_: cures)
    monkeypatch.setattr(easier, "easier", lambda *_: ["bake with steam"])
    layout = lay(*(cut((0, y), (9, y), family=y + 1) for y in range(3)))
    (found,) = check.room(layout, TIGHT, None, Skin())
    assert found.severity == "note" and found.place.line == 3
    assert found.hint == "bake with steam; or cut deeper, or add one"
    assert found.figures == {
        "taken": 0.1, "least": 0.05, "least_direction_deg": pytest.approx(90)
    }  # fmt: skip
    assert found.cuts == (0, 2) and found.cures == cures
    assert [np.asarray(each).tolist() for each in found.shapes] == [[[0, 0], [9, 0]]]
    burst = Room(0.01, 0.0, math.pi / 2, 0.02, "will burst")
    monkeypatch.setattr(room_cures, "room_cures", lambda *_: ())
    monkeypatch.setattr(easier, "easier", lambda *_: [])
    (found,) = check.room(lay(), burst, None, Skin())
    assert found.severity == "warning" and found.place is None and found.cuts == ()
    assert found.hint.startswith("no single cut fixes this")
    assert check.room(lay(), Room(0.3, 0.2, 0.0, 0.4, "enough"), None, Skin()) == []


def test_only_coarse_panels_are_told():
    ends = np.zeros((1234, 2))
    panels = SimpleNamespace(passed=True, ends=ends)
    (found,) = check.coarse(SimpleNamespace(panels=panels))
    assert "with 1,234 cuts" in found.message and found.severity == "note"
    assert check.coarse(SimpleNamespace(panels=SimpleNamespace(passed=False, ends=ends))) == []
