"""Drawings that a pattern names: where they may lie, how often they are read, what is told."""

import os

import pytest

import scorecraft
from scorecraft.designing import make
from scorecraft.errors import PatternError
from scorecraft.expand import drawings
from scorecraft.shelf import Source
from scorecraft.web.answer import problem_data

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" width="200mm" height="200mm" viewBox="0 0 200 200">'
RIM = f'{HEAD}<ellipse cx="100" cy="100" rx="80" ry="100"/></svg>'
ROUND = "loaf round width 220mm height 95mm\n"
WORDS = 'round outline "rim.svg" height 80mm'


@pytest.fixture
def folder(tmp_path):
    (tmp_path / "patterns").mkdir()
    return tmp_path / "patterns"


def laid(folder, text, **options):
    return make(Source("a.score", text, folder), **options)


def told(folder, text, **options):
    with pytest.raises(PatternError) as caught:
        laid(folder, text, **options)
    return str(caught.value)


def test_a_drawing_is_read_once_a_run_and_so_is_a_bad_one(folder, monkeypatch):
    seen = []
    place = drawings.Drawings.place
    monkeypatch.setattr(
        drawings.Drawings, "place", lambda self, file: seen.append(file) or place(self, file)
    )
    (folder / "bird.svg").write_text(f'{HEAD}<path d="M0 0h20"/></svg>')
    (folder / "bad.svg").write_text(f"{HEAD}<script/></svg>")
    design = laid(folder, ROUND + 'repeat 300 shift (0.1mm, 0mm):\n    trace "bird.svg"\n')
    assert len(design.cuts) == 300 and seen == ["bird.svg"]
    told(folder, ROUND + 'repeat 300:\n    trace "bad.svg"\n')
    assert seen == ["bird.svg", "bad.svg"]


def test_words_of_the_user_name_files_from_where_the_user_stands(tmp_path, folder, monkeypatch):
    (tmp_path / "rim.svg").write_text(RIM)
    monkeypatch.chdir(tmp_path)
    for words in (WORDS, WORDS.replace("rim.svg", str(tmp_path / "rim.svg"))):
        assert scorecraft.design("one-slash", loaf=words).layout.loaf.width_mm == pytest.approx(160)
    monkeypatch.chdir(folder)
    assert "no such file" in told(folder, "slash 60mm\n", loaf=WORDS, standing=folder)
    words = WORDS.replace("rim.svg", "../rim.svg")
    assert scorecraft.design("one-slash", loaf=words).layout.loaf.shape == "traced"


def test_all_others_name_files_of_the_patterns_folder_alone(tmp_path, folder, monkeypatch):
    (tmp_path / "rim.svg").write_text(RIM)
    monkeypatch.chdir(tmp_path)
    for name in ("../rim.svg", str(tmp_path / "rim.svg")):
        words = WORDS.replace("rim.svg", name)
        assert "is outside the pattern's folder" in told(folder, "slash 60mm\n", loaf=words)
        pattern = f"loaf {words}\nslash 60mm\n"
        assert "is outside" in told(folder, pattern, standing=tmp_path)
    assert "no such file" in told(folder, "slash 60mm\n", loaf=WORDS)
    assert "which is not in a file" in told(None, "slash 60mm\n", loaf=WORDS)
    (folder / "rim.svg").write_text(RIM)
    assert laid(folder, "slash 60mm\n", loaf=WORDS).layout.loaf.shape == "traced"


def test_words_of_the_user_open_no_door_for_the_pattern(tmp_path, folder):
    (tmp_path / "rim.svg").write_text(RIM)
    pattern = 'slash 60mm\ntrace "../rim.svg"\n'
    assert "is outside" in told(folder, pattern, loaf=WORDS, standing=tmp_path)


@pytest.mark.parametrize("line", ['trace "bird.svg"', f"loaf {WORDS}".replace("rim", "bird")])
def test_what_is_wrong_in_a_drawing_quotes_the_drawing(line, folder):
    path = folder / "bird.svg"
    path.write_text(f'{HEAD}\n<path d="M0 0h9"/>\n  <script>harm()</script>\n</svg>')
    head = "" if line.startswith("loaf") else ROUND
    lines = told(folder, f"{head}{line}\nslash 60mm\n").split("\n")
    assert lines == [
        f"{path}:3:3: <script> is not read",
        "    3 |   <script>harm()</script>",
        "      |   ^",
        "    save the drawing as plain SVG",
    ]


def test_slips_of_pattern_and_drawing_each_quote_their_own(folder):
    (folder / "bird.svg").write_text(f"{HEAD}\n<script/></svg>")
    said = told(folder, f'{ROUND}trace "bird.svg"\nslash (1mm / 0)\n')
    assert "    2 | <script/></svg>" in said and "    3 | slash (1mm / 0)" in said


def test_the_page_finds_no_line_of_a_drawing_in_the_text(folder):
    (folder / "bird.svg").write_text(f"{HEAD}\n<script/></svg>")
    with pytest.raises(PatternError) as caught:
        laid(folder, f'{ROUND}trace "bird.svg"\n')
    data = problem_data(caught.value.problems[0])
    assert data["line"] is None
    assert data["message"] == "bird.svg, line 2: <script> is not read"
    with pytest.raises(PatternError) as caught:
        laid(folder, ROUND, loaf="round widht 200mm")
    data = problem_data(caught.value.problems[0])
    assert data["line"] is None and "widht" in data["message"]


def test_words_of_the_user_are_quoted_as_said(folder):
    assert "loaf round widht 200mm" in told(folder, ROUND, loaf="round widht 200mm")
    assert "    1 | loaf round width 1mm" in told(folder, ROUND, loaf="round width 1mm")
    said = told(folder, ROUND, loaf="round width 0mm", bake="spring 1.1 spread 3")
    assert "    1 | loaf round width 0mm" in said and "    1 | bake spring 1.1 spread 3" in said


def test_links_to_nowhere_and_pipes_are_told(folder):
    (folder / "dangling.svg").symlink_to("none.svg")
    (folder / "loop.svg").symlink_to("loop.svg")
    os.mkfifo(folder / "pipe.svg")
    for name, words in (
        ("dangling", "no such file"),
        ("loop", "no file can be called"),
        ("pipe", "a pipe or a device"),
    ):
        assert words in told(folder, f'{ROUND}trace "{name}.svg"\n')
