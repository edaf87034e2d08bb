"""An edit on the page costs the server little more than the design itself."""

import time

import pytest

from scorecraft import design
from scorecraft.shelf import find_source
from scorecraft.web.tasks import remembered, work


def least(*ways, runs=5):
    """Give the shortest processor time of each way to do it, in seconds, run by turns."""
    times = [[] for _ in ways]
    for _ in range(runs):
        for do, own in zip(ways, times, strict=True):
            begun = time.process_time()
            do()
            own.append(time.process_time() - begun)
    return [min(own) for own in times]


@pytest.mark.parametrize("name", ["leaf-crown", "wheat-sheaf"])
def test_an_edit_costs_at_most_a_third_more_than_the_design(name):
    text = find_source(name).text
    request = {"text": text, "name": f"{name}.score", "place": "shelf", "folder": None}

    def told():
        made = design(name)
        assert made.findings is not None and made.opening is not None

    def edited():
        remembered.cache_clear()
        for task in ("design", "opening"):
            assert work(task, request).status == 200

    told()
    edited()
    base, edit = least(told, edited)
    assert edit <= 1.3 * base, f"{edit:.3f} s against {base:.3f} s"
