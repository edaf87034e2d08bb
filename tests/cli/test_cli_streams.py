"""What the command line does where its streams, folders and names are not as they should be."""

import subprocess
import sys

import pytest


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
        ("$S guide one-slash -q -o - --as svg >&-; echo $? >&2", 2),
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
