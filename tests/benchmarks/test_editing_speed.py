"""A gesture costs next to nothing beside laying the loaf out, which has to follow it anyway.

Measured over all statements of the shelf: 0.3 ms on average, 5 ms for the slowest drags (letters, a
sheaf); laying out takes 12 ms on average.
"""

import pytest
from support.timing import ratio, spent

from scorecraft.editing import gestures as g
from scorecraft.editing.handles import handles
from scorecraft.editing.scene import scene
from scorecraft.errors import ScorecraftError
from scorecraft.shelf import from_file, shelf

TRIED = [*shelf().values()][::3]
"""Every third pattern of the shelf."""
MEAN, SLOWEST = 0.1, 0.9
"""So much of the mean time of one layout gestures take at most, on average and each."""


@pytest.fixture(scope="module")
def moves():
    """Every scene that is tried with its gestures."""
    found = []
    for path in TRIED:
        made = scene(from_file(path).text, folder=path.parent)
        found += [(made, gesture) for gesture in gestures(made)]
    assert len(found) > 150
    return found


def gestures(found):
    """A move, a turn, a repeat and the drag of every handle of each statement."""
    for line, runs in found.runs.items():
        if not runs or not found.cuts[runs[0]]:
            continue
        held = found.plan(found.middle(runs[0]))
        to = (held[0] + 7, held[1] + 4)
        yield g.Move(line, way="own", taken=tuple(held), to=to)
        yield g.Turn(line, way="own", by_rad=0.3)
        yield g.Repeat(line, way="own", count=5)
        for handle in handles(found, runs[0]):
            yield g.Drag(line, way="own", name=handle.name, taken=tuple(held), to=to)


def move(found, gesture):
    try:
        g.change(found, gesture)
    except ScorecraftError as error:
        assert error.message


def laid_out():
    for path in TRIED:
        scene(from_file(path).text, folder=path.parent)


def test_gestures_cost_a_tenth_of_one_layout_on_average(moves):
    most = MEAN * len(moves) / len(TRIED)
    assert ratio(lambda: [move(*each) for each in moves], laid_out, most) <= most


def test_the_slowest_gesture_costs_less_than_one_layout(moves):
    slowest = max(moves, key=lambda each: min(spent(lambda: move(*each)) for _ in range(2)))
    most = SLOWEST / len(TRIED)
    assert ratio(lambda: move(*slowest), laid_out, most) <= most
