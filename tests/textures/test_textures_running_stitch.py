"""Running stitches follow their digits and meet two by two."""

import numpy as np
import shapely

from scorecraft.textures.running_stitch import running_stitch

BOUNDS = (-40.0, -40.0, 40.0, 40.0)


def edges(lines):
    """Middles of all unit edges, doubled: even y and odd x is a level stitch."""
    middles = np.concatenate([line[1:] + line[:-1] for line in lines])
    return {tuple(np.rint(middle / 8).astype(int)) for middle in middles}


def test_digits_shift_the_start_of_a_line():
    found = edges(running_stitch(BOUNDS, size=8, rows="01", columns="0"))
    assert (1, 0) in found
    assert (3, 0) not in found
    assert (1, 2) not in found
    assert (3, 2) in found
    assert (0, 1) in found
    assert (0, 3) not in found
    assert (2, 1) in found


def test_every_node_joins_one_level_and_one_upright_stitch():
    found = edges(running_stitch(BOUNDS, size=8, rows="0110", columns="00101"))
    for x in range(-6, 8, 2):
        for y in range(-6, 8, 2):
            level = ((x - 1, y) in found) + ((x + 1, y) in found)
            upright = ((x, y - 1) in found) + ((x, y + 1) in found)
            assert (level, upright) == (1, 1)


def test_stitches_are_chained_to_long_steps():
    lines = running_stitch(BOUNDS, size=8, rows="01", columns="01")
    assert max(shapely.LineString(line).length for line in lines) > 80


def test_the_same_digits_draw_the_same_lines():
    one, two = (running_stitch(BOUNDS, size=8, rows="0010", columns="1") for _ in range(2))
    assert all(np.array_equal(a, b) for a, b in zip(one, two, strict=True))
