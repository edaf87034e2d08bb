"""DEVELOPERS.md is true: its walk runs, its house is the one that stands, its files are there."""

import ast
import doctest
import re
from pathlib import Path

ROOT = Path(__file__).parents[1]
PACKAGE = ROOT / "scorecraft"
PAGE = ROOT / "DEVELOPERS.md"
TEXT = PAGE.read_text(encoding="utf-8")
PAGE_LINES = 160


def test_it_is_one_page():
    assert len(TEXT.splitlines()) <= PAGE_LINES


def test_the_walk_runs(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)  # it ends in a file
    failed, tried = doctest.testfile(str(PAGE), module_relative=False, encoding="utf-8")
    assert tried > 10 and not failed


def test_the_house_shows_every_room_and_no_other():
    house = TEXT.split("```")[1]
    shown = set(re.findall(r"[a-z_]+(?:/|\.py)", "\n".join(row[:33] for row in house.splitlines())))
    rooms = {f"{path.name}/" for path in PACKAGE.iterdir() if (path / "__init__.py").is_file()}
    within = {f"{path.name}/" for path in (PACKAGE / "drawing").iterdir() if path.is_dir()}
    files = {path.name for path in PACKAGE.glob("[a-z]*.py")}
    assert shown == rooms | files | (within - {"fonts/", "__pycache__/"})


def test_the_files_it_names_are_there():
    named = set(re.findall(r"`([\w./]+\.(?:py|md|json|js))`", TEXT))
    named = {name for name in named if "NAME" not in name}
    assert len(named) > 8
    assert not {name for name in named if not list(ROOT.glob(f"**/{name}"))}


def test_the_functions_that_the_walk_names_are_there():
    walk = TEXT.partition("## How a number")[2].partition("## Add a motif")[0]
    named = set(re.findall(r"`(?:\w+\.)?([A-Za-z_]+)`", walk)) - {"opens"}
    assert len(named) > 12
    assert not named - everything_named()


def everything_named() -> set[str]:
    """Name every function, method, class and constant of the package."""
    found = set()
    for path in PACKAGE.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.FunctionDef | ast.ClassDef):
                found.add(node.name)
            elif isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                found.add(node.target.id)
    return found
