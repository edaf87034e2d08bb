"""Layers of dusting, each through a plate of its own: flour, then cocoa."""

from collections.abc import Mapping

import scorecraft.plate.telling as telling

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
            raise telling.NO_LAYERS(text=text).usage()
        found[name] = names
    return found


def layer_of(layers: Mapping[str, tuple[str, ...]], name: str) -> tuple[str, ...]:
    """Give the cuts of a layer; raises UsageError for one there is not."""
    if name not in layers:
        names = telling.names_there_are(list(layers), "")
        raise telling.NO_LAYER(name=name, names=names).usage()
    return layers[name]
