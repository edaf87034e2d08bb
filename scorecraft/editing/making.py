"""New statements: a figure out of the tray, and a stroke drawn with a finger."""

import math
from collections.abc import Mapping, Sequence

import numpy as np
import shapely

from scorecraft import curves
from scorecraft.arrays import Floats, Line
from scorecraft.editing import telling as say
from scorecraft.editing.blocks import added
from scorecraft.editing.moving import at_place, back
from scorecraft.editing.numbers import rounded
from scorecraft.editing.scene import Scene
from scorecraft.editing.written import Edit
from scorecraft.expand.draw import ON_SHEET, draw
from scorecraft.expand.drawings import Drawings
from scorecraft.expand.frame import Frame, crown
from scorecraft.expand.read import default_value, defaults
from scorecraft.expand.scope import Scope
from scorecraft.expand.traced import Step
from scorecraft.language.tree import Argument, Measure, Points, Statement
from scorecraft.language.words import WORDS
from scorecraft.loaf.dome import make_loaf
from scorecraft.practice import DECORATIVE_DEPTH_MM, EXPANSION_DEPTH_MM

USUAL_REACH_MM = 130.0
"""The reach of a loaf on which figures have their usual sizes; on a smaller one they shrink."""
USUAL_LOAF = (220.0, 95.0)
"""Width and height (mm) of the round loaf on which a figure of the loaf itself is shown alone."""
MOST_POINTS = 12
CLOSE_MM = 1.0
"""A smoothed stroke strays no further than this from the finger, if it has points enough."""
STEP_MM = 1.5
HAND_MM = 4.0
"""A hand's tremble is evened out over such a stretch."""
SHORTEST_MM = 8.0
CLOSED_MM = 7.0
"""A stroke that ends so near its start is closed, if it is ten times as long."""
FIRM = 0.6
"""The mean pressure of a pen (0 to 1) from which a stroke is a deep one."""


def placed_new(scene: Scene, word: str, point: Floats, block: Step | None) -> list[Edit]:
    """Write a figure of its usual size at a point of the sheet (mm), in a block or by itself.

    Raises UsageError for what is no figure of the tray.
    """
    if word not in tray():
        raise say.NOT_IN_TRAY(word=word).usage()
    frame = frame_in(scene, block)
    row = WORDS[word]
    share = min(1.0, float(scene.loaf.reach(0.0)) / USUAL_REACH_MM)
    sizes = []
    for key in row.handles:
        value = default_value(word, key.name)
        if isinstance(value, Measure) and value.unit == "mm" and value.value:
            size = max(1.0, rounded(value.value * share, "mm"))
            sizes.append(Argument(key.name, Measure(size, "mm")))
    figure = Statement(word, tuple(sizes))
    x, y = back(frame, point - frame.origin) - middle_of(word, sizes)
    keys = at_place(frame, x, y)
    new = Statement("at", keys, (figure,)) if keys else figure
    return [added(scene.written, block.statement if block else None, new)]


def middle_of(word: str, sizes: Sequence[Argument]) -> Floats:
    """Give the middle of a figure of some sizes in its own frame (mm)."""
    plain = {each.key: each.value.value for each in sizes if isinstance(each.value, Measure)}
    points = np.concatenate(usual(word, plain))
    return np.asarray((points.min(axis=0) + points.max(axis=0)) / 2)


def usual(word: str, sizes: Mapping[str, float]) -> list[Line]:
    """Draw a figure with sizes of its own (mm), and else as it is usual; (N, 2) mm each."""
    row = WORDS[word]
    values = {**defaults(word)[0], **sizes}
    scope = Scope(make_loaf("round", USUAL_LOAF[0], None, USUAL_LOAF[1]), crown())
    return [stroke.line for stroke in draw(row, values, Drawings(None), scope)]


def tray() -> tuple[str, ...]:
    """Give the figures that can be laid on the loaf as they are: those that need nothing more."""
    return tuple(
        word.name
        for word in WORDS.values()
        if word.group == "motif"
        and word.name not in ON_SHEET
        and not any(key.needed for key in word.keys)
    )


def frame_in(scene: Scene, block: Step | None) -> Frame:
    """Give the frame that a new statement stands in: that of a block's run, or the sheet's.

    Raises ScorecraftError for a statement that has no block.
    """
    if block is None:
        return crown()
    if not block.statement.body:
        raise say.NO_BLOCK(word=block.statement.word).error(block.statement.place)
    return next(step.scope.frame for step in scene.traced.steps if step.around is block)


def stroked(
    scene: Scene, points: Line, repeat: int, pressure: Sequence[float] | None, block: Step | None
) -> list[Edit]:
    """Write a drawn stroke as a path, (N, 2) sheet mm, with copies about the middle if asked for.

    Raises ScorecraftError for one that is too short to be cut.
    """
    frame = frame_in(scene, block)
    new = path_through(smoothed(points), frame, depth_of(pressure))
    if repeat > 1:
        new = Statement("around", (Argument("count", Measure(float(repeat))),), (new,))
    return [added(scene.written, block.statement if block else None, new)]


def path_through(drawn: Line, frame: Frame, more: tuple[Argument, ...]) -> Statement:
    """Write a path through points of the sheet (mm) in a frame, placed at its own middle."""
    middle = (drawn.min(axis=0) + drawn.max(axis=0)) / 2
    keys = at_place(frame, *back(frame, middle - frame.origin))
    x, y = (next((k.value.value for k in keys if k.key == axis), 0.0) for axis in "xy")  # type: ignore[union-attr]
    local = np.array([back(frame, point - frame.origin) for point in drawn]) - (x, y)
    pairs = tuple((length(x), length(y)) for x, y in local)
    figure = Statement("path", (Argument("points", Points(pairs)), *more))
    return Statement("at", keys, (figure,)) if keys else figure


def bent_stroke(line: Line, depth_mm: float, blade_deg: float) -> Statement:
    """Write a bent cut, (N, 2) sheet mm."""
    return path_through(smoothed(line), crown(), cut_so(depth_mm, blade_deg))


def straight_stroke(line: Line, depth_mm: float, blade_deg: float) -> Statement:
    """Write a straight cut from one point to another, (2, 2) sheet mm."""
    way = line[1] - line[0]
    turn = rounded(math.degrees(math.atan2(way[0], way[1])), "deg")
    keys = at_place(crown(), *(line[0] + line[1]) / 2)
    arguments = [Argument("length", length(float(np.hypot(*way))))]
    if turn:
        arguments.append(Argument("turn", Measure(turn, "deg")))
    figure = Statement("slash", (*arguments, *cut_so(depth_mm, blade_deg)))
    return Statement("at", keys, (figure,)) if keys else figure


def cut_so(depth_mm: float, blade_deg: float) -> tuple[Argument, ...]:
    """Write how deep a cut is, and how its blade is held."""
    depth = Argument("depth", Measure(depth_mm, "mm"))
    return (depth, Argument("blade", Measure(blade_deg, "deg")))


def length(value_mm: float) -> Measure:
    """Write a length in whole mm."""
    return Measure(rounded(value_mm, "mm"), "mm")


def depth_of(pressure: Sequence[float] | None) -> tuple[Argument, ...]:
    """Tell how deep a stroke is meant, from the pressure of a pen; nothing without one."""
    if not pressure:
        return ()
    rule = EXPANSION_DEPTH_MM if np.mean(pressure) >= FIRM else DECORATIVE_DEPTH_MM
    return (Argument("depth", Measure(rule.value, "mm")),)


def smoothed(points: Line) -> Line:
    """Draw a stroke anew with a steady hand, through at most `MOST_POINTS` points.

    (N, 2) to (M, 2) mm. Points are added where the curve through those chosen strays most. Raises
    ScorecraftError for a stroke too short to be cut.
    """
    string = shapely.LineString(points) if len(points) > 1 else shapely.Point(0, 0)
    if string.length < SHORTEST_MM:
        raise say.SHORT_STROKE.error()
    closed = np.hypot(*(points[-1] - points[0])) < min(CLOSED_MM, string.length / 10)
    steady = steadied(points, string.length)
    if closed:
        steady[-1] = steady[0]
    between = [len(steady) // 3, 2 * len(steady) // 3] if closed else []
    chosen = [0, *between, len(steady) - 1]
    while len(chosen) < MOST_POINTS:
        curve = shapely.LineString(curves.smooth(steady[chosen]))
        astray = shapely.distance(shapely.points(steady), curve)
        if astray.max() <= CLOSE_MM:
            break
        chosen = sorted({*chosen, int(astray.argmax())})
    return steady[chosen]


def steadied(points: Line, length_mm: float) -> Line:
    """Even out a hand's tremble along a stroke; its ends stay. (N, 2) to (M, 2) mm."""
    string = shapely.LineString(points)
    count = max(8, round(length_mm / STEP_MM))
    even = shapely.get_coordinates(
        shapely.line_interpolate_point(string, np.linspace(0, length_mm, count + 1))
    )
    half = min(round(HAND_MM / STEP_MM), count // 4)
    padded = np.vstack(
        [2 * even[0] - even[half:0:-1], even, 2 * even[-1] - even[-2 : -half - 2 : -1]]
    )
    window = np.hanning(2 * half + 3)[1:-1]
    kept = [np.convolve(padded[:, axis], window / window.sum(), "valid") for axis in (0, 1)]
    steady: Line = np.column_stack(kept)
    steady[0], steady[-1] = even[0], even[-1]
    return steady
