"""An edit on the page costs the server little more than the design itself.

Measured in a process of its own with one thread: idle threads that wait busily would count too.

Measured as processor time of one core of a busy machine, design, all findings of the opening model
and the ranges: 236 ms for leaf-crown, the dearest of the shelf, 130 ms on average.
"""

import os
import subprocess
import sys

from support.timing import by_turns, settled


def measure(name):
    """Time a design with all its findings, and the two answers that an edit asks for."""
    from scorecraft import design
    from scorecraft.shelf import find_source
    from scorecraft.web.tasks import remembered, work

    text = find_source(name).text
    request = {"text": text, "name": f"{name}.score", "place": "shelf", "folder": None}

    def told():
        made = design(name)
        assert made.findings is not None and made.ranges is not None

    def edited():
        remembered.cache_clear()
        for task in ("design", "opening"):
            assert work(task, request).status == 200

    def drawn():
        remembered.cache_clear()
        assert work("design", request).status == 200

    by_turns(told, edited, drawn, turns=1)
    return by_turns(told, edited, drawn)


def test_an_edit_costs_little_more_than_the_design_and_its_picture_does_not_wait():
    """At most a third more; the model takes most of the time, and the picture comes first."""

    def holds(base, edit, drawn):
        return edit <= 1.35 * base and drawn <= 0.4 * base

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
