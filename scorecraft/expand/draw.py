"""Figures in their own frame: which function draws a word, and how deep each stroke is cut."""

import importlib
import math
from collections.abc import Callable, Container

from scorecraft.arrays import Line
from scorecraft.cuts import Kind, Stroke
from scorecraft.expand import telling as say
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.read import Values, own
from scorecraft.expand.scope import Attributes, Scope
from scorecraft.language.keys import Word
from scorecraft.loaf.dome import Loaf
from scorecraft.practice import (
    DECORATIVE_BLADE_DEG,
    DECORATIVE_DEPTH_MM,
    EXPANSION_BLADE_DEG,
    EXPANSION_DEPTH_MM,
    EXPANSION_FROM_MM,
    SHALLOWEST_CUT_MM,
    SNIP_BLADE_DEG,
)

ON_SHEET = ("rim",)
"""Motifs that the loaf draws: their strokes lie on its sheet, whatever frame they stand in."""


def draw(word: Word, values: Values, drawings: Drawings, scope: Scope) -> list[Stroke]:
    """Draw a motif in its own frame by the function of its name in `motifs`."""
    sizes = own(word, values)
    if word.name == "trace":
        return drawings.strokes(sizes["file"], sizes["width"])
    module = importlib.import_module(f"scorecraft.motifs.{word.name}")
    motif: Callable[..., list[Stroke]] = getattr(module, word.name)
    if word.name in ON_SHEET:
        strokes = motif(loaf=scope.loaf, **sizes)
        return [Stroke(each.part, scope.frame.local(each.line)) for each in strokes]
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
    from random import Random

    random = Random(f"{scope.wander.seed}:{count}")
    size = 1.0 + scope.wander.size * random.uniform(-1, 1)
    turn = scope.wander.turn_rad * random.uniform(-1, 1)
    return scope.at(scope.frame.turned(turn).scaled(size))


SINGLE = ("slash", "arc", "wave", "path")
"""Figures of one stroke, which are slanted where they give the loaf room and nothing is said."""
LEANING = tuple((leaf, "outline") for leaf in ("leaf", "oak_leaf", "maple_leaf", "heart"))
"""Parts of figures that are slanted then too: they lean to the outside of the figure."""


def dress(word: Word, part: str, given: Attributes, values: Values, said: Container[str]) -> Values:
    """Settle depth, wanted opening, blade and kind of one part of a figure.

    `said` are the keys the pattern gives; the other `values` are defaults.
    """
    if word.name == "snip":
        return snipped(given, values)
    if given.through:
        return right_through(given)
    if given.pulled_mm:
        raise say.PULLED_ALONE.error()
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


def right_through(given: Attributes) -> Values:
    """Settle how a cut right through is made; its depth is that of the dough there."""
    blade = math.pi / 2 if given.blade_rad is None else given.blade_rad
    return {
        "depth_mm": 0.0, "opens_mm": None, "blade_rad": blade, "kind": "expansion",
        "through": True, "pulled_mm": given.pulled_mm,
    }  # fmt: skip


def snipped(given: Attributes, values: Values) -> Values:
    """Settle how scissors are held; they go as deep as their hinge lets them."""
    usual = math.radians(SNIP_BLADE_DEG.value)
    blade = usual if given.blade_rad is None else given.blade_rad
    return {
        "depth_mm": 0.0, "opens_mm": None, "blade_rad": blade, "kind": "expansion",
        "hinge_mm": values["hinge"], "laid": values["laid"],
    }  # fmt: skip


def laid_side(lay: str, k: int) -> int:
    """Give the side to which a piece is laid, as copy `k`: -1 left, 1 right, 0 neither."""
    return {"left": -1, "right": 1, "straight": 0}.get(lay, 1 if k % 2 else -1)


def severed(worn: Values, line: Line, loaf: Loaf) -> Values:
    """Let a cut that parts the dough go as deep as the dough is at its highest place there."""
    if not (worn.get("through") or "hinge_mm" in worn):
        return worn
    high = float(loaf.height_at(loaf.sheet_to_plan(line)).max())
    deep = max(high - worn.get("hinge_mm", 0.0), SHALLOWEST_CUT_MM.value)
    return worn | {"depth_mm": deep}


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
