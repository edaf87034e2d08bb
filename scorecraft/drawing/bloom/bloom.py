"""The loaf after baking, or on its way there: cuts opened as predicted, crust, flour and ears."""

from dataclasses import replace
from itertools import pairwise

import numpy as np

from scorecraft.arrays import Line, Pixels
from scorecraft.cuts import Layout
from scorecraft.drawing.bloom.cast import Frame, photograph
from scorecraft.drawing.bloom.eye import Eye, look
from scorecraft.drawing.bloom.mouths import Mouths
from scorecraft.drawing.bloom.relief import Bread
from scorecraft.drawing.bloom.telling import BAKED, SCORED, baked_words
from scorecraft.drawing.inks import WRITING
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Picture, Shape
from scorecraft.loaf.dome import Loaf
from scorecraft.shaping.shaped import Shaped

MARGIN_MM = 18.0
BETWEEN_MM = 24.0
CAPTION_MM = 14.0
"""Height of the line of words under each loaf where there are two."""
LETTER_MM = 5.0
PIXELS = 1000
"""Along the longer side of a picture, where no number is asked for."""
CRUSTS = {"light": -0.13, "golden": 0.0, "dark": 0.13}
"""How much browner than usual."""
FLOURS = {"none": 0.0, "light": 0.5, "heavy": 1.0}
"""Parts of a thorough dusting."""
OUTLINE = Ink(0.12, color="#3a1d0c", opacity=0.25)
BESIDE = 1.0005
"""The table begins so many times as far from the middle as the rim."""
LEVELS = np.sin(np.linspace(0, np.pi / 2, 60))


def bloom(
    layout: Layout,
    mouths: Mouths,
    *,
    before: bool = False,
    proofed: bool = False,
    view: str | float = "top",
    width_mm: float | None = None,
    pixels: int = PIXELS,
    crust: str = "golden",
    flour: str | None = None,
) -> Picture:
    """Picture the loaf after baking, full size unless a picture width (mm) is given.

    `mouths` are the predicted openings of the cuts; with `before` the proofed loaf lies on the left
    at the same scale, `proofed` shows that alone. `pixels` count along the longer side. `crust` and
    `flour` are words of CRUSTS and FLOURS; unsaid, decorated loaves get more flour. Raises
    UsageError for an unknown `view`, ValueError for another number of mouths than of cuts.
    """
    eye = look(view)
    dust = FLOURS[flour or usual_flour(layout)]
    shares = (0.0, 1.0) if before else (0.0 if proofed else 1.0,)
    loaves = [Bread(layout, mouths, eye, share, CRUSTS[crust], dust) for share in shares]
    frames = _frames(loaves, CAPTION_MM if before else 0.0, pixels)
    photos = [photograph(*each) for each in zip(loaves, frames, strict=True)]
    photo = _joined(photos, frames[0].step)
    scale = 1.0 if width_mm is None else width_mm / (photo.shape[1] * frames[0].step)
    items: list[Item] = []
    x = 0.0
    for bread, frame in zip(loaves, frames, strict=True):
        items.append(_outlines(bread, frame, x, scale))
        if before:
            items.append(_caption(bread, x + (frame.x[1] - frame.x[0]) / 2, frame, scale))
        x += frame.x[1] - frame.x[0] - BETWEEN_MM
    title = f"{layout.title}: {'scored' if proofed else 'baked'}"
    desc = described(layout, mouths, proofed)
    return _picture(photo, frames[0].step * scale, title, desc, tuple(items))


def alone(bread: Bread, pixels: int) -> Picture:
    """Picture a loaf from above, full size, without the table: see-through but for its shadow."""
    (frame,) = _frames([bread], 0.0, pixels)
    photo = photograph(bread, frame, table=False)
    return _picture(photo, frame.step, bread.layout.title, "", ())


def _picture(photo: Pixels, step: float, title: str, desc: str, items: tuple[Item, ...]) -> Picture:
    high, wide = (float(count * step) for count in photo.shape[:2])
    return Picture(wide, high, title, desc, items, css="bloom", photo=photo)


def usual_flour(layout: Layout) -> str:
    """Dust decorated loaves well: that is what makes light cuts show."""
    return "heavy" if any(cut.kind == "decorative" for cut in layout.cuts) else "light"


def described(layout: Layout, mouths: Mouths, proofed: bool) -> str:
    """Say in words what the picture shows."""
    if proofed:
        return f"{layout.loaf.called} with {len(layout.cuts)} cuts, scored"
    widest = max((mouths.widest(cut) for cut in range(len(mouths))), default=0.0)
    return baked_words(len(mouths), widest)


def extent(loaf: Loaf | Shaped, eye: Eye) -> tuple[Line, Line]:
    """Give the least and the greatest place of a loaf on the paper: to the right and up, mm."""
    if isinstance(loaf, Shaped):
        laid = eye.laid(loaf, loaf.outlines)
        return laid.min(axis=0), laid.max(axis=0)
    rings = LEVELS[:, None, None] * loaf.outline.points(360)
    if loaf.held is not None:  # the foot of its sides is beyond the rim of its top
        rings = np.concatenate([rings, [BESIDE * loaf.outline.points(360)]])
    laid = eye.laid(loaf, rings.reshape(-1, 2))
    return laid.min(axis=0), laid.max(axis=0)


def _frames(loaves: list[Bread], foot: float, pixels: int) -> list[Frame]:
    """Frame every loaf, as high as the highest; neighbours share the table between them."""
    ends = [extent(bread.body, bread.eye) for bread in loaves]
    half = max((high - low)[1] for low, high in ends) / 2 + MARGIN_MM
    sides = [MARGIN_MM, *[BETWEEN_MM] * (len(loaves) - 1), MARGIN_MM]
    wide = [
        (low[0] - before, high[0] + after)
        for (low, high), (before, after) in zip(ends, pairwise(sides), strict=True)
    ]
    whole = sum(high - low for low, high in wide) - BETWEEN_MM * (len(loaves) - 1)
    step = max(whole, 2 * half + foot) / pixels
    frames = []
    for (low, high), x in zip(ends, wide, strict=True):
        middle = (low[1] + high[1]) / 2
        up = (middle - half - foot, middle + half)
        frames.append(Frame(x, up, step))
    return frames


def _joined(photos: list[Pixels], step: float) -> Pixels:
    """Lay photographs side by side; on the table between them the shadows of both are seen."""
    whole, *others = photos
    lap = round(BETWEEN_MM / step)
    for other in others:
        seam = np.minimum(whole[:, -lap:], other[:, :lap])
        whole = np.concatenate([whole[:, :-lap], seam, other[:, lap:]], axis=1)
    return whole


def _outlines(bread: Bread, frame: Frame, x: float, scale: float) -> Layer:
    """Draw the edges of the openings as fine lines, each with its cut's number and words."""
    rings = [np.concatenate([lens.ring, lens.ring[:1]]) for lens in bread.opened]
    points = np.concatenate([np.zeros((0, 2)), *rings])
    corner = np.array([x - frame.x[0], frame.up[1]])
    laid = (bread.eye.laid(bread.body, points) * [1, -1] + corner) * scale
    seen = bread.eye.sees(bread.body, points)
    ink = replace(OUTLINE, width=OUTLINE.width * scale)
    items: list[Item] = []
    start = 0
    for lens, ring in zip(bread.opened, rings, strict=True):
        where = start + np.flatnonzero(seen[start : start + len(ring)])
        start += len(ring)
        runs = np.split(where, np.flatnonzero(np.diff(where) > 1) + 1)
        name = bread.layout.cuts[lens.cut].name
        items.append(
            Shape(
                tuple(laid[run] for run in runs if len(run) > 1),
                ink=ink,
                css="opening",
                data={"cut": str(lens.cut)},
                title=f"{name}: opens {lens.widest:.0f} mm" if bread.share else name,
            )
        )
    return Layer("openings" if bread.share else "cuts", tuple(items))


def _caption(bread: Bread, middle: float, frame: Frame, scale: float) -> Label:
    """Write under a loaf what it is and how large."""
    loaf = bread.loaf
    low, high = loaf.width_mm, loaf.length_mm
    size = f"{low:.0f} mm" if abs(low - high) < 0.5 else f"{low:.0f} × {high:.0f} mm"
    at = (middle * scale, (frame.up[1] - frame.up[0] - CAPTION_MM) * scale)
    name = BAKED if bread.share else SCORED
    return Label(f"{name}, {size}", at, LETTER_MM * scale, "middle", color=WRITING)
