"""Runs the command line in this process, from an empty folder."""

from dataclasses import dataclass

import pytest

from scorecraft import cli


@dataclass
class Ran:
    code: int
    out: str
    err: str


class Never:
    """A timer whose time never comes, however slow the machine is."""

    def __init__(self, seconds, *more):
        pass

    def start(self):
        pass

    def cancel(self):
        pass


@pytest.fixture
def run(tmp_path, monkeypatch, capfdbinary):
    """Run `scorecraft ARGS` with an optional standard input; give its exit code and output."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setattr("scorecraft.cli.output.Timer", Never)
    monkeypatch.setenv("LANG", "de_DE.UTF-8")
    for name in ("LC_ALL", "LC_PAPER"):
        monkeypatch.delenv(name, raising=False)

    def ran(*arguments: str) -> Ran:
        code = cli.run(list(arguments))
        out, err = capfdbinary.readouterr()
        return Ran(code, out.decode("utf-8", "replace"), err.decode("utf-8", "replace"))

    return ran


@pytest.fixture
def pattern(tmp_path):
    """Write a pattern file and give its name."""

    def write(text: str | bytes, name: str = "mine.score") -> str:
        data = text if isinstance(text, bytes) else text.encode()
        (tmp_path / name).write_bytes(data)
        return name

    return write
