"""Errors say what, where, and what to do."""

import json

from scorecraft.errors import (
    PatternError,
    Place,
    Problem,
    ScorecraftError,
    UsageError,
    caret,
    shown_plainly,
)


def test_an_error_without_a_place_is_its_message_and_hint():
    assert str(UsageError("no width", None, "write one")) == "no width\n    write one"
    assert UsageError("x").exit_code == 2


def test_the_caret_stands_under_the_word_with_tabs_and_wide_places():
    window, under = caret("a\tb leef", Place("f", 1, 5, 4))
    assert window[8:] == "a b leef"
    assert under[8:] == "    ^^^^"


def test_a_place_past_the_end_still_shows():
    _, under = caret("slash", Place("f", 1, 6))
    assert under.endswith("     ^")


def test_all_problems_are_told_in_order():
    problems = [Problem("one", Place("f", 1, 1)), Problem("two", Place("f", 2, 1), "way out")]
    error = PatternError(problems, "a\nb\n")
    assert isinstance(error, ScorecraftError)
    assert error.problems == tuple(problems)
    assert str(error).splitlines()[0] == "f:1:1: one"
    assert str(error).splitlines()[-1] == "    way out"


def test_words_of_others_are_shown_and_steer_nothing():
    assert shown_plainly("a\x1b[31mb\r\x9b\u202e\x7f") == r"a\u001b[31mb\u000d\u009b\u202e\u007f"
    assert shown_plainly("é 葉\tnach\n🍞\u200d") == "é 葉\tnach\n🍞\u200d"
    told = {"note": "\x1b\x9b\u2066"}
    assert json.loads(shown_plainly(json.dumps(told, ensure_ascii=False))) == told
