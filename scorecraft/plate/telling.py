"""What is said of a stencil that cannot be cut: the reason, and the way out."""

import math
from collections.abc import Sequence

from scorecraft.loaf.places import clock
from scorecraft.plate.sizes import Sizes

NO_CUTS = "there are no cuts on this loaf to make slots from"
ADD_A_FIGURE = "add a figure to the pattern, like: leaf"
FALLS_APART = "it would fall apart"
ANOTHER_SLOT = "try another slot width"


def place(x: float, y: float) -> str:
    """Say where a point (mm, seen from above) lies: how far from the crown, and at what hour."""
    return f"{math.hypot(x, y):.0f} mm from the crown {clock(math.atan2(y, x))}"


def thin_strip(x: float, y: float, least_mm: float) -> str:
    """Say that a strip between slots is too thin."""
    return f"the strip {place(x, y)} is thinner than {least_mm:g} mm"


def thin_bridge(x: float, y: float, least_mm: float) -> str:
    """Say that a bridge is too narrow."""
    return f"the bridge {place(x, y)} is narrower than {least_mm:g} mm"


def faulty(fault: str) -> str:
    """Say that a stencil did not come out well."""
    return f"this stencil cannot be made: {fault}"


def not_called(name: str) -> str:
    """Say that no cut has a name."""
    return f'no cut of this pattern is called "{name}"'


def names_there_are(names: Sequence[str], near: str | None) -> str:
    """List the names that cuts have, the nearest first as a guess."""
    guess = f'did you mean "{near}"? ' if near else ""
    return f"{guess}there are: {', '.join(names)}"


def crowded(sizes: Sizes, share: float, name: str) -> str:
    """Say that slots leave too little between them."""
    return (
        f"slots {sizes.slot_mm:g} mm wide leave no room for strips of {sizes.web_mm:g} mm between "
        f"them: only {100 * share:.0f}% of {name} would be left"
    )


def loose(where: str, sizes: Sizes, name: str) -> str:
    """Say that a piece is not held."""
    return (
        f"the piece {where} would fall out: there is no room for a bridge of "
        f"{sizes.bridge_mm:g} mm in {name}"
    )


def slot_works(slot_mm: float) -> str:
    """Name the slot that works."""
    return f"a slot of {slot_mm:g} mm works: --slot {slot_mm:g}mm"


def bridge_works(bridge_mm: float) -> str:
    """Name the bridge that works."""
    return f"a bridge of {bridge_mm:g} mm works: --bridge {bridge_mm:g}mm"


def nothing_works(others: Sequence[str]) -> str:
    """Say what is left to try where no slot and no bridge will do."""
    coarser = f', or keep to coarser parts: --only "{",".join(others)}"' if others else ""
    return f"try a smaller --slot, --bridge and --web together{coarser}"


LAYERS_LIKE = 'write layers "flour=leaf,star; cocoa=slash"'
PLATE_LIKE = "write --plate 300x300mm or 12x12in"
NO_SEAM = "no straight seams leave parts that fit and stay in one piece each"
FEWER_SLOTS = "try a larger --plate, or fewer figures with --only"


def unfilled(names: Sequence[str]) -> str:
    """Say that figures have no shape to open, and what they have instead."""
    if len(names) == 1:
        return f"{names[0]} encloses nothing to fill and keeps its slots"
    return f"{' and '.join(names)} enclose nothing to fill and keep their slots"


def no_layers(text: str) -> str:
    """Say that a text does not tell layers."""
    return f'"{text}" tells no layers'


def no_layer(name: str) -> str:
    """Say that there is no layer of a name."""
    return f'there is no layer "{name}"'


def no_plate_size(text: str) -> str:
    """Say that a text is no size of a plate."""
    return f'"{text}" is not the size of a plate between 50 and 5000 mm'


def too_large(size: tuple[float, float], most: tuple[float, float]) -> str:
    """Say that a plate does not fit, turned or not."""
    return (
        f"the stencil is {size[0]:.0f} × {size[1]:.0f} mm: a plate of {most[0]:g} × {most[1]:g} mm "
        "does not hold it, turned or not"
    )


def smaller_loaf(width_mm: float) -> str:
    """Say what is to be done about it."""
    return (
        f"take a loaf up to {width_mm:g} mm wide, which fits as it is; or with --split it is made "
        "in parts to join"
    )


def in_parts(part: str) -> str:
    """Say in how many parts a plate is."""
    return f"in {part.split()[-1]} parts, to be joined"


def turned_by(turn_deg: int) -> str:
    """Say how a plate lies on its bed."""
    way = "counter-clockwise" if turn_deg > 0 else "clockwise"
    return f"it fits the plate turned by {abs(turn_deg)}° {way}"
