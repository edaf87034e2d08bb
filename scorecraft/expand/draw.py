"""Figures in their own frame: which function draws a word, and how deep each stroke is cut."""

import importlib
import math
from collections.abc import Callable, Container
from random import Random

from scorecraft.cuts import Kind, Stroke
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.read import Values, own
from scorecraft.expand.scope import Attributes, Scope
from scorecraft.language.keys import Word
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DECORATIVE_DEPTH_MM,
    EXPANSION_BLADE_DEG,
    EXPANSION_DEPTH_MM,
    EXPANSION_FROM_MM,
)


def draw(word: Word, values: Values, drawings: Drawings) -> list[Stroke]:
    """Draw a motif in its own frame by the function of its name in `motifs`."""
    sizes = own(word, values)
    if word.name == "trace":
        return drawings.strokes(sizes["file"], sizes["width"])
    module = importlib.import_module(f"scorecraft.motifs.{word.name}")
    motif: Callable[..., list[Stroke]] = getattr(module, word.name)
    strokes = motif(**sizes)
    moved = word.origin and values["from"] != word.origin
    return stood(strokes, values["from"]) if moved else strokes


def stood(strokes: list[Stroke], part: str) -> list[Stroke]:
    """Shift strokes along +y, so that their foot (`base`) or their `middle` is at the origin."""
    ends = [y for stroke in strokes for y in (stroke.line[:, 1].min(), stroke.line[:, 1].max())]
    down = min(ends) if part == "base" else (min(ends) + max(ends)) / 2
    return [Stroke(stroke.part, stroke.line - (0.0, down)) for stroke in strokes]


def strayed(scope: Scope, count: int) -> Scope:
    """Let the frame wander as a hand does: the same way every time for one seed and count."""
    if scope.wander is None:
        return scope
    random = Random(f"{scope.wander.seed}:{count}")
    size = 1.0 + scope.wander.size * random.uniform(-1, 1)
    turn = scope.wander.turn_rad * random.uniform(-1, 1)
    return scope.at(scope.frame.turned(turn).scaled(size))


SINGLE = ("slash", "arc", "wave", "path")
"""Figures of one stroke, which are slanted where they give the loaf room and nothing is said."""
LEANING = (("leaf", "outline"),)
"""Parts of figures that are slanted then too: they lean to the outside of the leaf."""


def dress(word: Word, part: str, given: Attributes, values: Values, said: Container[str]) -> Values:
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
    blade = said_blade(part, given, values)
    if blade is None:
        leans = word.name in SINGLE or (word.name, part) in LEANING
        slanted = kind == "expansion" and leans
        rule = EXPANSION_BLADE_DEG if slanted else DECORATIVE_BLADE_DEG
        blade = math.radians(rule.value)
    return {"depth_mm": depth, "opens_mm": opens, "blade_rad": blade, "kind": kind}


def said_blade(part: str, given: Attributes, values: Values) -> float | None:
    """Give the blade angle (radians) that the pattern tells for one part of a figure, or None."""
    found: float | None = values.get(f"{part}_blade", given.blade_rad)
    return found


def kind_of(word: Word, depth: float | None, opens: float | None, said: Kind | None) -> Kind:
    """Tell whether a cut makes room or is there to be seen."""
    if said is not None:
        return said
    for asked in (opens, depth):
        if asked is not None:
            return "expansion" if asked >= EXPANSION_FROM_MM.value else "decorative"
    return "expansion" if word.expands else "decorative"
