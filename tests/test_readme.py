"""The README is true: its reference is the table of words, its examples run."""

import re
import shlex
import subprocess
import sys
from pathlib import Path

from scorecraft import cli, design
from scorecraft.checks import CHECKS
from scorecraft.language.reference import GROUPS, at_hand, own_keys, takes
from scorecraft.language.words import ATTRIBUTES, WORDS
from scorecraft.shelf import shelf

README = Path(__file__).parents[1] / "README.md"


def text() -> str:
    return README.read_text(encoding="utf-8")


def blocks(kind: str) -> list[str]:
    """Give the code blocks of a kind."""
    return re.findall(rf"^```{kind}\n(.*?)^```$", text(), re.S | re.M)


def put(start: str, wanted: str, remake: bool) -> None:
    """Compare what follows a mark with what is wanted there, or write it."""
    end = start.replace("<!-- ", "<!-- end of ")
    if remake:
        before, _, rest = text().partition(start)
        README.write_text(before + start + wanted + end + rest.partition(end)[2], encoding="utf-8")
    assert start + wanted + end in text(), "run with --remake"


def markdown() -> str:
    parts = []
    for group, heading in GROUPS.items():
        rows = [row(word) for word in WORDS.values() if word.group == group]
        parts += [f"### {heading}", "", "| word | what it does | keys |", "| --- | --- | --- |"]
        parts += [*rows, ""]
    parts += ["### Cut attributes", "", "| key | what it says |", "| --- | --- |"]
    parts += [f"| `{key.name}` | {key.help} ({escaped(takes(key))}) |" for key in ATTRIBUTES]
    return "\n".join([*parts, "", at_hand()])


def row(word) -> str:
    keys = []
    for key in own_keys(word):
        default = f" {key.default}" if key.default else ""
        keys.append(f"`{escaped(key.name + default)}`")
    return f"| `{word.name}` | {escaped(word.help)} | {' '.join(keys) or '–'} |"


def escaped(text: str) -> str:
    return text.replace("|", "\\|")


def test_the_reference_is_the_table_of_words(remake):
    put("<!-- reference -->\n", markdown(), remake)


def test_the_pattern_shown_is_a_good_design():
    (pattern,) = re.findall(r"^```\n(title.*?)^```$", text(), re.S | re.M)
    made = design(pattern)
    assert len(made.cuts) > 80
    assert not made.stops


def test_the_python_shown_runs(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for code in blocks("python"):
        exec(code, {})
    assert (tmp_path / "crown.pdf").read_bytes().startswith(b"%PDF-")


def test_the_commands_shown_run(tmp_path, monkeypatch, capfd):
    monkeypatch.chdir(tmp_path)
    shown = [line for block in blocks("sh") for line in block.splitlines()]
    lines = [line.partition("  #")[0].strip() for line in shown if line.startswith("scorecraft ")]
    lines.remove("scorecraft page")  # it serves until it is stopped; tests/web opens it
    assert len(lines) >= 6
    for line in lines:
        assert cli.run(shlex.split(line)[1:]) == 0, line
        capfd.readouterr()


def test_every_check_is_explained_in_its_own_words(remake):
    rows = "".join(f"| {check.name} | {check.says} |\n" for check in CHECKS.values())
    put("<!-- checks -->\n", f"| check | what it says |\n| --- | --- |\n{rows}", remake)


def test_an_installed_package_finds_its_patterns_from_any_folder(tmp_path):
    code = "import scorecraft.shelf as s; print(*s.shelf(), sep='\\n')"
    done = subprocess.run(
        [sys.executable, "-I", "-c", code], cwd=tmp_path, capture_output=True, text=True, check=True
    )
    assert done.stdout.split() == list(shelf())
