"""The README is true, short enough to read, and every example in it runs."""

import re
import shlex
from pathlib import Path

import pytest

from scorecraft import cli, design
from scorecraft.checks.finding import SEVERITIES

ROOT = Path(__file__).parents[1]
README = ROOT / "README.md"
KINDS = {"sh", "bat", "score", "csv", "python"}
"""Every kind of code block has a test below."""
BY_HAND = {
    "sudo apt install python3 python3-venv",
    "python3 -m venv .venv && .venv/bin/pip install . && "
    ".venv/bin/scorecraft guide leaf-crown -o leaf-crown.pdf",
    "python3 -m venv .venv && .venv/bin/pip install '.[test]' && .venv/bin/python -m pytest -n 3",
}
"""What needs the network, and is tried by hand; `.ci/run` runs the last of them."""


def text() -> str:
    return README.read_text(encoding="utf-8")


def blocks(kind: str) -> list[str]:
    """Give the code blocks of a kind."""
    return re.findall(rf"^```{kind}\n(.*?)^```$", text(), re.S | re.M)


def commands() -> list[str]:
    """Give the lines of the shell blocks without what stands beside them."""
    rows = [row for block in blocks("sh") for row in block.splitlines()]
    return [row.partition("  #")[0].strip() for row in rows]


def words_about(shown: str) -> str:
    """Give a text without marks and line breaks."""
    return " ".join(shown.replace("*", "").replace("> ", "").split())


def test_it_is_read_in_a_few_minutes():
    assert len(text().splitlines()) <= 200


def test_every_example_is_of_a_kind_that_is_tried():
    assert set(re.findall(r"^```(\w+)$", text(), re.M)) == KINDS
    assert text().count("\n```") == 2 * sum(len(blocks(kind)) for kind in KINDS)


def test_the_commands_shown_run(tmp_path, monkeypatch, capfd):
    monkeypatch.chdir(tmp_path)
    (measured,) = blocks("csv")
    (tmp_path / "measured.csv").write_text(measured, encoding="utf-8")
    lines = [line for line in commands() if line.startswith("scorecraft ")]
    lines.remove("scorecraft page")  # it serves until it is stopped; tests/web opens it
    inline = set(re.findall(r"`(scorecraft (?:new|check|guide|list) [^`]*)`", text()))
    for line in [*lines, *sorted(inline)]:
        assert cli.run(shlex.split(line)[1:]) == 0, line
        capfd.readouterr()
    assert {"crown.pdf", "plate.svg", "mine.score", "baker.toml"} <= {
        path.name for path in tmp_path.iterdir()
    }


def test_every_command_is_shown():
    shown = {shlex.split(line)[1] for line in commands() if line.startswith("scorecraft ")}
    assert shown >= set(cli.commands()) - {"new"}
    assert "`scorecraft new mine`" in text()


def test_what_is_not_run_here_is_tried_by_hand():
    others = {line for line in commands() if not line.startswith("scorecraft ")}
    assert others == BY_HAND


def test_windows_is_told_what_the_others_are():
    """The same three steps: py for python3, and the folder that Python makes there."""
    (shown,) = blocks("bat")
    rows = shown.replace("py -m", "python3 -m").replace(".venv\\Scripts\\", ".venv/bin/")
    assert " && ".join(rows.splitlines()) in BY_HAND


def test_the_pattern_shown_is_a_good_design():
    (pattern,) = blocks("score")
    made = design(pattern)
    assert len(made.cuts) > 80
    assert not made.stops


def test_the_python_shown_runs(tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    for code in blocks("python"):
        exec(code, {})
    assert (tmp_path / "crown.pdf").read_bytes().startswith(b"%PDF-")


def test_links_and_pictures_lead_somewhere():
    targets = re.findall(r'\]\(([^)#]+)\)|src="([^"]+)"', text())
    inside = {one or other for one, other in targets if not one.startswith("https://")}
    assert len(inside) >= 10
    assert not [target for target in sorted(inside) if not (ROOT / target).is_file()]


def test_severities_are_explained():
    told = text().partition("## What the checks say")[2]
    assert all(f"**{severity}**" in told for severity in SEVERITIES)


@pytest.mark.parametrize("folder", ["scorecraft/drawing/fonts", "scorecraft/web/static/fonts"])
def test_the_licences_of_all_letters_are_listed(folder):
    licences = list((ROOT / folder).glob("LICENSE*"))
    assert licences
    assert all(f"({folder}/{path.name})" in text() for path in licences)


def test_nothing_is_claimed_that_is_not_known():
    """Words that were brought down to what is known, and must not come back."""
    said = words_about(text())
    for claim in ("any loaf", "No published", "bakers know to work", "will bake", "will open"):
        assert claim not in said, claim
    assert "model estimate" in said and "your printer adds its own error" in said
