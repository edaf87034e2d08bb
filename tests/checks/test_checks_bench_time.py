import numpy as np
import pytest
from support.bench_layouts import cut, layout

from scorecraft.bench import work_of
from scorecraft.checks.bench_time import bench_time


def test_what_takes_longest_is_to_be_made_fewer():
    hatch = [
        cut([[x, -30], [x, 30]], "hatch", figure=k) for k, x in enumerate(np.linspace(-40, 40, 200))
    ]
    slash = cut([[-60, -50], [60, -50]], "slash", figure=300, family=1, depth=8.0)
    made = layout([slash, *hatch])
    work = work_of(made)
    (found,) = bench_time(made, work)
    runs = [run.seconds for run in work.runs]
    assert len(runs) > 1 and found.figures["slowest_s"] == max(runs) > min(runs)
    assert found.figures["seconds"] == pytest.approx(work.effort.seconds)
    least, most = found.figures["seconds_least"], found.figures["seconds_most"]
    assert least < work.effort.seconds < most
    assert "make fewer cuts: the hatch lines alone take 12–15 min" in found.hint
