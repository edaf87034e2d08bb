"""The page's texts stand in one place; tests/test_wording.py reads them."""

import re
from pathlib import Path

import pytest

STATIC = Path(__file__).parents[2] / "scorecraft" / "web" / "static"
PLACES = [STATIC / "words.js", *sorted((STATIC / "words").glob("*.js"))]
TEXT = re.compile(r"[\"'`](?:[A-Z][a-z’]+,? [a-z0-9$]|[a-z’]+ [a-z’]+ [a-z’]+ [a-z’]+[ .,])")
"""What reads like the beginning of a sentence."""


def code_of(path):
    """A script without its comments."""
    text = re.sub(r"/\*.*?\*/", "", path.read_text(encoding="utf-8"), flags=re.DOTALL)
    return re.sub(r"(?m)(^|\s)//.*$", "", text)


def test_what_reads_like_a_sentence_is_found():
    assert TEXT.search(code_of(STATIC / "words.js"))


@pytest.mark.parametrize(
    "path", sorted(set(STATIC.glob("*.js")) - set(PLACES)), ids=lambda path: path.name
)
def test_no_text_stands_outside_the_words(path):
    assert TEXT.findall(code_of(path)) == []
