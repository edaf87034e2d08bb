"""The loaf as the page shows it: drawn in mm as on every print, and what the findings point at."""

from collections.abc import Sequence
from functools import lru_cache

from scorecraft.checks.finding import Finding
from scorecraft.cuts import Layout
from scorecraft.designing import Design
from scorecraft.drawing.lean import lean_bars
from scorecraft.drawing.loafview import CUT_COLOR, loaf_layer
from scorecraft.drawing.picture import Ink, Layer, Picture, Shape
from scorecraft.drawing.plan import cut_plans, on_paper, plan_lines, rim_plan
from scorecraft.drawing.svg import path_data, svg
from scorecraft.json_data import JsonObject

MARGIN_MM = 6.0
"""Kept free around the loaf, which grows in the oven."""
LEANING = Ink(0.7, color=CUT_COLOR)
MARKED = Ink(0.5, color="#8c7350", dash=(6.0, 1.2), cap="butt")


@lru_cache(maxsize=8)
def drawn(design: Design) -> str:
    """Draw the loaf from above as SVG; the same design is not drawn twice."""
    return svg(stage(design), text="text", ids="loaf")


def stage(design: Design) -> Picture:
    """Draw the loaf from above at one mm a unit, with a layer for what findings point at."""
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
            loaf_layer(layout, centre, 1.0, plans=plans, under=(marks(layout, centre),)),
            Layer("leans", tuple(lean_bars(layout, lines, ink=LEANING))),
            Layer("pointers", ()),
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


def pointers(design: Design, findings: Sequence[Finding]) -> list[JsonObject]:
    """Tell what findings point at that is no cut, as the data of a path, each with its number."""
    loaf, (centre, _) = design.layout.loaf, frame(design.layout)
    told: list[JsonObject] = []
    for number, finding in enumerate(findings):
        found = [line for line in finding.shapes if len(line) > 1]
        if found:
            lines = [on_paper(line, centre) for line in plan_lines(loaf, found)]
            told.append({"finding": number, "path": path_data(lines, closed=False)})
    return told


def cuts_of(layout: Layout, finding: Finding) -> list[int]:
    """List the cuts a finding is about: those it names, else those its line of text makes."""
    place = finding.place
    if finding.cuts or finding.shapes or place is None:
        return list(finding.cuts)
    return [index for index, cut in enumerate(layout.cuts) if cut.place.line == place.line]
