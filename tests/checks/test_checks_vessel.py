import re

import pytest

from scorecraft.checks.vessel import vessel
from scorecraft.cuts import Size
from scorecraft.loaf.bake import Bake
from scorecraft.loaf.dome import make_loaf


@pytest.mark.parametrize(
    ("pot", "severity"), [(210, "stop"), (230, "warning"), (245, "note"), (260, None)]
)
def test_pot_of_a_loaf_220_mm_wide(lay, pot, severity):
    """At 1.4-fold spring, half of it sideways, 220 mm bake to 239 mm."""
    found = vessel(lay(size=Size(vessel_mm=pot)))
    assert [each.severity for each in found] == ([severity] if severity else [])
    for each in found:
        assert each.figures["baked_mm"] == pytest.approx(220 * 1.4**0.25)
        most = (pot - 10) / 1.4**0.25
        assert each.figures["most_mm"] == pytest.approx(most)
        assert each.figures["less_dough"] == pytest.approx(1 - (most / 220) ** 3)


def test_without_a_pot_nothing_is_told(lay):
    assert vessel(lay()) == []


def test_cure_works(lay):
    size = Size(vessel_mm=230)
    (found,) = vessel(lay(size=size))
    most, less = found.figures["most_mm"], found.figures["less_dough"]
    smaller = make_loaf("round", most, None, 95 * most / 220)
    assert vessel(lay(loaf=smaller, size=size)) == []
    assert smaller.volume_mm3 == pytest.approx(
        (1 - less) * make_loaf("round", 220, None, 95).volume_mm3
    )


def test_the_longest_measure_and_the_bake_count(lay):
    long = make_loaf("long", 120, 240, 70)
    size = Size(vessel_mm=255)
    assert vessel(lay(loaf=long, size=size))[0].severity == "warning"
    assert vessel(lay(loaf=long, size=size, bake=Bake(spread=0.0))) == []


def test_sizes_that_differ_do_not_read_the_same(lay):
    """A loaf a hair larger than its pot: both are told so that this can be seen."""
    (found,) = vessel(lay(size=Size(vessel_mm=219.8)))
    assert "220.0 mm across: it does not fit its 219.8 mm pot" in found.message


def test_cure_is_rounded_down(lay):
    (found,) = vessel(lay(size=Size(vessel_mm=230)))
    told = float(re.search(r"no more than (\d+) mm", found.hint)[1])
    assert told <= found.figures["most_mm"] < told + 1
