"""The loaf of one step as the cutter sees it: turned, its cuts black, the rest faint, in a dial."""

import math
from collections.abc import Collection, Sequence

import numpy as np

from scorecraft.arrays import Line
from scorecraft.bench.steps import Run, Step
from scorecraft.curves import length, turned
from scorecraft.cuts import Layout
from scorecraft.drawing.arrow import head
from scorecraft.drawing.inks import band
from scorecraft.drawing.picture import BLACK, Ink, Item, Layer, Shape, ring
from scorecraft.drawing.plan import cut_plans, mark_plans, on_paper, rim_plans
from scorecraft.frozen import dataclass

ACCENT = "#c2331e"
"""The one colour of the card: everything about turning."""
FAINT = "#c9c9c9"
LATER = "#7d7d7d"
"""What the row's next turns bring before the blade."""
WIDTHS = {"deep": 1.0, "medium": 0.65, "shallow": 0.45}
"""Line widths by depth (mm on a loaf 50 mm wide)."""
RING = 0.90
"""Radius of the dial as a share of half the picture."""
LOAF = 0.80
"""The loaf's farthest rim, as a share of the same."""
ARROWS = 6
"""With so many cuts each shows its direction; of more only the longest of a sort."""
MANY, FINE = 20, 0.6
"""With more cuts than this their lines are thinner, by this share."""
LEAST_TURN_RAD = math.radians(0.5)
HEAD_SHARE = 0.085
"""Length of an arrowhead as a share of the picture."""
HEAD_RAD = math.radians(9)


@dataclass(frozen=True, slots=True, eq=False)
class Seen:
    """A layout's lines in plan (mm), made once for all steps."""

    layout: Layout
    cuts: Sequence[Line]
    marks: Sequence[Line]
    rims: Sequence[Line]

    @property
    def reach(self) -> float:
        """Distance of the farthest point of the rim."""
        return float(np.hypot(*self.rims[0].T).max())


def seen(layout: Layout) -> Seen:
    """Lay a layout's lines on the plan."""
    return Seen(layout, cut_plans(layout), mark_plans(layout), rim_plans(layout.loaf))


def run_picture(view: Seen, run: Run, size: float) -> Layer:
    """Draw the first step of a run in a square of `size` mm, from (0, 0).

    The cuts of its repeats are grey, and dots on the dial show where the mark stands for them.
    """
    step = run.first
    later = [pull.cut for each in run.steps[1:] for pull in each.pulls]
    drawn = _step_items(view, step, size, later)
    return Layer("step", (*drawn, *_stops(run, size), *_turn(step, run, size)))


def step_picture(view: Seen, step: Step, size: float) -> Layer:
    """Draw one step alone in a square of `size` mm, from (0, 0)."""
    return Layer("setting", _step_items(view, step, size))


def _step_items(
    view: Seen, step: Step, size: float, later: Collection[int] = ()
) -> tuple[Item, ...]:
    """Draw a step's loaf, its pulls and the dial."""
    shown = [pull.cut for pull in step.pulls]
    loaf = _loaf(view, step.table_rad, size, strong=shown, later=later)
    return (loaf, _arrows(view, step, size), *_dial(step.table_rad, size))


def marks_picture(view: Seen, size: float) -> Layer:
    """Draw the string lines on the loaf before it is cut."""
    scale, centre = _scale(view, size), (size / 2, size / 2)
    lines = tuple(on_paper(each, centre, scale) for each in view.marks)
    strings = Shape(lines, ink=Ink(0.5 * size / 50, dash=(2.2, 1.2), cap="butt"))
    return Layer("string lines", (_loaf(view, 0.0, size, strong=()), strings, *_dial(0.0, size)))


def _scale(view: Seen, size: float) -> float:
    return LOAF * size / 2 / view.reach


def _loaf(
    view: Seen,
    table_rad: float,
    size: float,
    *,
    strong: Collection[int],
    later: Collection[int] = (),
) -> Layer:
    scale, centre = _scale(view, size), (size / 2, size / 2)

    def laid(points: Line) -> Line:
        return on_paper(turned(points, table_rad), centre, scale)

    rim = Shape(tuple(laid(each) for each in view.rims), closed=True, ink=Ink(0.35 * size / 50))
    dark, soon = set(strong), set(later)
    rest = [k for k in range(len(view.cuts)) if k not in dark]
    items: list[Item] = [rim]
    for chosen, ink in (
        ([k for k in rest if k not in soon], Ink(0.22 * size / 50, color=FAINT)),
        ([k for k in rest if k in soon], Ink(0.4 * size / 50, color=LATER)),
    ):
        if chosen:
            items.append(Shape(tuple(laid(view.cuts[k]) for k in chosen), ink=ink))
    for index in sorted(dark, key=lambda k: view.layout.cuts[k].depth_mm):
        width = WIDTHS[band(view.layout.cuts[index].depth_mm)] * size / 50
        width *= FINE if len(dark) > MANY else 1.0
        ink = Ink(width, cap="butt" if len(dark) > ARROWS else "round")
        items.append(Shape((laid(view.cuts[index]),), ink=ink, data={"cut": str(index)}))
    return Layer("loaf", tuple(items))


def _arrows(view: Seen, step: Step, size: float) -> Layer:
    """Show the pull on every cut, or on the longest of each sort where there are many."""
    scale, centre = _scale(view, size), (size / 2, size / 2)
    longest: dict[tuple[int, str], int] = {}
    lines = []
    for k, pull in enumerate(step.pulls):
        points = on_paper(turned(view.cuts[pull.cut], step.table_rad), centre, scale)
        lines.append(points[::-1] if pull.backward else points)
        cut = view.layout.cuts[pull.cut]
        best = longest.setdefault((cut.family, cut.part), k)
        if length(lines[k]) > length(lines[best]) + 0.1:
            longest[cut.family, cut.part] = k
    chosen = range(len(lines)) if len(lines) <= ARROWS else sorted(longest.values())
    cuts = view.layout.cuts
    pulled = [k for k in chosen if not cuts[step.pulls[k].cut].severs]
    return Layer("pull", tuple(_head(lines[k], size) for k in pulled))


def _head(points: Line, size: float) -> Shape:
    """Draw an arrowhead on a stroke, towards its end."""
    wide = min(HEAD_SHARE * size, 0.3 * length(points))
    return Shape((head(points, 0.72, wide),), closed=True, fill=BLACK)


def _dial(table_rad: float, size: float) -> list[Item]:
    """Draw the table's edge, ticks every 30 degrees, and the mark on the table."""
    radius, middle = RING * size / 2, size / 2
    edge = Shape((ring(middle, middle, radius),), closed=True, ink=Ink(0.2 * size / 50))
    ticks = []
    for hour in range(12):
        inner = radius * (0.955 if hour % 3 else 0.93)
        ends = [_at(middle, hour * math.pi / 6, r) for r in (inner, radius)]
        ticks.append(np.array(ends))
    return [edge, Shape(tuple(ticks), ink=Ink(0.2 * size / 50, cap="butt")), _mark(table_rad, size)]


def _mark(table_rad: float, size: float) -> Shape:
    """Draw the mark: a triangle on the edge that points to the crown."""
    radius, middle = RING * size / 2, size / 2
    half = math.radians(5.5)
    corners = [
        _at(middle, table_rad, 0.90 * radius),
        _at(middle, table_rad - half, 1.02 * radius),
        _at(middle, table_rad + half, 1.02 * radius),
    ]
    return Shape((np.array(corners),), closed=True, fill=ACCENT)


def _stops(run: Run, size: float) -> list[Shape]:
    """Dot the dial where the mark stands for the repeats of a step."""
    radius, middle = RING * size / 2, size / 2
    dots = tuple(ring(*_at(middle, step.table_rad, radius), 0.016 * size) for step in run.steps[1:])
    return [Shape((dot,), closed=True, fill=ACCENT) for dot in dots]


def _at(middle: float, clockwise: float, radius: float) -> tuple[float, float]:
    """Find a point of the dial on the paper by its turntable angle."""
    return (middle + radius * math.sin(clockwise), middle - radius * math.cos(clockwise))


def _turn(step: Step, run: Run, size: float) -> list[Item]:
    """Draw the arrow along the edge: where the mark came from, or how the table spins."""
    turn = step.spin_rad or (run.steps[1].turn_rad if run.times > 1 else step.turn_rad)
    if abs(turn) < LEAST_TURN_RAD:
        return []
    full = math.copysign(min(abs(turn), math.radians(330)), turn)
    begin = step.table_rad if run.times > 1 or step.spin_rad else step.table_rad - full
    return _curved_arrow(begin, full, size)


def _curved_arrow(begin: float, turn: float, size: float) -> list[Item]:
    radius, middle = 0.985 * size / 2, size / 2
    tip_rad = math.copysign(min(HEAD_RAD, abs(turn) / 2), turn)
    angles = np.linspace(begin, begin + turn - tip_rad, 60)
    arc = np.array([_at(middle, float(angle), radius) for angle in angles])
    half = 0.045 * size / 2
    tip = np.array(
        [
            _at(middle, begin + turn, radius),
            _at(middle, begin + turn - tip_rad, radius + half),
            _at(middle, begin + turn - tip_rad, radius - half),
        ]
    )
    return [
        Shape((arc,), ink=Ink(1.1 * size / 50, color=ACCENT, cap="butt")),
        Shape((tip,), closed=True, fill=ACCENT),
    ]
