"""Each texture repeats as it is known to: its plane symmetry group and its line length per area.

Groups of the named traditional patterns: T. Urabe, "Seventeen kinds of wallpaper patterns",
University of Tokyo. Where a row says "derived", the group was worked out from the construction.
Lengths per area are derived from the construction: edges of one cell over its area.
"""

from dataclasses import dataclass, field
from importlib import import_module
from math import pi, radians, sin, sqrt

import numpy as np
import pytest
import shapely

from scorecraft.regions import clip

SIZE = 7.0


def turn(degrees, about=(0.0, 0.0)):
    c, s = np.cos(radians(degrees)), np.sin(radians(degrees))
    linear = np.array([[c, -s], [s, c]])
    return linear, np.array(about) - linear @ np.array(about)


def mirror(degrees, at=(0.0, 0.0), glide=0.0):
    """Mirror in a line at so many degrees from +x through a point, gliding along it."""
    c, s = np.cos(radians(2 * degrees)), np.sin(radians(2 * degrees))
    linear = np.array([[c, s], [s, -c]])
    along = np.array([np.cos(radians(degrees)), np.sin(radians(degrees))])
    return linear, np.array(at) - linear @ np.array(at) + glide * along


def shift(vector):
    return np.eye(2), np.array(vector, dtype=float)


@dataclass(frozen=True)
class Known:
    """What is known of a texture, in units of its size."""

    group: str
    cell: tuple
    generators: dict
    broken: dict
    length: float
    own: dict = field(default_factory=dict)


ROOT3 = sqrt(3)
SIXFOLD = {"sixth turn": turn(60), "mirror": mirror(90)}
WIDE, TALL = sin(radians(30)), np.cos(radians(30))

KNOWN = {
    # Urabe: p6m for the hemp leaf
    "hemp_leaf": Known(
        "p6m", ((1, 0), (0.5, ROOT3 / 2)), SIXFOLD, {"quarter turn": turn(90)}, 4 + 2 * ROOT3
    ),
    # Urabe: cm for overlapping waves; outer arcs only
    "waves": Known(
        "cm",
        ((2, 0), (1, 0.5)),
        {"mirror": mirror(90), "glide": mirror(90, at=(0.5, 0), glide=0.5)},
        {"half turn": turn(180)},
        2.1137,
        {"rings": 1},
    ),
    # Urabe: p4m for interlocked circles
    "circles": Known(
        "p4m",
        ((1, 1), (1, -1)),
        {"quarter turn": turn(90), "mirror": mirror(90), "diagonal": mirror(45)},
        {"sixth turn": turn(60)},
        pi,
    ),
    # derived: regular hexagons
    "tortoiseshell": Known(
        "p6m",
        ((ROOT3, 0), (ROOT3 / 2, 1.5)),
        SIXFOLD,
        {"sixth turn about a corner": turn(60, about=(0, 1))},
        2 / ROOT3,
    ),
    # Urabe: p6 for the woven bands; their bare middle lines have mirrors too, p6m (derived)
    "bamboo": Known(
        "p6m",
        ((2, 0), (1, ROOT3)),
        SIXFOLD,
        {"sixth turn about a crossing": turn(60, about=(ROOT3 / 2, 0.5))},
        ROOT3,
    ),
    # derived: triangular lattice
    "triangles": Known(
        "p6m",
        ((1, 0), (0.5, ROOT3 / 2)),
        {**SIXFOLD, "third turn about a triangle": turn(120, about=(0.5, ROOT3 / 6))},
        {"sixth turn about a triangle": turn(60, about=(0.5, ROOT3 / 6))},
        2 * ROOT3,
    ),
    # Urabe: cmm for linked lozenges; side 1, tips of 60 degrees, inner lozenges of half the size
    "lozenges": Known(
        "cmm",
        ((WIDE, TALL), (2 * WIDE, 0)),
        {"upright mirror": mirror(90), "level mirror": mirror(0)},
        {"quarter turn": turn(90)},
        (2 + 4 * 0.5) / sin(radians(60)),
        {"angle": radians(60), "inner": 0.5},
    ),
    # derived: square lattice
    "crosshatch": Known(
        "p4m",
        ((sqrt(0.5), sqrt(0.5)), (-sqrt(0.5), sqrt(0.5))),
        {"quarter turn": turn(90), "mirror": mirror(90)},
        {"sixth turn": turn(60)},
        2.0,
        {"angle": radians(90)},
    ),
    # derived: cells alternate along rows and columns, mirrors through their middles
    "basket": Known(
        "p4g",
        ((1, 1), (1, -1)),
        {"quarter turn about a corner": turn(90, about=(0.5, 0.5)), "mirror": mirror(90)},
        {"quarter turn about a square": turn(90), "mirror at a side": mirror(90, at=(0.5, 0))},
        2.0,
        {"strokes": 3},
    ),
    # derived: mirrors along the columns' edges only, half turns about the strokes
    "herringbone": Known(
        "pmg",
        ((2, 0), (0, 0.5)),
        {"mirror": mirror(90, at=(0.5, 0)), "half turn": turn(180)},
        {"level mirror": mirror(0), "mirror in a column": mirror(90)},
        (1 - 0.5 / 2) / sin(radians(45)) / 0.5,
        {"gap": 0.5 * SIZE, "lean": radians(45)},
    ),
    # derived: half turns only; a key of 16 steps in every 4 by 4
    "key_fret": Known(
        "p2", ((4, 0), (0, 4)), {"half turn": turn(180)}, {"mirror": mirror(90)}, 1.0
    ),
    # derived: every line of stitches starts alike; half of the grid's edges
    "running_stitch": Known(
        "p4m",
        ((2, 0), (0, 2)),
        {"quarter turn": turn(90, about=(0.5, 0.5)), "mirror": mirror(90, at=(0.5, 0))},
        {"one step": shift((1, 0)), "quarter turn about a node": turn(90)},
        1.0,
        {"rows": "0", "columns": "0"},
    ),
    # derived: upright mirrors through the scales, glides between them
    "scales": Known(
        "cm",
        ((2, 0), (1, 1)),
        {"mirror": mirror(90), "glide": mirror(90, at=(0.5, 0), glide=1)},
        {"half turn": turn(180)},
        pi / 2,
    ),
    # derived: symmetric under any shift along the lines
    "hatch": Known(
        "pmm and every shift along the lines",
        ((1, 0), (0, 0.37)),
        {"mirror": mirror(90), "half turn": turn(180)},
        {"quarter turn": turn(90)},
        1.0,
    ),
}


def drawn(name):
    own = KNOWN[name].own
    texture = getattr(import_module(f"scorecraft.textures.{name}"), name)
    reach = 11 * SIZE
    return texture((-reach, -reach, reach, reach), size=SIZE, **own)


def distance(name, element):
    """Largest distance between the lines and their image in a window, in units of the size."""
    lines = drawn(name)
    linear, move = element
    image = [line @ linear.T + move * SIZE for line in lines]
    window = shapely.box(-3.1 * SIZE, -2.7 * SIZE, 3.3 * SIZE, 3.9 * SIZE)
    return max(furthest(lines, image, window), furthest(image, lines, window)) / SIZE


def furthest(lines, others, window):
    inside = [shapely.LineString(line) for line in clip(lines, window, shortest=0).lines]
    points = shapely.points(shapely.get_coordinates(shapely.segmentize(inside, SIZE / 8)))
    tree = shapely.STRtree([shapely.LineString(line) for line in others])
    return tree.query_nearest(points, return_distance=True)[1].max()


def cases(kind):
    for name, known in KNOWN.items():
        elements = getattr(known, kind)
        if kind == "generators":
            elements = {f"shift {i}": shift(v) for i, v in enumerate(known.cell)} | elements
        for label, element in elements.items():
            yield pytest.param(name, element, id=f"{name}-{known.group}-{label}")


@pytest.mark.parametrize(("name", "element"), [*cases("generators")])
def test_texture_keeps_the_operations_of_its_group(name, element):
    assert distance(name, element) <= 1e-6


@pytest.mark.parametrize(("name", "element"), [*cases("broken")])
def test_an_operation_outside_the_group_is_seen_to_break_it(name, element):
    assert distance(name, element) > 0.02


@pytest.mark.parametrize("name", KNOWN)
def test_line_length_per_area(name):
    """Any parallelogram of whole cells holds whole cells' worth of line, wherever it lies."""
    known = KNOWN[name]
    counts = [max(1, round(5 / np.hypot(*v))) for v in known.cell]
    a, b = (n * np.array(v, dtype=float) * SIZE for n, v in zip(counts, known.cell, strict=True))
    corner = np.array([0.137, 0.211]) * SIZE - (a + b) / 2
    window = shapely.Polygon([corner, corner + a, corner + a + b, corner + b])
    inside = clip(drawn(name), window, shortest=0).lines
    length = sum(shapely.LineString(line).length for line in inside)
    assert length / window.area * SIZE == pytest.approx(known.length, rel=5e-3)


def test_inner_waves_have_the_lengths_of_what_shows():
    """Arcs at 1, 2/3 and 1/3 of the radius show over 2.1137, 1.2643 and 0.6463 radii (derived)."""
    texture = import_module("scorecraft.textures.waves").waves
    lines = texture((-1, -1, 1, 1), size=30.0, rings=3)
    lengths = {round(shapely.LineString(line).length / 30, 2) for line in lines}
    assert lengths == {2.11, 1.26, 0.65}


def test_neighbouring_waves_meet_on_the_wave_in_front():
    """Outer arcs end at (+-0.8708, 0.4916) radii from their middle (derived)."""
    texture = import_module("scorecraft.textures.waves").waves
    arcs = texture((-1, -1, 1, 1), size=1.0, rings=1)
    at_origin = [arc for arc in arcs if np.allclose((arc[0] + arc[-1]) / 2, (0, 0.4916), atol=1e-4)]
    assert len(at_origin) == 1
    assert sorted(abs(at_origin[0][[0, -1], 0])) == pytest.approx([0.8708, 0.8708], abs=1e-4)


def test_every_texture_is_known():
    from pathlib import Path

    import scorecraft.textures

    room = Path(scorecraft.textures.__file__).parent
    files = {path.stem for path in room.glob("*.py")} - {"__init__", "lattice", "chain"}
    assert files == set(KNOWN)
