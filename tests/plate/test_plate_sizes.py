import pytest

from scorecraft.errors import UsageError
from scorecraft.plate.sizes import Sizes, checked


@pytest.mark.parametrize(
    "sizes", [(0.8, 3.0, 1.6), (40.0, 40.0, 40.0), (2.5, 0.4, 0.4), (2.5, 1.6, 1.6)]
)
def test_sizes_up_to_their_limits_are_cut(sizes):
    assert checked(Sizes(*sizes)) == Sizes(*sizes)


@pytest.mark.parametrize(
    ("sizes", "says"),
    [
        ((0.79, 3.0, 1.6), "a slot of 0.79 mm"),
        ((40.1, 3.0, 1.6), "a slot of 40.1 mm"),
        ((2.5, 1.5, 1.6), "a bridge of 1.5 mm"),
        ((2.5, 41.0, 1.6), "a bridge of 41 mm"),
        ((2.5, 3.0, 0.39), "a web of 0.39 mm"),
    ],
)
def test_sizes_beyond_them_are_refused(sizes, says):
    with pytest.raises(UsageError, match=says):
        checked(Sizes(*sizes))
