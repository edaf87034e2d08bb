"""The second stage: how the cuts open in the oven, as the page shows it."""

import numpy as np

from scorecraft.check_data import ranged, rounded
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.bloom.bloom import MARGIN_MM, bloom_layer
from scorecraft.drawing.bloom.eye import Eye
from scorecraft.drawing.bloom.lens import Lens, baked_loaf, lenses
from scorecraft.drawing.bloom.mouths import mouths_of
from scorecraft.drawing.picture import Picture, Shape
from scorecraft.drawing.plan import on_paper
from scorecraft.drawing.svg import path_data
from scorecraft.json_data import JsonObject
from scorecraft.report import verdict
from scorecraft.web.design_data import findings_data
from scorecraft.web.stage import frame, pointers

DIGITS = 2


def opened_data(design: Design) -> JsonObject:
    """Tell how wide the cuts open, as ranges, whether that gives room, and all findings."""
    centre, _ = frame(design.layout)
    found = pointers(design.layout, design.findings, centre)
    return {
        "ok": True,
        "findings": findings_data(design, design.findings),
        "verdict": verdict(design.findings),
        "room": design.room_words,
        "pointers": [
            {"finding": int(item.data["finding"]), "path": path_data(item.lines, item.closed)}
            for item in found.items
            if isinstance(item, Shape)
        ],
        "widest_mm": [ranged(*each) for each in design.ranges.widest_mm],
    }


def mouths_data(design: Design) -> JsonObject:
    """Tell every cut's mouth as a line with half widths, to be opened by the oven's slider."""
    layout = design.layout
    centre, _ = frame(layout)
    opened = lenses(layout, mouths_of(design.opening), baked_loaf(layout))
    return {
        "ok": True,
        "sideways": rounded(layout.bake.sideways),
        "lenses": [lens_data(lens, layout, centre) for lens in opened],
    }


def lens_data(lens: Lens, layout: Layout, centre: tuple[float, float]) -> JsonObject:
    """Tell a mouth on the proofed loaf's picture: its middle, and the way to its left edge."""
    sideways = layout.bake.sideways
    middle = on_paper(lens.middle / sideways, centre)
    aside = lens.left * lens.half[:, None] / sideways * [1.0, -1.0]
    return {"cut": lens.cut, "middle": flat(middle), "aside": flat(aside)}


def flat(points: np.ndarray) -> list[float]:
    """Write points as one row of rounded numbers; (N, 2) in mm."""
    return [float(each) + 0.0 for each in np.round(points, DIGITS).ravel().tolist()]


def bloom_picture(design: Design) -> Picture:
    """Draw the baked loaf alone, full size, without the board it lies on."""
    layout = design.layout
    loaf = baked_loaf(layout)
    wide, high = loaf.width_mm + 2 * MARGIN_MM, loaf.length_mm + 2 * MARGIN_MM
    eye = Eye(loaf, centre=(wide / 2, high / 2))
    layer = bloom_layer(layout, mouths_of(design.opening), eye)
    return Picture(wide, high, f"{layout.title}: baked", "", (layer,), css="bloom")
