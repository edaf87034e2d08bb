"""The dough's numbers, worked by hand from the rules of thumb in scorecraft/baking.py."""

import pytest

from scorecraft.errors import UsageError
from scorecraft.loaf.dough import Dough


@pytest.mark.parametrize(
    ("dough", "times", "share", "stage"),
    [
        (Dough("under"), 0.69 * 1.9, 0.69, "under"),
        (Dough("over", "yeasted"), 1.27 * 2.1, 1.27, "over"),
        (Dough(1.425), 1.425, 0.75, "under"),
        (Dough(1.9 * 0.785), 1.9 * 0.785, 0.785, "ready"),
        (Dough(1.9 * 1.09), 1.9 * 1.09, 1.09, "ready"),
        (Dough(1.9 * 1.11), 1.9 * 1.11, 1.11, "over"),
    ],
)
def test_a_proof_is_a_share_of_the_ready_volume(dough, times, share, stage):
    assert (dough.times, dough.share) == (pytest.approx(times), pytest.approx(share))
    assert dough.stage == stage


@pytest.mark.parametrize("proof", [1.0, 5.0])
def test_the_least_and_the_greatest_proof_are_taken(proof):
    assert Dough(proof).times == pytest.approx(proof)
    with pytest.raises(UsageError, match="out of range"):
        Dough(proof + (0.01 if proof > 1 else -0.01))


@pytest.mark.parametrize(
    ("share", "spring", "stand"),
    [(1.0, 1.4, 1.0), (1.27, 1.15, 0.87), (0.845, None, 1.05), (0.55, 1.8, 1.15),
     (2.0, 1.1, 0.75)],
)  # fmt: skip
def test_spring_and_stand_are_read_between_the_stages(share, spring, stand):
    """Halfway from under to ready the stand is halfway too; the spring has a stage between."""
    dough = Dough(1.9 * share)
    assert dough.stand == pytest.approx(stand, abs=1e-9)
    if spring is not None:
        assert dough.spring() == pytest.approx(spring)
        assert dough.spring(steam=False) == pytest.approx(1 + 0.85 * (spring - 1))


def test_wet_and_warm_dough_stands_lower_by_as_much_as_is_said():
    assert Dough(hydration=0.8).stand == pytest.approx(0.9)
    assert Dough(temperature_c=34.0).stand == pytest.approx(0.96)
    assert Dough(kitchen_c=34.0).stand == pytest.approx(0.98)
    every = Dough("over", hydration=0.65, temperature_c=4.0, kitchen_c=19.0)
    assert every.stand == pytest.approx(0.87 * 1.05 * 1.08 * 1.01)
    assert Dough(hydration=1.5).stand == 0.5 and Dough(hydration=0.2).stand == 1.3


def test_only_chilled_loaves_have_shrunk():
    assert Dough(temperature_c=4.0).shrunk == pytest.approx(0.95)
    assert Dough(temperature_c=30.0).shrunk == 1.0
