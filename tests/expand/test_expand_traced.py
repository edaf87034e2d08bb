"""Every cut knows the statement it comes from, what that stands in, its copy and its frame."""

import numpy as np

from scorecraft.expand import expand
from scorecraft.expand.traced import traced
from scorecraft.language.parse import parse

TEXT = """loaf round width 220mm height 95mm
define pair size=20mm:
    mirror:
        at x 10mm:
            slash size turn 20deg
around 3 radius 30mm:
    pair size 30mm
    fill disc radius 8mm with hatch size 5mm
inside disc radius 40mm:
    slash 120mm
"""


def test_origins_are_those_of_the_cuts():
    found = traced(parse(TEXT), TEXT)
    assert len(found.origins) == len(found.layout.cuts)
    for cut, step in zip(found.layout.cuts, found.origins, strict=True):
        assert step.statement.place == cut.place and step in found.steps
    chains = [
        [(each.statement.word, each.copy) for each in step.chain]
        for step in found.origins
        if step.statement.place.line == 5
    ]
    assert chains == [
        [("around", 0), ("pair", k), ("mirror", 0), ("at", side), ("slash", 0)]
        for k in range(3)
        for side in range(2)
    ]


def test_the_frame_is_that_the_figure_was_drawn_in():
    found = traced(parse(TEXT), TEXT)
    for cut, step in zip(found.layout.cuts, found.origins, strict=True):
        if step.statement.place.line == 5:
            drawn = step.drawn.frame.place(np.array([[0.0, -15.0], [0.0, 15.0]]))
            assert np.abs(drawn - cut.line).max() < 1e-9
    clipped = found.origins[-1]
    assert clipped.statement.place.line == 10 and clipped.drawn.frame.origin.tolist() == [0, 0]
    assert np.ptp(found.layout.cuts[-1].line[:, 1]) < 81


def test_tracing_lays_out_the_same():
    plain, layout = expand(parse(TEXT), TEXT), traced(parse(TEXT), TEXT).layout
    for one, other in zip(plain.cuts, layout.cuts, strict=True):
        assert np.array_equal(one.line, other.line) and one.depth_mm == other.depth_mm
