"""The page's scripts find each other: what one takes from another is there."""

import re
from pathlib import Path

import pytest

STATIC = Path(__file__).parents[2] / "scorecraft" / "web" / "static"
SCRIPTS = sorted(STATIC.rglob("*.js"))
TAKEN = re.compile(r"(?:import|export) \{([^}]*)\} from \"(\.[^\"]*)\"")
GIVEN = re.compile(r"^export (?:async )?(?:function\*?|class|const|let) (\w+)", re.MULTILINE)


def given_by(path):
    text = path.read_text(encoding="utf-8")
    lists = re.findall(r"^export \{([^}]*)\}", text, re.MULTILINE)
    named = [name.split(" as ")[-1].strip() for each in lists for name in each.split(",")]
    return {*GIVEN.findall(text), *named}


@pytest.mark.parametrize("path", SCRIPTS, ids=lambda path: path.name)
def test_what_a_script_takes_is_given(path):
    for names, where in TAKEN.findall(path.read_text(encoding="utf-8")):
        taken = {name.split(" as ")[0].strip() for name in names.split(",") if name.strip()}
        assert not taken - given_by((path.parent / where).resolve()), where


def test_imports_are_found():
    assert sum(len(TAKEN.findall(path.read_text(encoding="utf-8"))) for path in SCRIPTS) > 50
