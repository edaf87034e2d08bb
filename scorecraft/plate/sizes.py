"""The sizes of a plate's slots, bridges and webs, and their limits."""

from scorecraft.errors import UsageError
from scorecraft.frozen import dataclass
from scorecraft.limits import MOST_SLOT_MM
from scorecraft.practice import BRIDGE_MM, LEAST_SLOT_MM, LEAST_WEB_MM, SLOT_MM, WEB_MM


@dataclass(frozen=True, slots=True)
class Sizes:
    """Least width of slots, of bridges across them and of webs between them, mm."""

    slot_mm: float = SLOT_MM.value
    bridge_mm: float = BRIDGE_MM.value
    web_mm: float = WEB_MM.value


def checked(sizes: Sizes) -> Sizes:
    """Give the sizes back if they can be cut; raises UsageError with the limit if not."""
    _within("slot", sizes.slot_mm, LEAST_SLOT_MM.value, MOST_SLOT_MM)
    _within("web", sizes.web_mm, LEAST_WEB_MM.value, MOST_SLOT_MM)
    _within("bridge", sizes.bridge_mm, sizes.web_mm, MOST_SLOT_MM)
    return sizes


def _within(name: str, size_mm: float, least: float, most: float) -> None:
    if not least <= size_mm <= most:
        hint = f"use {least:g} mm to {most:g} mm"
        raise UsageError(f"no stencil can be cut with a {name} of {size_mm:g} mm", None, hint)
