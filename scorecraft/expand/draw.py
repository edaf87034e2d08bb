"""Figures in their own frame: which function draws a word, and how deep each stroke is cut."""

import importlib
import math
from collections.abc import Callable, Container, Mapping
from pathlib import Path
from random import Random
from typing import Any

from scorecraft.cuts import Kind, Stroke
from scorecraft.errors import ScorecraftError
from scorecraft.expand.read import Values
from scorecraft.expand.scope import Attributes, Scope
from scorecraft.language.words import Word
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DECORATIVE_DEPTH_MM,
    EXPANSION_BLADE_DEG,
    EXPANSION_DEPTH_MM,
    EXPANSION_FROM_MM,
)


def draw(word: Word, sizes: Mapping[str, Any], folder: Path | None) -> list[Stroke]:
    """Draw a motif in its own frame by the function of its name in `motifs`."""
    if word.name == "trace":
        return traced(sizes["file"], sizes["width"], folder)
    module = importlib.import_module(f"scorecraft.motifs.{word.name}")
    motif: Callable[..., list[Stroke]] = getattr(module, word.name)
    return motif(**sizes)


def traced(file: str, width_mm: float, folder: Path | None) -> list[Stroke]:
    """Read the strokes of a drawing beside the pattern, scaled to a width if one is given."""
    from scorecraft.trace import strokes

    lines = strokes(beside(file, folder))
    across = max(line[:, 0].max() for line in lines) - min(line[:, 0].min() for line in lines)
    factor = width_mm / across if width_mm and across else 1.0
    return [Stroke("trace", line * factor) for line in lines]


def beside(file: str, folder: Path | None) -> Path:
    """Find a file that a pattern names: it must lie in the pattern's own folder or below it."""
    if folder is None:
        hint = "save the pattern to a file first"
        raise ScorecraftError(f'"{file}" has no folder to be in', None, hint)
    path = (folder / file).resolve()
    if not path.is_relative_to(folder.resolve()):
        hint = "put it beside the pattern"
        raise ScorecraftError(f'"{file}" lies outside the pattern\'s folder', None, hint)
    return path


def strayed(scope: Scope, count: int) -> Scope:
    """Let the frame wander as a hand does: the same way every time for one seed and count."""
    if scope.wander is None:
        return scope
    random = Random(f"{scope.wander.seed}:{count}")
    size = 1.0 + scope.wander.size * random.uniform(-1, 1)
    turn = scope.wander.turn_rad * random.uniform(-1, 1)
    return scope.at(scope.frame.turned(turn).scaled(size))


def dress(
    word: Word, part: str, given: Attributes, values: Values, said: Container[str]
) -> dict[str, Any]:
    """Settle depth, wanted opening, blade and kind of one part of a figure.

    `said` are the keys the pattern gives; the other `values` are defaults.
    """
    own_depth = values.get(f"{part}_depth")
    opens = given.opens_mm if own_depth is None else None
    depth = given.depth_mm if own_depth is None else own_depth
    if own_depth is not None and given.depth_mm is not None and f"{part}_depth" not in said:
        # a part that is light by default (veins) is never deeper than its figure
        depth = min(own_depth, given.depth_mm)
    kind = kind_of(word, depth, opens, given.kind if own_depth is None else None)
    if depth is None:
        depth = (EXPANSION_DEPTH_MM if kind == "expansion" else DECORATIVE_DEPTH_MM).value
    blade = values.get(f"{part}_blade", given.blade_rad)
    if blade is None:
        rule = EXPANSION_BLADE_DEG if kind == "expansion" else DECORATIVE_BLADE_DEG
        blade = math.radians(rule.value)
    return {"depth_mm": depth, "opens_mm": opens, "blade_rad": blade, "kind": kind}


def kind_of(word: Word, depth: float | None, opens: float | None, said: Kind | None) -> Kind:
    """Tell whether a cut makes room or is there to be seen."""
    if said is not None:
        return said
    for asked in (opens, depth):
        if asked is not None:
            return "expansion" if asked >= EXPANSION_FROM_MM.value else "decorative"
    return "expansion" if word.expands else "decorative"
