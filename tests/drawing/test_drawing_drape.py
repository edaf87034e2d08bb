"""The drape on paper: its petals' numbers stand clear of the pattern."""

import numpy as np
import pytest
import shapely

from scorecraft.designing import make
from scorecraft.drape.drape import make_drape
from scorecraft.drawing.label_box import label_box
from scorecraft.drawing.picture import Label, Shape, walk
from scorecraft.drawing.templates.drape import drape_sheet


@pytest.mark.parametrize("loaf", [None, "round width 400mm height 120mm"])
@pytest.mark.parametrize("name", ["leaf-crown", "band-lattice", "leaf-bough", "filled-cross"])
def test_no_petal_number_lies_on_a_line(name, loaf):
    layout = make(name, loaf=loaf).layout
    drape = make_drape(layout)
    items = list(walk(drape_sheet(drape, layout).items))
    lines = [
        shapely.linestrings(line)
        for item in items
        if isinstance(item, Shape) and item.ink
        for line in item.lines
        if len(line) > 1
    ]
    labels = [item for item in items if isinstance(item, Label)]
    assert sorted(int(each.text) for each in labels) == list(range(1, len(drape.petals) + 1))
    boxes = np.array([shapely.Polygon(label_box(each, descent=0.0)) for each in labels])
    assert len(shapely.STRtree(lines).query(boxes, predicate="intersects")[0]) == 0
