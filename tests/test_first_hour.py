"""The first hour as three people spend it: prints for a class, Python; the page is in tests/web.

A baker at home with the page: `tests/web/test_web_browser.py`, `test_the_whole_journey` (shelf,
sliders, checks, save, print, bench), and `tests/web/test_web_first_hour.py` (my loaf's sizes, help,
measuring).
"""

import pytest
from support.printed_rule import A4, papers, ruled

import scorecraft
from scorecraft import cli
from scorecraft.errors import ScorecraftError

CLASS = """\
new lesson
check lesson.score
guide lesson.score --paper A4 -o guide.pdf
card lesson.score --paper A4 --hand left -o card.pdf
practise lesson.score --paper A4 -o practise.pdf
stencil lesson.score --paper A4 -o stencil.pdf
"""
"""What follows `scorecraft` on each line that the teacher types."""


def test_a_teacher_prints_for_a_class(tmp_path, monkeypatch, capfd):
    """One pattern, four prints, all on the paper of the school's printer and at full size."""
    monkeypatch.chdir(tmp_path)
    said = {}
    for line in CLASS.splitlines():
        assert cli.run(line.split()) == 0, line
        said[line] = capfd.readouterr().out
    told = said["check lesson.score"]
    assert "This can be cut." in told
    assert told.rstrip().splitlines()[-1].startswith("Next: print the guide:")
    for name in ("guide", "practise", "stencil"):
        data = (tmp_path / f"{name}.pdf").read_bytes()
        assert papers(data) == {A4}, name
        assert ruled(data), name
    assert papers((tmp_path / "card.pdf").read_bytes()) == {A4}


def test_an_engineer_goes_through_the_door_for_python(tmp_path):
    """Compare three sizes of loaf, take the one with most room, and print it."""
    widths = {width: f"round width {width}mm height 88mm" for width in (190, 210, 230)}
    made = {width: scorecraft.design("leaf-crown", loaf=loaf) for width, loaf in widths.items()}
    assert not any(each.stops for each in made.values())
    best = max(made, key=lambda width: made[width].room.taken)
    assert made[best].room.taken > min(each.room.taken for each in made.values())
    made[best].print_to("guide", tmp_path / "best.pdf", paper="A4")
    data = (tmp_path / "best.pdf").read_bytes()
    assert papers(data) == {A4} and ruled(data)
    with pytest.raises(ScorecraftError, match="leaf-crwn"):
        scorecraft.design("leaf-crwn")
