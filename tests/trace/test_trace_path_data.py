"""The grammar of path data (W3C SVG 1.1, section 8.3.9)."""

import pytest

from scorecraft.errors import Place, UsageError
from scorecraft.trace.path_data import scan

PLACE = Place("rim.svg", 3, 1)


@pytest.mark.parametrize(
    ("text", "steps"),
    [
        ("M1 2", [("M", [1, 2])]),
        ("M100-200", [("M", [100, -200])]),
        ("M0.6.5", [("M", [0.6, 0.5])]),
        ("M1 2 3 4", [("M", [1, 2]), ("L", [3, 4])]),
        ("m1 2 3 4z", [("m", [1, 2]), ("l", [3, 4]), ("z", [])]),
        (" M 1e1,2E-1 ,H3", [("M", [10, 0.2]), ("H", [3])]),
        ("M0 0a5 5 0 015 6", [("M", [0, 0]), ("a", [5, 5, 0, 0, 1, 5, 6])]),
        ("M0 0A1 1 0 00.5.5", [("M", [0, 0]), ("A", [1, 1, 0, 0, 0, 0.5, 0.5])]),
        ("", []),
        (" \n ", []),
    ],
)
def test_path_data_is_split_into_steps(text, steps):
    assert list(scan(text, PLACE)) == steps


@pytest.mark.parametrize(
    "text", ["z", "M", "M1", "m1-2.5.5", "M0 0 X", "M0 0 L1", "M0 0 5", "M0 0 zz9", "M0 0;"]
)
def test_unreadable_data_names_its_place(text):
    with pytest.raises(UsageError, match="character") as refused:
        list(scan(text, PLACE))
    assert refused.value.place == PLACE
