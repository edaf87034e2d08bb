"""Panels as fine as makes no matter."""

import numpy as np

from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.panels import panels

SLASH = np.array([[-30.0, 0.0], [30.0, 0.0]])


def test_long_patterns_get_longer_panels():
    assert panel_for([SLASH]) == panel_for([]) == 1.0
    many = [SLASH + np.array([0, k]) for k in range(150)]
    assert 150 * 60 / 1300 < panel_for(many) < 1.15 * 150 * 60 / 1300
    assert len(panels(many, panel_for(many))) < 1350
    crumbs = [0.1 * line for line in many]
    assert len(panels(crumbs * 2, panel_for(crumbs * 2))) < 1350


def test_pieces_between_nodes_count():
    """A comb: every tooth ends a panel of the back, so the back has more panels than its length."""
    teeth = [np.array([[x, 0.0], [x, 4.0]]) for x in np.arange(-29.9, 30, 0.4)]
    lines = [SLASH, *teeth]
    assert len(panels(lines, panel_for(lines, 500.0))) <= 500
    assert len(panels(lines, panel_for(lines, 900.0))) <= 900


def test_fewer_panels_are_longer():
    many = [SLASH + np.array([0, k]) for k in range(100)]
    assert panel_for(many, 700.0) > panel_for(many, 1400.0) > 1.0
