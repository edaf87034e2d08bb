"""Regular expressions look at each character once: none can match the same text in two ways.

Every repetition is bounded (`{0,40}`) or possessive (`*+`, `++`): it gives nothing back, so no
input makes a search exponential or quadratic.
"""

import ast
import re
from pathlib import Path

import pytest

PACKAGE = Path(__file__).parents[1] / "scorecraft"
GREEDY = re.compile(r"(?<!\*)(?<!\+)(?<!\?)(?<!\})([*+]\??|\{[0-9]*,\}\??)(?![+])")


def patterns(path):
    """Yield (line, text) of every literal given to a function of `re`."""
    for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute):
            owner = node.func.value
            if isinstance(owner, ast.Name) and owner.id == "re" and node.func.attr != "escape":
                assert isinstance(node.args[0], ast.Constant), f"{path}:{node.lineno}: no literal"
                yield node.lineno, node.args[0].value


def giving_back(pattern):
    """The repetitions of a pattern that may be tried again with fewer characters."""
    plain = re.sub(r"\\.|\[\^?\]?(?:\\.|[^\]\\])*\]", "x", pattern)
    return GREEDY.findall(plain)


@pytest.mark.parametrize(
    "path", sorted(PACKAGE.rglob("*.py")), ids=lambda p: str(p.relative_to(PACKAGE))
)
def test_no_pattern_gives_back_what_it_took(path):
    for line, pattern in patterns(path):
        assert not giving_back(pattern), f"{path}:{line}: {pattern}"


@pytest.mark.parametrize(
    ("pattern", "count"),
    [
        (r"\d+\.?\d*", 2),
        (r"((?:\d+,)*)", 2),
        (r"a{3,}", 1),
        (r"[*+]\+\*", 0),
        (r"\d++(?:\.\d*+)?x{0,9}", 0),
        (r"[^*]+?", 1),
    ],
)
def test_the_test_itself(pattern, count):
    assert len(giving_back(pattern)) == count
