"""The page's texts: all in one place, and in a baker's words."""

import re
from pathlib import Path

import pytest

from scorecraft.web.join import door_page, stranger_page, used_page

STATIC = Path(__file__).parents[2] / "scorecraft" / "web" / "static"
PLACES = [STATIC / "words.js", *sorted((STATIC / "words").glob("*.js"))]
NOT_AGAIN = (
    "slip", "mend", "Look", "worry", "lies on the bench", "laid out", "string mark", "alike",
    "As usual", "settle it", "throw away", "take it to", "set it back", "write over",
    "stands open", "Table stays", "from here", "towards", "one that pleases", "thing to",
    "sideways share", "press in", "in the centre", "tell of", "is told", "tear to bits",
)  # fmt: skip
"""Words that a baker would not say here, and that must not come back."""
TEXT = re.compile(r"[\"'`](?:[A-Z][a-z’]+,? (?:[a-z0-9]|\$\{)|[a-z’]+ [a-z’]+ [a-z’]+ [a-z’]+[ .,])")
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


@pytest.mark.parametrize("word", NOT_AGAIN)
def test_old_words_do_not_come_back(word):
    doors = [page().body.decode() for page in (door_page, used_page, stranger_page)]
    texts = [*map(code_of, PLACES), (STATIC / "index.html").read_text(encoding="utf-8"), *doors]
    found = re.compile(rf"\b{re.escape(word)}\b", 0 if word[0].isupper() else re.IGNORECASE)
    assert [found.findall(text) for text in texts] == [[]] * len(texts)


def test_a_finding_is_called_what_the_server_calls_it():
    """No door has words of its own for how grave a finding is."""
    assert not re.search(r"\bsigns\b|\bwarn\b", "".join(map(code_of, STATIC.rglob("*.js"))))
