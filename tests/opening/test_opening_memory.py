"""All that the model holds at once is within what its largest number of panels stands for."""

import tracemalloc

import numpy as np
import pytest

from scorecraft.errors import UsageError
from scorecraft.opening import contact
from scorecraft.opening.contact import BYTES, OPENING_MOST_PRESSED_MB
from scorecraft.opening.load import load_on
from scorecraft.opening.solve import opened, solve
from scorecraft.opening.system import OPENING_MOST_PANELS, system

EQUATIONS = 64
"""Bytes a squared panel (over the count of turns): the equations and their factors."""
ODD = 6e3
"""Bytes a panel: strips, batches, and all that does not grow with the square of the panels."""


def spokes(count, reach):
    """Rows of cuts upright and level, the ones pulled, the others pressed, about the crown."""
    upright = [np.array([[20.0 + 6 * k, 4.0], [20.0 + 6 * k, 4.0 + reach]]) for k in range(6)]
    level = [np.array([[70.0, 4.0 + 6 * k], [70.0 + reach, 4.0 + 6 * k]]) for k in range(6)]
    rows = upright + level
    turns = np.arange(count) * (2 * np.pi / count)
    return [
        row @ np.array([[np.cos(t), np.sin(t)], [-np.sin(t), np.cos(t)]])
        for t in turns
        for row in rows
    ]


@pytest.mark.parametrize("count", [1, 2, 3, 4])
@pytest.mark.parametrize("keep", [False, True])
def test_what_is_held_at_once_is_counted(count, keep):
    lines = spokes(count, 60.0 / count**0.5)
    depth = np.full(len(lines), 6.0)
    panel, held = 0.9, 1.0
    panels = len(system(lines, depth, panel, held=held).panels)
    tracemalloc.start()
    try:
        if keep:
            equations = system(lines, depth, panel, held=held)
            load = load_on(equations.panels, (0.1, -0.12, 0.0))
            done = opened(equations, depth, load, skin_mm=12.0, area_mm2=None)
        else:
            done = solve(lines, depth, strain=(0.1, -0.12, 0.0), area_mm2=None, panel_mm=panel)
        peak = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert panels > 500 and (done.gap_mm == 0).sum() > 20  # there is contact
    pressed = BYTES * 2 * panels * int((done.gap_mm == 0).sum())
    assert peak < EQUATIONS * panels**2 / count + pressed + ODD * panels


def test_the_limits_together_are_as_promised():
    most = OPENING_MOST_PANELS
    assert EQUATIONS * most**2 + 1e6 * OPENING_MOST_PRESSED_MB + ODD * most <= 800e6


def test_more_pressed_shut_than_there_is_room_for_is_refused(monkeypatch):
    monkeypatch.setattr(contact, "OPENING_MOST_PRESSED_MB", 1.0)
    lines = spokes(1, 60.0)
    with pytest.raises(UsageError, match="pressed shut"):
        solve(lines, 6.0, strain=(0.1, -0.12, 0.0), panel_mm=1.0)
