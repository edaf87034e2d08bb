"""The first hour as three people spend it: prints for a class, Python; the page is in tests/web.

A baker at home with the page: `tests/web/test_web_browser.py`, `test_the_whole_journey` (shelf,
sliders, checks, save, print, bench), and `tests/web/test_web_first_hour.py` (my loaf's sizes, help,
measuring).
"""

import os
import subprocess
import sys
from pathlib import Path

import pytest
from support.printed_rule import A4, papers, ruled

import scorecraft
from scorecraft.errors import ScorecraftError

ROOT = Path(__file__).parents[1]
CLASS = """\
set -e
scorecraft new lesson
scorecraft check lesson.score > told.txt
scorecraft guide lesson.score --paper A4 -o guide.pdf
scorecraft card lesson.score --paper A4 --hand left -o card.pdf
scorecraft practise lesson.score --paper A4 -o practise.pdf
scorecraft stencil lesson.score --paper A4 -o stencil.pdf
"""


@pytest.mark.skipif(os.name != "posix", reason="the lines of a shell")
def test_a_teacher_prints_for_a_class(tmp_path):
    """One pattern, four prints, all on the paper of the school's printer and at full size."""
    lines = f'scorecraft() {{ "{sys.executable}" -m scorecraft "$@"; }}\n{CLASS}'
    path = os.pathsep.join([str(ROOT), *filter(None, [os.environ.get("PYTHONPATH")])])
    run = subprocess.run(
        ["/bin/sh", "-c", lines],
        cwd=tmp_path,
        env={**os.environ, "PYTHONPATH": path},
        capture_output=True,
        text=True,
    )
    assert run.returncode == 0, run.stderr
    told = (tmp_path / "told.txt").read_text()
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
