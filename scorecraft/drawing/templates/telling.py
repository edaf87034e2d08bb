"""The words of the stencil, the drape, the ring and the drawings for cutters."""

import math
from collections.abc import Sequence

from scorecraft.drape.drape import Drape
from scorecraft.drawing.paper.cautions import FILM
from scorecraft.plate.plate import Plate
from scorecraft.plate.telling import unfilled

CROSS_HAIRS = "cross-hairs over the crown, "
STENCIL_USE = (
    "Hold it level just above the loaf: {hair}the big notch at 12 o'clock, the dashed line over "
    "the rim. Sift flour or cocoa through it, then lift it straight up."
)
STENCIL_PLAN = (
    "The slots show the cuts as seen from straight above: toward the rim they are shorter than "
    "the cuts on the dough."
)
JOIN_PARTS = (
    "Part {part}, counted by rows from the upper left: lay the parts edge to edge, A to A, B to B "
    "and so on, and join them with food-contact tape on the upper side."
)
MIRRORED = "Mirrored: this side faces the dough."
SIDE_UP, SIDE_DOWN = "this side up", "this side to the dough"
DRAPE_USE = (
    "Petal 1, with the arrow, points to 12 o'clock. Press the lines through with a clean point, "
    "lift the drape off, then cut."
)
TRUE_LENGTH = "in true length along the dough"
RING_USE = (
    "Cut out along the outer circle and lay it on the turntable under the loaf's baking paper, "
    "0° at 12 o'clock. Turn until a mark faces you, then cut."
)
RING_SIZE = "For a loaf {across_mm:.0f} mm across"
MOST_ANGLES = 24
"""So many starts of one figure are listed at the most."""
MILLIMETRES = "all lengths are millimetres"
CHECK_LINE = "The check line must measure 100 mm; do not cut it."
CUTTER = f"All lengths are millimetres. {CHECK_LINE} {FILM}"


def stencil_title(title: str, layer: str, part: str) -> str:
    """Name a plate: its pattern, what is dusted through it, and which part it is."""
    more = f", {layer}" if layer else ""
    return f"{title}: stencil{more}" + (f", part {part}" if part else "")


def stencil_words(plate: Plate) -> tuple[str, ...]:
    """Say what a maker has to know of a stencil, or of a part of one."""
    slots = f" Slots are {_widths(plate)} wide, wider where the cut is deeper." * bool(plate.shown)
    lines = [
        "Cut along all solid lines: what is grey falls out, and the rest stays in one "
        f"piece{_bridges(plate)}.{slots} "
        f"The strips left standing are {plate.sizes.web_mm:g} mm or more.",
        STENCIL_USE.format(hair=CROSS_HAIRS if plate.hair else ""),
        STENCIL_PLAN,
    ]
    if plate.left_out:
        lines.insert(1, f"Too fine for this stencil, left out: {', '.join(plate.left_out)}.")
    if plate.unfilled:
        said = unfilled(plate.unfilled)
        lines.insert(1, f"{said[0].upper()}{said[1:]}.")
    if plate.part:
        lines.insert(0, JOIN_PARTS.format(part=plate.part))
    if plate.mirrored:
        lines.insert(0, MIRRORED)
    return tuple(lines)


def _bridges(plate: Plate) -> str:
    count = len(plate.bridges)
    holds = "1 bridge" if count == 1 else f"{count} bridges"
    return f", held by {holds} of {plate.sizes.bridge_mm:g} mm" if count else ""


def _widths(plate: Plate) -> str:
    first, last = (f"{width:.1f}".removesuffix(".0") for width in plate.widths)
    return f"{first} mm" if first == last else f"{first} to {last} mm"


def drape_words(drape: Drape, tick_mm: float) -> tuple[str, ...]:
    """Say how to make the drape and how well it fits."""
    fit = math.ceil(10 * drape.fit_mm) / 10
    lines = [
        f"{len(drape.petals)} petals joined at the crown. Cut along the solid edge and cut out the "
        "grey darts. Fold each petal along its dashed line and bring the edges of each dart "
        f"together: the small marks, {tick_mm:g} mm apart, meet. It follows the dome to within "
        f"{fit:.1f} mm along the petals' edges and around.",
        DRAPE_USE,
    ]
    if drape.split:
        many = f"{drape.split} cuts run" if drape.split > 1 else "One cut runs"
        lines.append(f"{many} across a dart: join the ends once the dart is closed.")
    return tuple(lines)


def starts_words(numbers: str, name: str, degrees: Sequence[str]) -> str:
    """List the angles at which a figure begins, with the numbers of its cuts."""
    shown = degrees if len(degrees) <= MOST_ANGLES else [*degrees[: MOST_ANGLES - 1], "…"]
    count = f"{len(degrees)} start{'s' if len(degrees) > 1 else ''}"
    return f"No. {numbers}, {name}, {count}: {', '.join(shown)}"
