"""Messages with gaps in braces: whoever says one fills every gap, and no other."""

import ast
import importlib
import re
from collections.abc import Iterator
from pathlib import Path
from string import Formatter
from textwrap import dedent
from types import ModuleType

import pytest

from scorecraft.checks.telling import Sentence
from scorecraft.errors import Slip

ROOT = Path(__file__).parents[1]
FILES = [
    path
    for path in sorted((ROOT / "scorecraft").rglob("*.py"))
    if path.name != "__main__.py" and re.search(r"\b(telling\w*|slips|sums)\b", path.read_text())
]


def gaps(message: str | Slip) -> set[str]:
    """Name what a message leaves open."""
    fields = [field for _, field, _, _ in Formatter().parse("".join(message)) if field]
    return {re.split(r"[.\[]", field)[0] for field in fields}


def meant(node: ast.Name | ast.Attribute, within: ModuleType) -> object:
    """Find the constant that is named: a message of another module, or a slip of the module's."""
    if isinstance(node, ast.Name):
        found = vars(within).get(node.id)
        return found if isinstance(found, Slip | Sentence) else None
    if isinstance(node.value, ast.Name):
        found = vars(within).get(node.value.id)
        return vars(found).get(node.attr) if isinstance(found, ModuleType) else None
    return None


def said(within: ModuleType, tree: ast.AST) -> Iterator[tuple[int, set[str], set[str]]]:
    """List where messages with gaps are said: the line, their gaps, and what is filled in."""
    filled = {
        id(call.func.value if isinstance(call.func, ast.Attribute) and call.func.attr == "format"
           else call.func): {str(keyword.arg) for keyword in call.keywords}
        for call in ast.walk(tree) if isinstance(call, ast.Call)
    }  # fmt: skip
    chosen = {
        id(side)
        for each in ast.walk(tree)
        if isinstance(each, ast.IfExp)
        for side in (each.body, each.orelse)
    }
    for node in ast.walk(tree):
        if not isinstance(node, ast.Name | ast.Attribute) or id(node) in chosen:
            continue
        if isinstance(node.ctx, ast.Store):
            continue
        message = meant(node, within)
        if isinstance(message, str | Slip) and gaps(message):
            yield node.lineno, gaps(message), filled.get(id(node), set())


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.relative_to(ROOT).as_posix())
def test_every_gap_is_filled(path: Path) -> None:
    name = ".".join(path.relative_to(ROOT).with_suffix("").parts).removesuffix(".__init__")
    within = importlib.import_module(name)
    for line, wanted, given in said(within, ast.parse(path.read_text())):
        assert given == wanted, f"{path}:{line}"


def test_a_gap_left_open_is_found() -> None:
    say, within = ModuleType("say"), ModuleType("within")
    vars(say).update(NO_HOLE=Slip("no {what}", "like {like}"), FAR="{far} mm")
    vars(within).update(say=say, NO_HOLE=Slip("no {what}"))
    text = """
        say.NO_HOLE(what=1, like=2)
        say.NO_HOLE(what=1)
        NO_HOLE
        say.FAR.format(far=3)
        say.FAR.format(near=3)
    """
    found = sorted(said(within, ast.parse(dedent(text))))
    assert [given == wanted for _, wanted, given in found] == [True, False, False, True, False]
