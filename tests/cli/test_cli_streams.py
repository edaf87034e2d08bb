"""What the command line does where its streams, folders and names are not as they should be."""

import os
import subprocess
import sys
import tomllib
from pathlib import Path

import pytest

import scorecraft
from scorecraft.__main__ import main


def shell(tmp_path, line: str, **environment: str) -> subprocess.CompletedProcess[str]:
    """Run a shell line in which $S is scorecraft."""
    command = ["bash", "-c", f'S="{sys.executable} -m scorecraft"; {line}']
    return subprocess.run(
        command,
        cwd=tmp_path,
        capture_output=True,
        text=True,
        errors="replace",
        env={**ENV, **environment},
    )


ENV = {"PATH": "/usr/bin:/bin", "LANG": "C.UTF-8"}


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("$S words | head -1 > out; echo ${PIPESTATUS[0]}", 0),
        ("$S list | head -1 > out; echo ${PIPESTATUS[0]}", 0),
        ("$S list > /dev/full; echo $?", 2),
        ("$S guide roll-cross -q -o - --as svg >&-; echo $? >&2", 2),
        ("$S check - <&-; echo $?", 2),
        ("$S check /dev/null; echo $?", 2),
        ("ln -s loop.score loop.score; $S check loop.score; echo $?", 2),
        ("$S new . ; echo $?", 2),
        ("$S new /dev/null/mine; echo $?", 2),
    ],
)
def test_broken_streams_and_names_end_with_one_message(tmp_path, line, code):
    ran = shell(tmp_path, line)
    told = (ran.stdout + ran.stderr).strip().splitlines()
    assert told[-1] == str(code) or told[0] == str(code), told
    assert "Traceback" not in ran.stderr and "internal error" not in ran.stderr


def test_a_title_in_another_script_survives_any_locale(tmp_path):
    (tmp_path / "a.score").write_text('title "パン"\nloaf round width 220mm\nslash\n', "utf-8")
    ran = shell(tmp_path, "$S check -q a.score", PYTHONIOENCODING="cp1252", LANG="C")
    assert ran.returncode == 0
    assert ran.stdout.startswith("??: round loaf")


def test_completion_knows_commands_and_shipped_patterns(tmp_path):
    def completed(words: str, number: int) -> str:
        return shell(
            tmp_path, "$S", COMP_WORDS=words, COMP_CWORD=str(number),
            _SCORECRAFT_COMPLETE="bash_complete", _PYTHON__M_SCORECRAFT_COMPLETE="bash_complete",
        ).stdout  # fmt: skip

    assert completed("scorecraft gui", 1) == "plain,guide\n"
    assert "plain,leaf-crown" in completed("scorecraft check leaf", 2)


def test_a_name_with_a_space_is_quoted_for_the_next_command(run, tmp_path):
    assert "scorecraft check 'my loaf.score'" in run("new", "my loaf").err


def test_another_loaf_is_shown_in_its_own_words(run):
    """A slip in --loaf showed the first line of the pattern above its caret."""
    ran = run("check", "leaf-crown", "--loaf", "round width 5mm")
    assert ran.code == 2
    assert "| loaf round width 5mm" in ran.err and "crown of leaves" not in ran.err


def test_a_pattern_without_a_loaf_is_told_with_a_place(run, pattern):
    assert run("check", pattern("slash 3mm\n")).err.startswith("mine.score:1:1: ")


STEERING = "\x1b[31m\x07\x9b2J\u202e"


@pytest.mark.parametrize(
    "arguments",
    [
        ["check", f"no{STEERING}such"],
        ["check", f"no{STEERING}such.score"],
        [f"no{STEERING}command"],
        ["check", "one-slash", f"--no{STEERING}option"],
        ["check", "one-slash", "--set", f"x{STEERING}"],
        ["check", "one-slash", "--loaf", f"round{STEERING}"],
        ["check", "one-slash", "--baker", f"x{STEERING}"],
        ["page", f"x{STEERING}"],
        ["new", f"x{STEERING}"],
        ["tune", "one-slash", "--measured", f"m{STEERING}.csv"],
        ["stencil", "roll-cross", "-o", f"x{STEERING}.svg"],
    ],
)
def test_no_words_of_others_steer_the_terminal(run, arguments):
    ran = run(*arguments)
    assert ran.err
    assert not set("\x1b\x07\x9b\u202e") & set(ran.out + ran.err)


ANY_NAME = b"caf\xe9 \x1b[31m.score"
"""A name that is no UTF-8 and would colour the terminal."""


@pytest.mark.skipif(sys.platform in ("win32", "darwin"), reason="names are Unicode there")
def test_a_bake_of_a_file_of_any_name_is_learned_from_and_listed(run, tmp_path):
    pattern = tmp_path / os.fsdecode(ANY_NAME)
    pattern.write_text("loaf round width 220mm height 95mm\nslash 100mm depth 8mm\n")
    (tmp_path / "m.csv").write_text("cut,width_mm\nslash,9\nslash,11\n")
    ran = run("tune", str(pattern), "--measured", "m.csv", "--log", "log", "--note", "\x1b[2J")
    assert ran.code == 0 and "\x1b" not in ran.out + ran.err
    assert 'pattern = "caf\ufffd \\u001b[31m"' in (tmp_path / "baker.toml").read_text("utf-8")
    listed = run("tune", "--list", "--log", "log")
    assert "caf\ufffd \\u001b[31m" in listed.out and "\\u001b[2J" in listed.out
    assert "\x1b" not in listed.out


def test_ctrl_c_while_the_command_is_loading_stops_it_quietly(monkeypatch, capsys):
    class Pressed:
        """Ctrl-C at the first import of the command line."""

        def find_spec(self, name, path=None, target=None):
            if name.startswith("scorecraft.cli"):
                raise KeyboardInterrupt

    for name in [name for name in sys.modules if name.startswith("scorecraft.cli")]:
        monkeypatch.delitem(sys.modules, name)
    monkeypatch.delattr(scorecraft, "cli", raising=False)
    monkeypatch.setattr(sys, "meta_path", [Pressed(), *sys.meta_path])
    with pytest.raises(SystemExit) as ended:
        main()
    assert ended.value.code == 130
    assert capsys.readouterr() == ("", "")


def test_the_installed_command_starts_where_ctrl_c_is_heard():
    project = tomllib.loads((Path(__file__).parents[2] / "pyproject.toml").read_text())
    assert project["project"]["scripts"] == {"scorecraft": f"{main.__module__}:{main.__name__}"}
