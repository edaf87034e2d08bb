"""Errors say what, where, and what to do."""

from scorecraft.errors import PatternError, Place, Problem, ScorecraftError, UsageError, caret


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
