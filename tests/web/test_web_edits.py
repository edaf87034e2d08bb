"""One change of a form or a slider, made by the server in the text that is sent."""

import pytest
from support.web_patterns import SLASH

MOVED = "# one\n# two\n" + SLASH + "slush 30mm\n"


def test_a_change_is_made_where_the_statement_stands_now(asking):
    told = asking.told(
        "/api/edit", {"text": MOVED, "word": "loaf", "keys": {"shape": "oval"}, "asked": "7"}
    )
    assert told["text"] == MOVED.replace("loaf round", "loaf oval") and told["asked"] == "7"
    told = asking.told("/api/edit", {"text": MOVED, "knob": "deep", "value": "9mm"})
    assert told["text"] == MOVED.replace("deep 8mm", "deep 9mm")


def test_a_change_the_text_does_not_take_is_told_and_not_made(asking):
    told = asking.told("/api/edit", {"text": SLASH, "word": "bake", "keys": {"spring": "5"}})
    assert not told["ok"] and "spring" in told["problems"][0]["message"]
    told = asking.told("/api/edit", {"text": SLASH, "knob": "gone", "value": "5"})
    assert not told["ok"] and "gone" in told["problems"][0]["message"]


@pytest.mark.parametrize(
    "change",
    [
        {},
        {"word": "title", "keys": {"text": "x"}},
        {"word": "loaf"},
        {"word": "loaf", "keys": []},
        {"word": "loaf", "keys": {"width": 9}},
        {"word": "loaf", "keys": {"width": "9mm\nslash 9mm"}},
        {"knob": "deep"},
        {"knob": "deep", "value": "9mm\n"},
    ],
)
def test_a_request_that_is_not_right_is_refused(asking, change):
    assert asking.post("/api/edit", {"text": SLASH, **change}).status_code == 400


def test_limits_are_those_that_the_design_is_held_to(asking):
    limits = asking.told("/api/design", {"text": SLASH})["limits"]
    for word, keys in (("loaf", ("width", "height")), ("bake", ("spring", "spread"))):
        for key in keys:
            unit = {"loaf": "mm"}.get(word, "%" if key == "spread" else "")
            least, most = limits[word][key]
            for value in (least, most):
                assert sound(asking, word, key, f"{value:g}{unit}"), (key, value)
            for value in (least - 0.01 * most, most * 1.01):
                assert not sound(asking, word, key, f"{value:g}{unit}"), (key, value)


def sound(asking, word, key, value):
    """Write a value as the page does and tell whether the design takes it."""
    told = asking.told("/api/edit", {"text": SLASH, "word": word, "keys": {key: value}})
    return told["ok"] and asking.told("/api/design", {"text": told["text"]})["ok"]
