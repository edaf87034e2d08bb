"""What gives a loaf room without another cut: steam in the oven, or a longer proof."""

from collections.abc import Iterator
from dataclasses import replace

from scorecraft.checks import telling_loaf as say
from scorecraft.cuts import Layout
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.skin import Skin
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.predict import predict
from scorecraft.opening.room import room

COARSE_PANELS = 1_100.0
"""About so many panels do for trying another bake."""


def easier(layout: Layout, skin: Skin) -> list[str]:
    """List what gives the cuts room enough as they are, each tried in the model first."""
    panel = panel_for([cut.line for cut in layout.cuts], COARSE_PANELS) if layout.cuts else None
    told = []
    for words, bake in _others(layout):
        opening = predict(replace(layout, bake=bake), skin, panel_mm=panel)
        if room(opening, bake.strength).verdict == "enough":
            told.append(words)
    return told


def _others(layout: Layout) -> Iterator[tuple[str, Bake]]:
    """Give the bakes to try; a spring that was given by hand stays."""
    bake, dough = layout.bake, layout.dough
    by_dough = bake.spring == dough.spring(steam=bake.steam)
    if not bake.steam:
        spring = dough.spring() if by_dough else bake.spring
        yield say.NO_STEAM_FIX, replace(bake, spring=spring, steam=True)
    if dough.stage == "under" and by_dough:
        ready = replace(dough, proof="ready").spring(steam=bake.steam)
        yield say.PROOF_LONGER, replace(bake, spring=ready)
