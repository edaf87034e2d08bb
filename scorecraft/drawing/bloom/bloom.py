"""The loaf after baking: cuts opened to their predicted widths, crust, flour and ears."""

import numpy as np

from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.bread import BOARD, WRITING
from scorecraft.drawing.bloom.crumb import crumb, depth, edges, toasted
from scorecraft.drawing.bloom.crust import blisters, crust, flour, shadow
from scorecraft.drawing.bloom.ear import ears
from scorecraft.drawing.bloom.eye import Eye, look
from scorecraft.drawing.bloom.lens import baked_loaf, lenses
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.drawing.bloom.telling import BAKED, SCORED, baked_words
from scorecraft.drawing.bloom.texture import texture
from scorecraft.drawing.bloom.view import scored_layer
from scorecraft.drawing.picture import Item, Label, Layer, Picture, Shape, box

MARGIN_MM = 16.0
BETWEEN_MM = 22.0
CAPTION_MM = 14.0
"""Height of the line of words under each loaf where there are two."""
LETTER_MM = 5.0
SEED = 7
PLAIN_DUST = 0.45
"""Flour on a loaf without decorative cuts, of that on one with them."""


def bloom(
    layout: Layout,
    mouths: Mouths,
    *,
    before: bool = False,
    view: str | float = "top",
    width_mm: float | None = None,
) -> Picture:
    """Draw the loaf after baking, full size unless a picture width (mm) is given.

    `mouths` are the predicted openings of the cuts; with `before` the proofed loaf stands on the
    left at the same scale. `view` is as for `view.view`; raises UsageError for an unknown one,
    ValueError for another number of mouths than of cuts.
    """
    if len(mouths) != len(layout.cuts):
        raise ValueError(f"{len(layout.cuts)} cuts need as many openings, not {len(mouths)}")
    loaves = [layout.loaf, baked_loaf(layout)] if before else [baked_loaf(layout)]
    wide = sum(look(loaf, view).size[0] for loaf in loaves)
    wide += 2 * MARGIN_MM + BETWEEN_MM * (len(loaves) - 1)
    scale = 1.0 if width_mm is None else width_mm / wide
    eyes = [look(loaf, view, scale) for loaf in loaves]
    foot = CAPTION_MM * scale if before else 0.0
    height = max(eye.size[1] for eye in eyes) + 2 * MARGIN_MM * scale + foot
    eyes = _in_a_row(eyes, height - foot, scale)
    items: list[Item] = [
        Shape((box(0, 0, wide * scale, height),), closed=True, fill=BOARD, css="board")
    ]
    if before:
        items += [scored_layer(layout, eyes[0]), *_captions(eyes, height - foot, scale)]
    items.append(bloom_layer(layout, mouths, eyes[-1]))
    return Picture(
        wide * scale, height, f"{layout.title}: baked", described(mouths), tuple(items), css="bloom"
    )


def bloom_layer(layout: Layout, mouths: Mouths, eye: Eye) -> Layer:
    """Draw the baked loaf as the eye sees it; `eye.loaf` is the baked loaf.

    Each opening carries the number of its cut as `data-cut`, and its words as a title.
    """
    rng = np.random.default_rng(SEED)
    opened = sorted(lenses(layout, mouths, eye.loaf, rng), key=lambda lens: lens.widest)
    titles = [
        f"{cut.name}: opens {mouths.widest(index):.0f} mm" for index, cut in enumerate(layout.cuts)
    ]
    decorated = any(cut.kind == "decorative" for cut in layout.cuts)
    return Layer(
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


def described(mouths: Mouths) -> str:
    """Say in words what the picture shows."""
    widest = max((mouths.widest(cut) for cut in range(len(mouths))), default=0.0)
    return baked_words(len(mouths), widest)


def _in_a_row(eyes: list[Eye], height: float, scale: float) -> list[Eye]:
    """Place the loaves beside one another, their middles at one height."""
    x = MARGIN_MM * scale
    placed = []
    for eye in eyes:
        wide = eye.size[0]
        placed.append(eye.centred(x + wide / 2, height / 2))
        x += wide + BETWEEN_MM * scale
    return placed


def _captions(eyes: list[Eye], top: float, scale: float) -> list[Item]:
    """Write under each loaf what it is and how large."""
    items: list[Item] = []
    for eye, name in zip(eyes, (SCORED, BAKED), strict=True):
        low, high = eye.loaf.width_mm, eye.loaf.length_mm
        size = f"{low:.0f} mm" if abs(low - high) < 0.5 else f"{low:.0f} × {high:.0f} mm"
        x, _ = eye.middle
        at = (x, top)
        items.append(Label(f"{name}, {size}", at, LETTER_MM * scale, "middle", color=WRITING))
    return items
