"""Steam or a longer proof is told where the model, here a plain number, has room enough by it."""

from dataclasses import replace
from types import SimpleNamespace

import pytest

from scorecraft.checks import easier as check
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dough import Dough
from scorecraft.loaf.skin import Skin

STEAM, PROOF = "bake with steam, or in a covered pot", "proof it longer"


@pytest.fixture
def tried(monkeypatch):
    """List what is told of a dough and a bake, and the bakes that were tried for it."""
    bakes = []

    def predicted(layout, skin, panel_mm):
        bakes.append((layout.bake, panel_mm))
        return layout.bake

    def judged(bake, strength):
        assert strength == bake.strength
        return SimpleNamespace(verdict="enough" if bake.spring < 1.6 else "tight")

    monkeypatch.setattr(check, "predict", predicted)
    monkeypatch.setattr(check, "room", judged)

    def tell(layout, dough, bake):
        bakes.clear()
        told = check.easier(replace(layout, dough=dough, bake=bake), Skin())
        return told, [each for each, _ in bakes], [panel for _, panel in bakes]

    return tell


def test_a_bake_with_steam_springs_as_its_dough_does_with_steam(cut, lay, tried):
    dry = Bake(spring=Dough().spring(steam=False), steam=False)
    told, bakes, panels = tried(lay(cut((-50, 0), (50, 0), depth=8)), Dough(), dry)
    assert told == [STEAM] and bakes == [Bake(spring=Dough().spring())] and panels[0] > 0
    told, bakes, panels = tried(lay(), Dough(), dry)
    assert told == [STEAM] and panels == [None]


def test_a_spring_given_by_hand_stays(lay, tried):
    told, bakes, _ = tried(lay(), Dough("under"), Bake(spring=1.5, steam=False))
    assert told == [STEAM] and bakes == [Bake(spring=1.5)]


def test_underproofed_dough_is_tried_ready_and_what_does_not_help_is_not_told(lay, tried):
    under = Dough("under")
    told, bakes, _ = tried(lay(), under, Bake(spring=under.spring()))
    assert told == [PROOF] and bakes == [Bake(spring=1.4)]
    dry = Bake(spring=under.spring(steam=False), steam=False)
    told, bakes, _ = tried(lay(), under, dry)
    assert bakes == [Bake(spring=under.spring()), replace(dry, spring=Dough().spring(steam=False))]
    assert told == [PROOF]  # with steam it springs 1.65-fold
    assert tried(lay(), Dough(), Bake())[:2] == ([], [])
