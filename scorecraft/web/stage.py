"""The loaf as the page shows it: drawn in mm as on every print, with what the findings point at."""

from collections.abc import Sequence

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.lean import lean_bars
from scorecraft.drawing.loafview import CUT_COLOR, loaf_layer
from scorecraft.drawing.picture import Ink, Item, Layer, Picture, Shape
from scorecraft.drawing.plan import cut_plans, on_paper, plan_lines, rim_plan

MARGIN_MM = 6.0
"""Kept free around the loaf, which grows in the oven."""
POINTED = Ink(1.6, color="#34427a")
LEANING = Ink(0.7, color=CUT_COLOR)
MARKED = Ink(0.5, color="#8c7350", dash=(6.0, 1.2), cap="butt")


def stage(design: Design, findings: Sequence[Finding] = ()) -> Picture:
    """Draw the loaf from above at one mm a unit, and what findings point at."""
    layout = design.layout
    centre, (width, height) = frame(layout)
    plans = cut_plans(layout)
    lines = [on_paper(each, centre) for each in plans]
    return Picture(
        width,
        height,
        layout.title or design.source.name,
        f"{layout.loaf.called} from above with {len(layout.cuts)} cuts",
        (
            loaf_layer(layout, centre, 1.0, plans=plans),
            Layer("leans", tuple(lean_bars(layout, lines, ink=LEANING))),
            marks(layout, centre),
            pointers(layout, findings, centre),
        ),
        css="stage-loaf",
    )


def frame(layout: Layout) -> tuple[tuple[float, float], tuple[float, float]]:
    """Give where the crown lies on the picture and how large the picture is (mm)."""
    rim = rim_plan(layout.loaf) * layout.bake.sideways
    left, low = rim.min(axis=0) - MARGIN_MM
    right, high = rim.max(axis=0) + MARGIN_MM
    return (float(-left), float(high)), (float(right - left), float(high - low))


def marks(layout: Layout, centre: tuple[float, float]) -> Layer:
    """Draw the string lines, faint."""
    lines = tuple(on_paper(line, centre) for line in plan_lines(layout.loaf, layout.marks.lines))
    return Layer("marks", (Shape(lines, ink=MARKED, css="string"),) if lines else ())


def pointers(layout: Layout, findings: Sequence[Finding], centre: tuple[float, float]) -> Layer:
    """Draw what findings point at that is no cut, each with its finding's number."""
    items: list[Item] = []
    for number, finding in enumerate(findings):
        found = [line for line in finding.shapes if len(line) > 1]
        if found:
            lines = tuple(on_paper(line, centre) for line in plan_lines(layout.loaf, found))
            data = {"finding": str(number)}
            items.append(Shape(lines, ink=POINTED, css="pointer", data=data))
    return Layer("pointers", tuple(items))


def cuts_of(layout: Layout, finding: Finding) -> list[int]:
    """List the cuts a finding is about: those it names, else those its line of text makes."""
    place = finding.place
    if finding.cuts or finding.shapes or place is None:
        return list(finding.cuts)
    return [index for index, cut in enumerate(layout.cuts) if cut.place.line == place.line]
