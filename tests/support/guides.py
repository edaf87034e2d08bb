"""Guides of layouts without a design: their numbers and pulls by the order of work."""

from scorecraft.bench import work_of
from scorecraft.drawing.guide.guide import guide_pages
from scorecraft.drawing.paper.panel import Told
from scorecraft.groups import groups


def guide_of(layout, *, findings=(), opening_mm=None, verdict=None, **sheets):
    made = work_of(layout)
    numbered = groups(layout, made.order)
    told = Told(layout, numbered, findings, opening_mm, verdict, made.against)
    return guide_pages(told, **sheets)
