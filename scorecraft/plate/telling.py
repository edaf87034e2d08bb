"""What is said of a stencil that cannot be cut: the reason, and the way out."""

import math
from collections.abc import Sequence

from scorecraft.errors import Slip
from scorecraft.loaf.places import clock

NO_CUTS = Slip(
    "there are no cuts on this loaf to make slots from", "add a figure to the pattern, like: leaf"
)
FALLS_APART = "it would fall apart"
THIN_STRIP = "the strip {where} is thinner than {least_mm:g} mm"
THIN_BRIDGE = "the bridge {where} is narrower than {least_mm:g} mm"
FAULTY = Slip("this stencil cannot be made: {fault}", "try another slot width")
NOT_CALLED = Slip('no cut of this pattern is called "{name}"', "{names}")
CROWDED = (
    "slots {sizes.slot_mm:g} mm wide leave no room for strips of {sizes.web_mm:g} mm between "
    "them: only {share:.0%} of {name} would be left"
)
LOOSE = (
    "the piece {where} would fall out: there is no room for a bridge of "
    "{sizes.bridge_mm:g} mm in {name}"
)
SLOT_WORKS = "a slot of {slot_mm:g} mm works: --slot {slot_mm:g}mm"
BRIDGE_WORKS = "a bridge of {bridge_mm:g} mm works: --bridge {bridge_mm:g}mm"
NO_SEAM = Slip(
    "no straight seams leave parts that fit and stay in one piece each",
    "try a larger --plate, or fewer figures with --only",
)
IN_PARTS = "in {count} parts, to be joined"
NO_LAYERS = Slip('"{text}" tells no layers', 'write layers "flour=leaf,star; cocoa=slash"')
NO_LAYER = Slip('there is no layer "{name}"', "{names}")
NO_PLATE_SIZE = Slip(
    '"{text}" is not the size of a plate between 50 and 5000 mm',
    "write --plate 300x300mm or 12x12in",
)
TOO_LARGE = Slip(
    "the stencil is {size[0]:.0f} × {size[1]:.0f} mm: a plate of {most[0]:g} × {most[1]:g} mm "
    "does not hold it, turned or not",
    "take a loaf up to {width_mm:g} mm wide, which fits as it is; or with --split it is made "
    "in parts to join",
)
TOO_LARGE_FOR_ANY = TOO_LARGE._replace(
    hint="give a larger plate; or with --split it is made in parts to join"
)


def place(x: float, y: float) -> str:
    """Say where a point (mm, seen from above) lies: how far from the crown, and at what hour."""
    return f"{math.hypot(x, y):.0f} mm from the crown {clock(math.atan2(y, x))}"


def names_there_are(names: Sequence[str], near: str) -> str:
    """List the names that cuts have, the nearest first as a guess."""
    guess = f'did you mean "{near}"? ' if near else ""
    return f"{guess}there are: {', '.join(names)}"


def nothing_works(others: Sequence[str]) -> str:
    """Say what is left to try where no slot and no bridge will do."""
    coarser = f', or keep to coarser parts: --only "{",".join(others)}"' if others else ""
    return f"try a smaller --slot, --bridge and --web together{coarser}"


def unfilled(names: Sequence[str]) -> str:
    """Say that figures have no shape to open, and what they have instead."""
    if len(names) == 1:
        return f"{names[0]} encloses nothing to fill and keeps its slots"
    return f"{' and '.join(names)} enclose nothing to fill and keep their slots"


def turned_by(turn_deg: int) -> str:
    """Say how a plate lies on its bed."""
    way = "counter-clockwise" if turn_deg > 0 else "clockwise"
    return f"it fits the plate turned by {abs(turn_deg)}° {way}"
