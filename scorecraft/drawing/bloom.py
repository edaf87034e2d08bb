"""The loaf after baking: cuts opened to their predicted widths, crust, flour and ears."""

import numpy as np

from scorecraft.cuts import Layout
from scorecraft.drawing.bloom_crumb import crumb, depth, edges, toasted
from scorecraft.drawing.bloom_crust import blisters, crust, flour, shadow
from scorecraft.drawing.bloom_ear import ears
from scorecraft.drawing.bloom_lens import baked_loaf, lenses
from scorecraft.drawing.bloom_mouths import Mouths
from scorecraft.drawing.bloom_texture import texture
from scorecraft.drawing.bread import BOARD
from scorecraft.drawing.eye import Eye
from scorecraft.drawing.picture import Group, Picture, Shape, box
from scorecraft.loaf.dome import Loaf

MARGIN_MM = 16.0
SEED = 7
PLAIN_DUST = 0.45
"""Flour on a loaf without decorative cuts, of that on one with them."""


def bloom(layout: Layout, mouths: Mouths, *, width_mm: float | None = None) -> Picture:
    """Draw the baked loaf from above, full size unless a picture width (mm) is given."""
    loaf = baked_loaf(layout)
    wide, high = loaf.width_mm + 2 * MARGIN_MM, loaf.length_mm + 2 * MARGIN_MM
    scale = 1.0 if width_mm is None else width_mm / wide
    eye = Eye(loaf, centre=(wide / 2 * scale, high / 2 * scale), scale=scale)
    ground = Shape((box(0, 0, wide * scale, high * scale),), closed=True, fill=BOARD, css="board")
    group = bloom_group(layout, mouths, eye)
    return Picture(
        wide * scale, high * scale, f"{layout.title}: baked", "", (ground, group), css="bloom"
    )


def bloom_group(layout: Layout, mouths: Mouths, eye: Eye) -> Group:
    """Draw the baked loaf as the eye sees it; `eye.loaf` is the baked loaf."""
    rng = np.random.default_rng(SEED)
    opened = sorted(lenses(layout, mouths, eye.loaf, rng), key=lambda lens: lens.widest)
    titles = [
        f"{cut.name}: opens {mouths.widest(index):.0f} mm" for index, cut in enumerate(layout.cuts)
    ]
    decorated = any(cut.kind == "decorative" for cut in layout.cuts)
    return Group(
        "bloom",
        (
            shadow(eye),
            crust(eye),
            flour(eye, 1.0 if decorated else PLAIN_DUST, rng),
            blisters(eye, rng),
            toasted(eye, opened),
            edges(eye, opened),
            crumb(eye, opened, titles),
            texture(eye, opened, rng),
            depth(eye, opened),
            ears(eye, layout, opened, rng),
        ),
        css="bloom",
    )
