"""The second stage: how the cuts open in the oven, as the page shows it."""

import numpy as np

from scorecraft.check_data import ranged, rounded
from scorecraft.designing import Design
from scorecraft.drawing.bloom.bloom import CRUSTS, FLOURS, alone, usual_flour
from scorecraft.drawing.bloom.mouths import mouths_of
from scorecraft.drawing.bloom.relief import Bread
from scorecraft.drawing.photo import encoded_photo
from scorecraft.drawing.picture import Picture
from scorecraft.drawing.svg import data_address
from scorecraft.json_data import Json, JsonObject
from scorecraft.report import verdict
from scorecraft.web.asked import Data, choice_of, number_of
from scorecraft.web.design_data import findings_data
from scorecraft.web.stage import pointers
from scorecraft.web.telling import opens_words

PIXELS = 600
"""Along the longer side of the page's picture."""
SHELF_PIXELS = 360


def opened_data(design: Design) -> JsonObject:
    """Tell how wide the cuts open, as ranges, whether that gives room, and all findings."""
    return {
        "ok": True,
        "findings": findings_data(design, design.findings),
        "verdict": verdict(design.findings),
        "room": design.room_words,
        "pointers": pointers(design, design.findings),
        "widest_mm": [ranged(*each) for each in design.ranges.widest_mm],
        "opens": [opens_words(each) for each in design.ranges.widest_mm],
    }


def bloom_data(design: Design, request: Data) -> JsonObject:
    """Tell the loaf at a share of its time in the oven: a see-through picture, and its size."""
    drawn = bloom_picture(
        design,
        number_of(request, "share", 1.0, 0.0, 1.0),
        choice_of(request, "crust", ("golden", *CRUSTS)),
        choice_of(request, "flour", ("", *FLOURS)),
    )
    size: list[Json] = [rounded(drawn.width_mm), rounded(drawn.height_mm)]
    sideways = rounded(design.layout.bake.sideways)
    address = data_address(np.asarray(drawn.photo))
    return {"ok": True, "size": size, "sideways": sideways, "image": address}


def bloom_file(design: Design) -> bytes:
    """Picture the baked loaf for the shelf, as WebP."""
    return encoded_photo(np.asarray(bloom_picture(design, pixels=SHELF_PIXELS).photo), "webp")


def bloom_picture(
    design: Design,
    share: float = 1.0,
    crust: str = "golden",
    flour: str = "",
    pixels: int = PIXELS,
) -> Picture:
    """Picture the loaf alone at a share of its time in the oven, full size, without the table."""
    layout = design.layout
    brown, dust = CRUSTS[crust], FLOURS[flour or usual_flour(layout)]
    bread = Bread(layout, mouths_of(design.opening), share=share, brown=brown, flour=dust)
    return alone(bread, pixels)
