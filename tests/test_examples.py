"""The examples in docstrings are true, and functions that raise say what."""

import ast
import doctest
import importlib
from pathlib import Path

import pytest

import scorecraft

ROOT = Path(scorecraft.__file__).parent
WITH_EXAMPLES = (
    "scorecraft",
    "scorecraft.designing",
    "scorecraft.curves",
    "scorecraft.errors",
    "scorecraft.regions",
    "scorecraft.loaf.outline",
    "scorecraft.loaf.dome",
    "scorecraft.loaf.sizing",
    "scorecraft.loaf.bake",
    "scorecraft.opening.solve",
)


@pytest.mark.parametrize("name", WITH_EXAMPLES)
def test_examples_are_true(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)  # some write files
    failed, tried = doctest.testmod(importlib.import_module(name))
    assert tried and not failed


def public_functions(body):
    for node in body:
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            yield from public_functions(node.body)
        elif isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            yield node


def raised(function):
    """Names of what a function itself raises; `raise` alone and functions inside do not count."""
    waiting = list(function.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.FunctionDef | ast.Lambda):
            continue
        if isinstance(node, ast.Raise) and node.exc is not None:
            yield ast.unparse(node.exc).partition("(")[0]
        waiting.extend(ast.iter_child_nodes(node))


def unsaid(source):
    """Public functions that raise and whose docstring does not say so by `raises NAME`."""
    for function in public_functions(ast.parse(source).body):
        told = " ".join((ast.get_docstring(function) or "").split()).lower()
        names = [name for name in raised(function) if name[:1].isupper()]
        if any("raise" not in told or name.lower() not in told for name in names):
            yield function.name


def test_functions_name_what_they_raise():
    """Docstrings of the command line are the help a baker reads: they tell of no classes."""
    files = [file for file in ROOT.rglob("*.py") if not file.name.endswith("_command.py")]
    found = {(file.name, name) for file in files for name in unsaid(file.read_text("utf-8"))}
    assert not found


def test_a_silent_function_is_found():
    silent = 'def f():\n    """Do it."""\n    raise UsageError("no")\n'
    assert list(unsaid(silent)) == ["f"]
    assert not list(unsaid(silent.replace("it.", "it; raises UsageError.")))
