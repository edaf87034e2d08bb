"""`check`: exit codes, the report, JSON, and every kind of bad input told in one message."""

import json
import shlex
import subprocess
import sys
from math import pi

import pytest

from scorecraft.opening.room import ROOMS
from scorecraft.report import VERDICTS

ROUND = "loaf round width 220mm height 95mm\n"
GOOD = 'title "Mine"\n' + ROUND + "slash 120mm depth 10mm\n"


def test_a_good_design_exits_0_with_verdict_first(run, pattern):
    ran = run("check", pattern(GOOD))
    assert ran.code == 0
    assert ran.out.splitlines()[0] == "Mine: round loaf, 220 mm across, 95 mm high"
    assert "slash" in ran.out and "10.0 mm" in ran.out
    assert ran.err == ""


def test_a_stop_exits_1(run, pattern):
    ran = run("check", pattern(ROUND + "slash 400mm depth 10mm\n"))
    assert ran.code == 1
    assert "\nstop  " in ran.out


def test_json_tells_everything_and_nothing_else(run, pattern):
    ran = run("check", pattern(GOOD), "--json")
    data = json.loads(ran.out)
    assert data["title"] == "Mine"
    assert data["loaf"] == {
        "shape": "round", "width_mm": 220, "length_mm": 220, "height_mm": 95,
            "hole_mm": None, "wall_mm": None,
    }  # fmt: skip
    (cut,) = data["cuts"]
    assert cut["name"] == "slash" and cut["kind"] == "expansion" and cut["line"] == 3
    assert cut["sheet"][0] == [0, -60] and cut["length_mm"] == pytest.approx(120, abs=0.01)
    assert abs(cut["plan"][0][1]) < 60
    for finding in data["findings"]:
        assert set(finding) == {
            "check", "severity", "message", "fix", "figures", "cuts", "line", "column",
        }  # fmt: skip


@pytest.mark.parametrize("data", [ROUND + "slahs 3mm\n", b"\xff\xfe slash", b""])
def test_json_tells_why_a_pattern_cannot_be_read(run, pattern, data):
    """On standard output, with the exit code of a plain check, and not a second time in words."""
    name = pattern(data)
    plain, ran = run("check", name), run("check", name, "--json")
    assert ran.code == plain.code == 2
    assert ran.err == ""
    (error,) = json.loads(ran.out)["errors"]
    assert error["message"] in plain.err and error["fix"] in plain.err
    assert f"{error['file']}:{error['line']}:{error['column']}: " in plain.err


def test_json_of_a_design_that_cannot_be_cut_exits_1(run, pattern):
    ran = run("check", pattern(ROUND + "slash 400mm depth 10mm\n"), "--json", "--quick")
    assert ran.code == 1
    assert json.loads(ran.out)["findings"][0]["severity"] == "stop"


def test_json_findings_say_which_cuts_and_by_how_much(run, pattern):
    twice = "slash 100mm depth 10mm\nslash 400mm depth 10mm\n"
    told = json.loads(run("check", pattern(ROUND + twice), "--json").out)["findings"]
    rim = next(each for each in told if each["check"] == "rim")
    assert rim["cuts"] == [1]
    assert rim["figures"]["count"] == 1
    assert round(rim["figures"]["over_mm"], 3) == rim["figures"]["over_mm"] > 0


def test_another_loaf_and_a_turned_knob(run):
    ran = run("check", "leaf-crown", "--loaf", "round width 180mm height 80mm", "--set", "leaves=9")
    assert ran.code == 0
    assert "180 mm" in ran.out
    midribs = next(line for line in ran.out.splitlines() if "leaf midrib" in line)
    assert midribs.split()[3] == "9"


OFF_THE_LOAF = ROUND + "slash 400mm depth 10mm\n"


def next_lines(out: str) -> list[str]:
    """Give the one next thing that the report ends with."""
    body, mark, told = out.rpartition("\nNext: ")
    assert mark and "Next: " not in body
    return told.splitlines()


def test_the_next_thing_after_a_good_design_is_its_guide_as_it_was_checked(run, tmp_path):
    asked = ["--set", "leaves=9", "--loaf", "round width 200mm height 85mm",
             "--dough", "under temperature 5C", "--bake", "spring 1.3"]  # fmt: skip
    (told,) = next_lines(run("check", "leaf-crown", *asked, "--quick").out)
    typed = shlex.split(told.partition("print the guide: ")[2])
    assert typed == ["scorecraft", "guide", "leaf-crown", *asked]
    assert run(*typed[1:]).code == 0 and (tmp_path / "leaf-crown-guide.pdf").exists()


def test_the_next_thing_after_a_stop_is_its_cure_and_another_check(run, pattern):
    name = pattern(OFF_THE_LOAF)
    finding = json.loads(run("check", name, "--json").out)["findings"][0]
    cure, again = next_lines(run("check", name, "--quick").out)
    assert finding["severity"] == "stop"
    assert cure == f"on line {finding['line']}, {finding['fix']}"
    assert again.strip() == f"then run: scorecraft check {name}"


def test_a_shipped_pattern_is_copied_before_it_is_cured(run, tmp_path):
    flat = "oval width 60mm length 100mm height 20mm"
    told = run("check", "one-slash", "--set", "slash_depth=11mm", "--loaf", flat).out
    copy, cure, again = next_lines(told)
    assert shlex.split(copy)[1:] == ["new", "mine", "--like", "one-slash"]
    assert run(*shlex.split(copy)[1:]).code == 0
    assert cure.strip().startswith("then on line ")
    typed = shlex.split(again.partition("then run: ")[2])
    assert run(*typed[1:]).code == 1, "the same loaf and knobs, and no cure yet"


@pytest.mark.parametrize(
    ("text", "told"), [(ROUND, "add a cut"), (GOOD, "save the pattern"), (OFF_THE_LOAF, "check it")]
)
def test_what_comes_next_without_cuts_or_without_a_file(
    run, pattern, monkeypatch, tmp_path, text, told
):
    pattern(text)
    with (tmp_path / "mine.score").open("rb") as file:
        monkeypatch.setattr("sys.stdin", type("In", (), {"buffer": file}))
        assert told in "\n".join(next_lines(run("check", "-", "--quick").out))


def test_quiet_leaves_the_table_out(run, pattern):
    name = pattern(GOOD)
    quiet = run("check", name, "-q").out
    assert len(quiet) < len(run("check", name).out) and "Next: " not in quiet


def test_verbose_tells_how_the_size_was_found_and_what_the_order_saves(run):
    ran = run("check", "leaf-crown", "-v", "--loaf", "round dough 900g proof right")
    assert "900 g of dough" in ran.out and "cm³ at scoring" in ran.out
    assert "the turntable turns" in ran.out and "in the order of the pattern" in ran.out
    given = run("check", "leaf-crown", "-v")
    assert "Size of the loaf: as given." in given.out


def test_verbose_tells_the_reach_as_a_tape_measures_it(run):
    """On a half sphere it is a quarter of the circle; an oval loaf has two."""
    half = run("check", "one-slash", "-v", "--loaf", "round width 200mm height 100mm").out
    assert f"from crown to rim: {50 * pi:.0f} mm\n" in half
    oval = run(
        "check", "one-slash", "-v", "--loaf", "oval width 160mm length 250mm height 85mm"
    ).out
    assert "168 mm to 12 o'clock, 131 mm to 3 o'clock" in oval


def test_the_report_begins_with_verdict_and_room_and_tells_openings(run, pattern):
    lines = run("check", pattern(GOOD)).out.splitlines()
    assert lines[1] in VERDICTS.values()
    assert lines[2].startswith(tuple(ROOMS.values()))
    table = next(line for line in lines if line.strip().startswith("1  slash"))
    assert table.endswith(" mm") and "opens" in "\n".join(lines)
    quick = run("check", pattern(GOOD), "--quick").out
    assert "opens" not in quick and "room" not in quick
    assert any(line.startswith("     slash") for line in quick.splitlines()), "without a number"


def test_a_quick_check_does_without_the_bench_and_the_model():
    """Their modules are not even loaded."""
    code = (
        "import sys, scorecraft.cli as cli\n"
        "code = cli.run(['check', 'leaf-crown', '--quick'])\n"
        "rooms = ('scorecraft.bench', 'scorecraft.opening')\n"
        "sys.exit(code or [name for name in sys.modules if name.startswith(rooms)] or 0)\n"
    )
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True)
    assert done.returncode == 0, done.stderr


def test_what_was_dropped_is_told(run, pattern):
    text = ROUND + "slash 150mm depth 10mm\nfill disc 30mm with scales size 7mm shift (2mm, 1mm)\n"
    assert "scraps at the edge" in run("check", pattern(text)).out


def test_json_has_openings_and_room(run):
    data = json.loads(run("check", "leaf-crown", "--json").out)
    assert [row["cut"] for row in data["opening"]] == list(range(len(data["cuts"])))
    assert max(row["widest_mm"] for row in data["opening"]) > 5
    assert data["room"]["verdict"] == "enough"
    assert 0 <= data["room"]["least"] <= data["room"]["most"] <= 1
    assert 0 <= data["room"]["least_direction_deg"] < 180


def test_a_pattern_from_standard_input(run, monkeypatch, pattern, tmp_path):
    pattern(GOOD)
    with (tmp_path / "mine.score").open("rb") as file:
        monkeypatch.setattr("sys.stdin", type("In", (), {"buffer": file}))
        assert run("check", "-").code == 0


@pytest.mark.parametrize(
    ("data", "message"),
    [
        (b"", "the pattern is empty"),
        (b"\xff\xfe slash", "not UTF-8"),
        (b"title \x80\n", "not UTF-8"),
        (b"slash 3mm\n", "the pattern has no loaf"),
        (ROUND.encode() + b"around 8:\n\tslash 20mm\n", "a tab in the indentation"),
        (ROUND.encode() + b"slash (1mm / 0)\n", "division by zero"),
        (ROUND.encode() + b"slash nan\n", "unknown name"),
        (ROUND.encode() + b"around 100000:\n    slash 2mm\n", "copies are too many"),
        (b"#" * 10_000_000, "more than 1,000,000 bytes"),
        (b"\0\0\0\0", "has no meaning"),
    ],
)
def test_bad_files_exit_2_with_one_message_and_no_traceback(run, pattern, data, message):
    ran = run("check", pattern(data))
    assert ran.code == 2
    assert message in ran.err
    assert "Traceback" not in ran.err and ran.out == ""
    assert ran.err.count(message) == 1


def test_carriage_returns_and_a_byte_order_mark_are_fine(run, pattern):
    data = b"\xef\xbb\xbf" + GOOD.encode().replace(b"\n", b"\r\n")
    assert run("check", pattern(data)).code == 0


@pytest.mark.parametrize(
    ("arguments", "message"),
    [
        (("check", "nothing.score"), "cannot read"),
        (("check", "."), "is a folder"),
        (("check", "leaf-crwn"), 'did you mean "leaf-crown"?'),
        (("check", "leaf-crown", "--set", "leaves"), "write --set leaves=9"),
        (("check", "leaf-crown", "--set", "leaves=99"), "outside its range"),
        (("check", "leaf-crown", "--set", "leaves=9.5mm"), "takes a plain number"),
        (("check", "leaf-crown", "--set", "leaves=))"), "does not fit the knob"),
        (("check", "leaf-crown", "--set", "leavs=9"), 'no knob "leavs"'),
        (("check", "leaf-crown", "--loaf", "round width 220"), "--loaf:1:18"),
        (("check", "leaf-crown", "--bake", "spring 9"), "above 3"),
        (("check", "leaf-crown", "--dough", "ripe"), "dough ripe"),
        (("check", "leaf-crown", "--dough", "over temperature 5"), "--dough:1:24"),
        (("check",), "Missing argument"),
        (("chek", "leaf-crown"), "No such command"),
    ],
)
def test_wrong_usage_exits_2_with_a_way_out(run, arguments, message):
    ran = run(*arguments)
    assert ran.code == 2
    assert message in ran.err
    assert "Traceback" not in ran.err


def test_a_design_where_a_count_is_turned_to_a_part_is_refused(run):
    ran = run("check", "leaf-crown", "--set", "leaves=8.5")
    assert ran.code == 2
    assert "whole number" in ran.err


def test_colour_only_where_it_is_wanted(run, pattern, monkeypatch):
    name = pattern(ROUND + "slash 400mm depth 10mm\n")
    monkeypatch.setenv("NO_COLOR", "1")
    assert "\x1b" not in run("check", name).out


def test_json_tells_of_every_cut_and_opening_which_it_is(run):
    """The number is that of the guide and the table, the key stays through edits."""
    told = json.loads(run("check", "leaf-bough", "--json").out)
    table = run("check", "leaf-bough").out
    for cut in told["cuts"]:
        assert f"{cut['number']:>3}  {cut['key']}" in table
    assert [(each["number"], each["key"]) for each in told["opening"]] == [
        (cut["number"], cut["key"]) for cut in told["cuts"]
    ]
    assert {"leaf vein 1 of 2", "leaf vein 2 of 2", "slash"} <= {cut["key"] for cut in told["cuts"]}
