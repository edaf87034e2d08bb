"""Reading takes time in proportion to the text: the rest of the line was copied at each number."""

from contextlib import suppress

import pytest
from support.timing import ratio

from scorecraft.errors import PatternError
from scorecraft.language.parse import parse


@pytest.mark.parametrize(
    "text",
    ["slash " + "3mm " * 40_000, "slash (min(1mm" + ",1mm" * 40_000 + "))",
     'title "' + "x" * 200_000 + '"', "slosh 3mm\n" * 20_000, "slash 0." + "9" * 200_000 + "mm"],
    ids=["numbers", "arguments", "title", "slips", "digits"],
)  # fmt: skip
def test_twice_the_text_takes_twice_the_time(text):
    """Quadratic would be 4."""

    def read(part):
        with suppress(PatternError):
            parse(part)

    half = text[: len(text) // 2]
    assert ratio(lambda: read(text), lambda: read(half), 2.8, tick=0.02) <= 2.8
