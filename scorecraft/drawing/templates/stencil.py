"""The stencil on paper: a plate at full size, to print, stick on and cut out."""

import numpy as np
import shapely

from scorecraft.arrays import Line
from scorecraft.cuts import Layout
from scorecraft.drawing.inks import MARK_INK
from scorecraft.drawing.paper.full_size import FullSize
from scorecraft.drawing.paper.panel import loaf_words
from scorecraft.drawing.picture import Ink, Item, Label, Layer, Shape
from scorecraft.drawing.plan import on_paper
from scorecraft.drawing.text import shortened
from scorecraft.limits import PLATE_EDGE_MM
from scorecraft.plate.plate import Plate

CUT_INK = Ink(0.25)
FALLS_OUT = "#d2d2d2"
"""Grey of what is cut away."""
BORDER_MM = 2.0
NAME_MM = 4.2
STRAY_MM = 0.01
MATERIAL = (
    "Material: only what is sold for contact with food, such as polyester or polypropylene film "
    "0.2 to 0.5 mm thick. A plate of paper or card is for one bake, and never touches the dough."
)
USE = (
    "Hold it level just above the loaf: cross-hair over the crown, big notch at 12 o'clock, dashed "
    "line over the rim. Sift flour or cocoa through, lift it straight up."
)
PLAN = (
    "The slots show the cuts as seen from straight above: towards the rim they are shorter than "
    "the cuts on the dough."
)


def stencil(plate: Plate, layout: Layout) -> FullSize:
    """Draw a plate at full size, what is cut away in grey, with what to know about it."""
    left, low, right, high = plate.polygon.bounds
    centre = (BORDER_MM - left, BORDER_MM + high)
    exterior = _ring(plate.polygon.exterior, centre)
    holes = tuple(_ring(ring, centre) for ring in plate.polygon.interiors)
    rim = tuple(on_paper(each, centre) for each in plate.score_lines)
    items: tuple[Item, ...] = (
        Layer("edge", (Shape((exterior,), closed=True, ink=CUT_INK),)),
        Layer("slots", (Shape(holes, closed=True, ink=CUT_INK, fill=FALLS_OUT),)),
        Layer("rim", (Shape(rim, ink=MARK_INK),)),
        Layer("names", _names(plate, layout, centre)),
    )
    return FullSize(
        items,
        exterior,
        right - left + 2 * BORDER_MM,
        high - low + 2 * BORDER_MM,
        f"{layout.title}: stencil",
        loaf_words(layout.loaf),
        told(plate),
        "stencil",
        centre,
    )


def told(plate: Plate) -> tuple[str, ...]:
    """Say what a maker has to know of a plate."""
    sizes = plate.sizes
    count = len(plate.bridges)
    first, last = (f"{width:.1f}".removesuffix(".0") for width in plate.widths)
    widths = f"{first} mm" if first == last else f"{first} to {last} mm"
    holds = "1 bridge" if count == 1 else f"{count} bridges"
    held = f", held by {holds} of {sizes.bridge_mm:g} mm" if count else ""
    lines = [
        f"Cut along all solid lines; what is grey falls out, the rest stays in one piece{held}. "
        f"Slots {widths} wide, wider for deeper cuts; "
        f"no web is thinner than {sizes.web_mm:g} mm.",
        USE if plate.hair else USE.replace("cross-hair over the crown, ", ""),
        MATERIAL,
        PLAN,
    ]
    if plate.left_out:
        lines.insert(1, f"Too fine for this plate, left out: {', '.join(plate.left_out)}.")
    if plate.mirrored:
        lines.insert(0, "Mirrored: this is the side that lies towards the dough.")
    return tuple(lines)


def _ring(ring: shapely.LinearRing, centre: tuple[float, float]) -> Line:
    thin = shapely.simplify(shapely.Polygon(ring), STRAY_MM)
    return on_paper(shapely.get_coordinates(thin.exterior)[:-1], centre)


def _names(plate: Plate, layout: Layout, centre: tuple[float, float]) -> tuple[Label, ...]:
    """Write on the border what the plate is: 12 at the notch, its name opposite."""
    rim = layout.loaf.length_mm / 2
    half = PLATE_EDGE_MM / 2
    twelve, name = on_paper(np.array([[0.0, rim + 3.0], [0.0, -rim - half]]), centre).tolist()
    title = shortened(layout.title, 0.45 * layout.loaf.width_mm, NAME_MM, bold=True)
    side = "towards the dough" if plate.mirrored else "this side up"
    return (
        Label("12", tuple(twelve), 3.6, anchor="middle", level="middle", bold=True),
        Label(title, (name[0], name[1] - 2.4), NAME_MM, "middle", "middle", bold=True),
        Label(side, (name[0], name[1] + 2.6), 2.8, "middle", "middle"),
    )
