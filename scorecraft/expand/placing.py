"""Placings: each turns a scope into the scopes its block runs in."""

import math
from collections.abc import Callable, Iterator
from dataclasses import replace

import numpy as np
import shapely

from scorecraft import regions
from scorecraft.arrays import Floats, Line
from scorecraft.expand import telling as say
from scorecraft.expand.draw import ON_SHEET
from scorecraft.expand.frame import Frame
from scorecraft.expand.limits import FARTHEST_MM
from scorecraft.expand.read import Values
from scorecraft.expand.scope import Scope, Wander
from scorecraft.language.tree import Figure
from scorecraft.limits import GRID_MARGIN_MM

Reader = Callable[[Scope], Values]
"""Reads the statement's values as they are in a scope (a share depends on where it stands)."""

Placer = Callable[[Reader, Scope], Iterator[Scope]]
FAR_MM = 2 * FARTHEST_MM


def at(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Go to one place."""
    values = read(scope)
    frame = scope.frame.moved(values["x"], values["y"])
    if values["radius"] or values["angle"]:
        frame = frame.polar(values["radius"], values["angle"], values["facing"])
    yield scope.at(frame.turned(values["turn"]).scaled(values["scale"]))


def around(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Copy about the origin, evenly: all the way around, or from one angle to another."""
    values = read(scope)
    for k in range(values["count"]):
        angle = angle_of(values, k)
        there = read(scope.at(scope.frame.turned(angle), k))
        yield scope.at(scope.frame.polar(there["radius"], angle, there["facing"]), k)


def angle_of(values: Values, number: int) -> float:
    """Give the direction of one copy of an `around` (turntable radians)."""
    count, start = values["count"], values["from"]
    end = values.get("to", start + math.tau)
    whole = abs(abs(end - start) - math.tau) < 1e-9
    return float(start + (end - start) * number / (count if whole else max(1, count - 1)))


def row(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Copy along a straight line, centred on the origin."""
    values = read(scope)
    count, spacing, angle = values["count"], values["spacing"], values["angle"]
    for k in range(count):
        way = (k - (count - 1) / 2) * spacing
        frame = scope.frame.moved(way * math.sin(angle), way * math.cos(angle))
        yield scope.at(frame.turned(values["turn"]), k)


def mirror(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Run as it is, then mirrored."""
    values = read(scope)
    yield scope.at(scope.frame, 0)
    yield scope.at(scope.frame.mirrored(values["angle"]), 1)


def repeat(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Run again and again, each time shifted, turned and scaled one step further."""
    values = read(scope)
    frame = scope.frame
    x, y = values["shift"]
    for k in range(values["count"]):
        yield scope.at(frame, k)
        frame = frame.moved(x, y).turned(values["turn"]).scaled(values["scale"])


def wedges(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Run once in each sector, facing outward and clipped to it."""
    values = read(scope)
    count = values["count"]
    half = math.pi / count
    sector = regions.wedge(start=-half, end=half, inner=0.0, outer=FAR_MM)
    for k in range(count):
        frame = scope.frame.turned(values["turn"] + 2 * half * k)
        yield scope.at(frame, k).within(shapely.transform(sector, frame.place))


def vary(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Let the figures of the block wander a little."""
    values = read(scope)
    wander = Wander(values["length"], values["turn"], values["seed"])
    yield replace(scope, wander=wander)


def grid(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Copy over the places of a lattice that lie in a region of the sheet."""
    values = read(scope)
    region = values["within"]
    if region is None:
        region = regions.whole(scope.loaf, margin=GRID_MARGIN_MM)
    frame = scope.frame.turned(values["turn"])
    places = lattice(values, frame, region)
    inside = shapely.contains_xy(region, *frame.place(places).T) if len(places) else []
    for k, place in enumerate(places[inside]):
        yield scope.at(frame.moved(*place), k)


def lattice(values: Values, frame: Frame, region: shapely.Geometry) -> Line:
    """Give the places of a lattice, row by row, that can reach a region; (N, 2) mm in the frame.

    Raises ScorecraftError where they are too many.
    """
    kind, spacing = values["lattice"], values["spacing"]
    high = {"square": 1.0, "diamond": 0.5, "hexagon": math.sqrt(3) / 2}[kind] * spacing
    columns, rows = values["columns"], values["rows"]
    if not (columns and rows):
        local = shapely.transform(region, frame.local)
        if local.is_empty:
            return np.zeros((0, 2))
        far = float(np.abs(np.array(local.bounds)).max())
        columns = columns or 2 * math.ceil(far / spacing) + 1
        rows = rows or 2 * math.ceil(far / high) + 1
    if columns * rows > 1_000_000:
        raise say.FINE_LATTICE.error()
    across = (np.arange(columns) - (columns - 1) / 2) * spacing
    away = ((rows - 1) / 2 - np.arange(rows)) * high
    # every other row, counted from the middle one, stands half a space aside
    odd = np.abs(np.arange(rows) - (rows - 1) // 2) % 2
    aside = odd * (0.0 if kind == "square" else spacing / 2)
    return np.column_stack([(across[None, :] + aside[:, None]).ravel(), np.repeat(away, columns)])


def along(read: Reader, scope: Scope) -> Iterator[Scope]:
    """Copy along a path in equal steps, facing along it, to a side of it, or out from the crown."""
    values = read(scope)
    line, gone = values["line"], values["gone"]
    for k, here in enumerate(stations(values, bool(np.allclose(line[0], line[-1])))):
        x, y = (float(np.interp(here, gone, each)) for each in line.T)
        ends = np.clip([here - LOOK_MM, here + LOOK_MM], 0.0, gone[-1])
        if np.allclose(line[0], line[-1]):
            ends = np.mod([here - LOOK_MM, here + LOOK_MM], gone[-1])
        dx, dy = np.diff([np.interp(ends, gone, each) for each in line.T])[:, 0]
        frame = scope.frame.moved(x, y).turned(math.atan2(dx, dy))
        yield scope.at(turned_aside(frame, values["facing"], k), k)


LOOK_MM = 0.05
"""A path's direction at a place is that between two points so far before and after it."""


def gone_along(path: Figure, line: Line, scope: Scope) -> Floats:
    """Distances (mm) along a path from its start to each of its points.

    Those along the rim are true lengths on the dough, as a tape measures them there.
    """
    if path.word in ON_SHEET:
        sheet = scope.frame.place(line)
        steps = scope.loaf.lengths_on_dough(list(np.stack([sheet[:-1], sheet[1:]], axis=1)))
    else:
        steps = np.hypot(*np.diff(line, axis=0).T)
    return np.concatenate([[0.0], np.cumsum(steps)])


def stations(values: Values, closed: bool) -> Floats:
    """Give the distances (mm) from a path's start at which copies stand.

    On a closed path steps are shared out evenly; on an open one with a distance from copy to copy
    what is left is halved between its ends. Raises ScorecraftError without count and distance.
    """
    whole, every, count = float(values["gone"][-1]), values.get("every", 0.0), values["count"]
    if not (count or every):
        raise say.NO_STEP.error()
    if closed:
        count = count or max(1, round(whole / every))
        even: Floats = np.arange(count, dtype=np.float64) * (whole / count)
        return even
    if count:
        ends = (0.0, whole) if count > 1 else (whole / 2, whole / 2)
        return np.linspace(*ends, count, dtype=np.float64)
    count = int(whole / every + 1e-9) + 1
    return np.asarray((whole - (count - 1) * every) / 2 + np.arange(count) * every)


def turned_aside(frame: Frame, facing: str, k: int) -> Frame:
    """Turn a frame that looks along a path to where its figure faces, as copy `k`."""
    if facing == "alternate":
        return (frame.mirrored(0.0) if k % 2 else frame).turned(-math.pi / 2)
    if facing in ("out", "in"):  # the side of the path that is away from the crown, or toward it
        left = bool(frame.axes[:, 0] @ frame.origin < 0)
        facing = "left" if left == (facing == "out") else "right"
    return frame.turned({"along": 0.0, "left": -math.pi / 2, "right": math.pi / 2}[facing])


PLACERS: dict[str, Placer] = {
    "at": at, "around": around, "row": row, "mirror": mirror, "repeat": repeat, "wedges": wedges,
    "vary": vary, "grid": grid, "along": along,
}  # fmt: skip
