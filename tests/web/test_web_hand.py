"""The hand over HTTP: what lies on the loaf, what is picked, and the text a gesture makes."""

import pytest

CROWN = """loaf round width 220mm height 95mm
knob long 40mm min 30mm max 50mm
around 6 radius 30mm: # six
    leaf long width 20mm depth 4mm
at y -60mm:
    slash (50mm + 10mm)
"""
REQUEST = {"text": CROWN, "name": "mine.score"}


@pytest.fixture
def look(asking):
    return asking.told("/api/hand/look", REQUEST)


def test_a_look_tells_statements_and_what_a_tap_selects(look):
    found = {each["id"]: each for each in look["statements"]}
    assert [found[line]["word"] for line in (3, 4, 5, 6)] == ["around", "leaf", "at", "slash"]
    assert found[4]["copies"] == 6 and found[4]["draws"]
    assert not found[3]["draws"] and found[3]["cuts"] == found[4]["cuts"]
    assert found[4]["said"].startswith("leaf, 40 mm by 20 mm, at 12 o'clock")
    assert CROWN[slice(*found[5]["span"])] == "at y -60mm:\n    slash (50mm + 10mm)\n"
    assert look["cuts"][-1] == {"statement": 6, "copy": 0}
    per_leaf = len(found[4]["cuts"]) // 6
    assert look["cuts"][per_leaf] == {"statement": 4, "copy": 1}


def test_a_pick_tells_handles_chips_and_exact_numbers(asking, look):
    told = asking.told("/api/hand/pick", {**REQUEST, "statement": 4, "copy": 1})
    assert told["mark"] == look["mark"]
    assert [each["said"] for each in told["trail"]] == ["around 6", "leaf"]
    handles = {each["name"]: each for each in told["handles"]}
    assert list(handles) == ["length", "width", "turn"]
    assert handles["length"]["knob"] == "long" and handles["length"]["value"] == "40mm"
    tip = handles["length"]
    assert tip["x"] > 50 and abs(tip["along"][0] ** 2 + tip["along"][1] ** 2 - 1) < 1e-3
    chips = {each["name"]: each["value"] for each in told["chips"]}
    assert chips["repeat"] == 6 and chips["depth"] == "4mm" and chips["mirror"] is False
    assert told["move"]["turns"] == {"about": [0.0, 0.0]}
    assert len(told["frames"]) == 6 and told["frames"][1]["cuts"] == told["own"]
    form = {each["key"]: each for each in told["form"]}
    assert form["length"]["value"] == "long" and not form["veins"]["written"]


def test_what_is_worked_out_says_so_and_how_it_may_turn(asking, look):
    told = asking.told("/api/hand/pick", {**REQUEST, "statement": 6})
    length = next(each for each in told["handles"] if each["name"] == "length")
    assert "(50mm + 10mm)" in length["locked"]
    assert [each["way"] for each in length["ways"]] == ["own", "multiply"]
    drag = {"kind": "handle", "statement": 6, "name": "length", "from": [0, 0], "to": [0, 5]}
    request = {**REQUEST, "mark": look["mark"], "gesture": drag}
    told = asking.told("/api/hand/do", request)
    assert not told["ok"] and [each["way"] for each in told["ways"]] == ["own", "multiply"]
    drag["way"] = "own"
    assert "slash 70mm" in asking.told("/api/hand/do", request)["text"]


@pytest.mark.parametrize(
    ("gesture", "says"),
    [
        ({"kind": "move", "statement": 4, "by": [0, 5]}, "radius 35.5mm"),
        ({"kind": "move", "statement": 6, "from": [0, -50], "to": [0, -40]}, "at y -49mm"),
        ({"kind": "turn", "statement": 6, "by": 30}, "turn 30deg"),
        ({"kind": "set", "statement": 6, "key": "depth", "value": "9mm"}, "depth 9mm"),
        ({"kind": "repeat", "statement": 4, "count": 8}, "around 8 radius"),
        ({"kind": "mirror", "statement": 6}, "mirror:\n    at y -60mm"),
        ({"kind": "new", "word": "star", "at": [40, 40], "inside": None}, "\n    star 50mm"),
        ({"kind": "stroke", "points": [[-40, 9], [0, 0], [40, 9]], "repeat": 2}, "around 2:"),
        ({"kind": "free_copy", "statement": 4, "copy": 2}, "at radius 30mm angle 120deg"),
        (
            {"kind": "cure", "changes": [{"kind": "deeper", "cuts": [0], "mm": 6, "ends": []}]},
            "midrib_depth 6mm",
        ),
    ],
)
def test_a_gesture_answers_with_a_text_that_can_be_designed(asking, look, gesture, says):
    told = asking.told("/api/hand/do", {**REQUEST, "mark": look["mark"], "gesture": gesture})
    assert told["ok"] and says in told["text"] and told["said"]
    assert "# six" in told["text"]
    picked = asking.told("/api/hand/pick", {**REQUEST, "text": told["text"], **told["selected"]})
    assert picked["ok"] and picked["mark"] == told["mark"]


def test_a_gesture_that_goes_on_gives_the_lines_it_makes(asking, look):
    gesture = {"kind": "set", "statement": 4, "copy": 1, "key": "depth", "value": "9mm"}
    asked = {**REQUEST, "mark": look["mark"], "gesture": gesture, "preview": True}
    lines = asking.told("/api/hand/do", asked)["lines"]
    assert [each["copy"] for each in lines if each["own"]] == [1]
    assert all(path.startswith("M") for each in lines for path in each["lines"])


def test_a_gesture_on_another_text_is_dropped_with_a_word(asking, look):
    gesture = {"kind": "delete", "statement": 6}
    told = asking.told(
        "/api/hand/do", {"text": CROWN + "# x", "mark": look["mark"], "gesture": gesture}
    )
    assert told["dropped"] and "changed" in told["problems"][0]["message"]


def test_a_text_that_cannot_be_read_says_why(asking):
    for task in ("look", "pick", "do"):
        told = asking.told(
            f"/api/hand/{task}", {"text": "loaf round\nleef 3mm\n", "mark": "", "gesture": {}}
        )
        assert not told["ok"] and told["problems"]


@pytest.mark.parametrize(
    "gesture",
    [
        None,
        {},
        {"kind": "fold"},
        {"kind": "move", "statement": 4, "to": [0]},
        {"kind": "move", "statement": 4, "to": [0, float("nan")]},
        {"kind": "move", "statement": 4, "to": [0, 1e9]},
        {"kind": "turn", "statement": 4.5, "by": 3},
        {"kind": "repeat", "statement": 4, "count": 10_000},
        {"kind": "set", "statement": 4, "key": "depth", "value": "9mm\nslash 9mm"},
        {"kind": "stroke", "points": [[0, 0]] * 6_000},
        {"kind": "stroke", "points": [[0, 0], [9, 9]], "pressure": [7]},
        {
            "kind": "handle",
            "statement": 4,
            "name": "length",
            "from": [0, 0],
            "to": [0, 9],
            "way": "up",
        },
        {"kind": "cure", "changes": []},
        {"kind": "cure", "changes": [{"kind": "longer", "cuts": [0], "mm": 4}]},
        {"kind": "cure", "changes": [{"kind": "add", "mm": 8, "lines": [[[0, 0]]]}]},
    ],
)
def test_a_gesture_that_is_none_is_refused(asking, look, gesture):
    request = {**REQUEST, "mark": look["mark"], "gesture": gesture}
    assert asking.post("/api/hand/do", request).status_code == 400
