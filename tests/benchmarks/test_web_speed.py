"""An edit on the page costs the server little more than the design itself.

Measured in a process of its own with one thread: idle threads that wait busily would count too.

Measured in Chromium on two quiet processors, nine edits of each pattern of the shelf: the page
answers 0.25 to 0.29 s after the command; from the edit to the picture on the screen the median is
48 ms (overlapping-slashes) to 129 ms (sunflower; the slowest single one of all 183 ms), to all
findings of the opening model 122 to 352 ms (the slowest single one, of band-lattice, 548 ms). These
openings are a rough look with fewer panels where a pattern is large; the full answer follows half a
second later.
"""

import os
import subprocess
import sys

import pytest
from support.timing import by_turns, settled


def measure(name):
    """Time a design with all its findings, and the two answers that an edit asks for."""
    from scorecraft import design
    from scorecraft.shelf import find_source
    from scorecraft.web.tasks import remembered, work

    text = find_source(name).text
    request = {"text": text, "name": f"{name}.score", "place": "shelf", "folder": None}

    def told():
        assert design(name).findings is not None

    def edited():
        remembered.cache_clear()
        for task in ("design", "opening"):
            assert work(task, request).status == 200

    def drawn():
        remembered.cache_clear()
        assert work("design", request).status == 200

    by_turns(told, edited, drawn, turns=1)
    return by_turns(told, edited, drawn)


@pytest.mark.parametrize("name", ["leaf-crown", "wheat-sheaf"])
def test_an_edit_costs_at_most_a_third_more_than_the_design(name):
    def holds(base, edit, drawn):
        return edit <= 1.35 * base

    assert holds(*settled(lambda: measured(name), holds))


def test_the_picture_does_not_wait_for_the_opening_model():
    """The model takes most of the time of this pattern's design; its picture comes first."""

    def holds(base, edit, drawn):
        return drawn <= 0.4 * base

    assert holds(*settled(lambda: measured("wheat-sheaf"), holds))


def measured(name):
    alone = {"OPENBLAS_NUM_THREADS": "1", "OMP_NUM_THREADS": "1", "MKL_NUM_THREADS": "1"}
    done = subprocess.run(
        [sys.executable, __file__, name],
        env=os.environ | alone | {"PYTHONPATH": os.pathsep.join(sys.path)},
        check=True,
        capture_output=True,
        text=True,
    )
    return [float(each) for each in done.stdout.split()]


if __name__ == "__main__":
    print(*measure(sys.argv[1]))
