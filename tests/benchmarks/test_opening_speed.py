"""The opening model against the library's own solver, timed in the same run."""

import json
import os
import subprocess
import sys
from functools import partial

import numpy as np
import pytest
from support.timing import by_turns, settled

import scorecraft
from scorecraft.opening import solve
from scorecraft.opening.ligament import springs as ligaments
from scorecraft.opening.load import load_on
from scorecraft.opening.panel_size import panel_for
from scorecraft.opening.panels import panels
from scorecraft.opening.predict import predict
from scorecraft.opening.solve import jumps
from scorecraft.opening.system import system
from scorecraft.shelf import shelf
from scorecraft.tune.predict import by_number

AREA = np.pi * 150**2
GROWTH = (0.1, 0.1, 0.0)


def scattered(count, length, seed=2):
    random = np.random.default_rng(seed)
    lines = []
    for angle in random.uniform(0, np.pi, count):
        step = length / 2 * np.array([np.cos(angle), np.sin(angle)])
        middle = random.uniform(-200, 200, 2)
        lines.append(np.array([middle - step, middle + step]))
    return lines


def turned(line, angle):
    c, s = np.cos(angle), np.sin(angle)
    return line @ np.array([[c, s], [-s, c]])


def leaf_crown(count=8, veins=4, radius=26.0, length=58.0, width=24.0):
    """Leaves about the crown: two outlines that meet, a midrib, and curved veins from it."""
    share = np.linspace(0, 1, 40)
    edge = np.column_stack([width / 2 * np.sin(np.pi * share**0.8), length * share])
    leaf = [(9.0, np.array([[0.0, 0], [0, 0.9 * length]]))]
    leaf += [(6.0, edge * [side, 1] + [0.05 * width * side, 0]) for side in (-1, 1)]
    for foot in np.linspace(0.1, 0.65, veins) * length:
        out = np.linspace(0, 0.6 * np.interp(foot + 6, edge[:, 1], edge[:, 0]), 12)
        vein = np.column_stack([out, foot + out + out**2 / width])
        leaf += [(3.0, vein * [side, 1]) for side in (-1, 1)]
    lines, depths = [], []
    for k in range(count):
        for depth, line in leaf:
            lines.append(turned(line + np.array([0, radius]), 2 * np.pi * k / count))
            depths.append(depth)
    return lines, np.array(depths)


def library_solve():
    """A pattern of 2 000 panels: its lines, and one np.linalg.solve of its matrix."""
    lines = scattered(50, 80.0)
    matrix = system(lines, np.full(50, 6.0), 2.0, turn=1).matrix
    matrix[np.diag_indices(len(matrix))] += 0.05
    side = np.ones(len(matrix))
    assert 3800 < len(matrix) < 4400
    return lines, lambda: np.linalg.solve(matrix, side)


def whole_pattern():
    """Seconds for 2 000 panels, matrix, springs, contact and all; and of one library solve."""
    lines, library = library_solve()
    whole = lambda: solve(lines, 6.0, strain=GROWTH, area_mm2=4 * AREA, turn=1)  # noqa: E731
    return by_turns(whole, library, turns=1)


def by_parts(count):
    """Seconds to solve an n-fold pattern by its parts, and whole."""
    lines, depth = leaf_crown(count, veins=2)
    equations = [system(lines, depth, 0.1 * count, turn) for turn in (None, 1)]
    parts = equations[0].panels
    assert equations[0].turn.count == count
    assert 1900 < len(parts) < 2400
    load, springs = load_on(parts, GROWTH), ligaments(equations[0].depths(depth), 12.0)
    answers = [jumps(which, springs, load, area_mm2=AREA) for which in equations]
    np.testing.assert_allclose(answers[0].jumps, answers[1].jumps, atol=1e-8, rtol=0)
    parts_alone, whole = (partial(jumps, each, springs, load, area_mm2=AREA) for each in equations)
    return [*by_turns(parts_alone, turns=5), *by_turns(whole, turns=1)]


def crown_in_full():
    """Seconds to solve a leaf crown, with the panels chosen for it; and of one library solve."""
    lines, depth = leaf_crown()
    panel = panel_for(lines)
    assert 1400 < len(panels(lines, panel)) < 2000
    _, library = library_solve()
    crown = lambda: solve(lines, depth, strain=GROWTH, area_mm2=AREA, panel_mm=panel)  # noqa: E731
    return [*by_turns(crown, turns=2), *by_turns(library, turns=1)]


def seconds(*measure):
    """Take a measure in a process of its own with one thread: idle threads wait busily."""
    alone = {**os.environ, "OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1"}
    alone["PYTHONPATH"] = os.pathsep.join(sys.path)
    command = [sys.executable, __file__, *measure]
    run = subprocess.run(command, env=alone, capture_output=True, text=True)
    assert run.returncode == 0, run.stderr
    return json.loads(run.stdout)


def measured(holds, *measure):
    """Take a measure, anew while what is claimed of it does not hold."""
    return settled(lambda: seconds(*measure), holds)


def test_two_thousand_panels_cost_no_more_than_half_a_solve_on_top():
    def holds(ours, theirs):
        return ours < 1.5 * theirs

    assert holds(*measured(holds, "whole"))


@pytest.mark.parametrize("count", [5, 8, 16])
def test_turn_pays(count):
    """0.25 n^2 times faster, same answer."""

    def holds(parts, whole):
        return whole > 0.25 * count**2 * parts

    assert holds(*measured(holds, "turns", str(count)))


def test_leaf_crown_in_time():
    """The longest wait a page or a check should know: half of a library solve of 2 000 panels."""

    def holds(crown, library):
        return crown < 0.5 * library

    assert holds(*measured(holds, "crown"))


def figures(design, panel_mm):
    """What the guide tells of each number, the widest mouth, and the mean mouth of each (mm)."""
    opening = predict(design.layout, design.skin, panel_mm=panel_mm)
    parts = opening.panels
    opened = [opening.mouth_mm[own] @ parts.length[own] for own in parts.of_line]
    mean = np.array(opened) / [ends.length_mm for ends in parts.ends]
    return np.array([by_number(design.groups, each) for each in (opening.widest_mm, mean)])


@pytest.mark.parametrize("name", ["leaf-crown", "filled-cross", "lotus", "tree"])
def test_panels_chosen_are_fine_enough(name):
    """Every number of the guide within 2 % of panels a third as long (see `panel_for`)."""
    design = scorecraft.design(name)
    panel = panel_for([cut.line for cut in design.cuts])
    np.testing.assert_allclose(figures(design, panel), figures(design, panel / 3), rtol=0.02)


@pytest.mark.parametrize("name", sorted(shelf()))
def test_patterns_of_the_shelf_stay_below_two_thousand_panels(name):
    lines = [cut.line for cut in scorecraft.design(name).cuts]
    assert len(panels(lines, panel_for(lines))) < 2000


if __name__ == "__main__":
    which, *number = sys.argv[1:]
    measures = {"whole": whole_pattern, "turns": by_parts, "crown": crown_in_full}
    print(json.dumps(measures[which](*map(int, number))))
