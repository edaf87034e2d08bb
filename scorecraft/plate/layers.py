"""Layers of dusting, each through a plate of its own: flour, then cocoa."""

from collections.abc import Mapping

import scorecraft.plate.telling as telling
from scorecraft.errors import UsageError

MOST_LAYERS = 6


def layers_of(text: str) -> Mapping[str, tuple[str, ...]]:
    """Read layers as they are written, `flour=leaf,star; cocoa=slash`: names of cuts by layer.

    Raises UsageError where a text is none.
    """
    found: dict[str, tuple[str, ...]] = {}
    for part in text.split(";"):
        name, _, cuts = (each.strip() for each in part.partition("="))
        names = tuple(each.strip() for each in cuts.split(",") if each.strip())
        if not (name and names) or name in found or len(found) >= MOST_LAYERS:
            raise UsageError(telling.no_layers(text), None, telling.LAYERS_LIKE)
        found[name] = names
    return found


def layer_of(layers: Mapping[str, tuple[str, ...]], name: str) -> tuple[str, ...]:
    """Give the cuts of a layer; raises UsageError for one there is not."""
    if name not in layers:
        raise UsageError(telling.no_layer(name), None, telling.names_there_are(list(layers), None))
    return layers[name]
