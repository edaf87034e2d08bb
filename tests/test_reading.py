"""Only ordinary files are read, and never more of them than agreed."""

import os
import socket

import pytest

from scorecraft.errors import UsageError
from scorecraft.reading import read_bytes, read_text


def refused(path, most=100):
    with pytest.raises(UsageError) as caught:
        read_bytes(path, most, "a drawing")
    return caught.value


def test_an_ordinary_file_is_read_up_to_its_limit(tmp_path):
    path = tmp_path / "a.svg"
    path.write_bytes(b"x" * 100)
    assert read_bytes(path, 100, "a drawing") == read_bytes(str(path), 100, "a drawing")
    assert "too large to be a drawing: more than 99 bytes" in refused(path, 99).message


def test_no_more_than_the_limit_is_ever_held(tmp_path):
    path = tmp_path / "endless.svg"
    with path.open("wb") as file:
        file.truncate(1 << 40)  # a terabyte of nothing
    assert "too large" in refused(path).message


def test_what_is_no_file_on_the_disk_is_refused(tmp_path):
    pipe, plug = tmp_path / "pipe.svg", tmp_path / "plug.svg"
    os.mkfifo(pipe)  # opening it to read would wait for a writer for ever
    with socket.socket(socket.AF_UNIX) as listening:
        listening.bind(str(plug))
        for path in (pipe, plug, "/dev/zero", "/dev/null"):
            assert "a pipe or a device" in refused(path).message
    assert "is a folder" in refused(tmp_path).message


def test_links_are_followed_and_those_to_nowhere_are_told(tmp_path):
    there, dangling, loop = tmp_path / "there", tmp_path / "dangling", tmp_path / "loop"
    (tmp_path / "a.svg").write_bytes(b"x")
    there.symlink_to("a.svg")
    dangling.symlink_to("none.svg")
    loop.symlink_to("loop")
    assert read_bytes(there, 100, "a drawing") == b"x"
    for path in (dangling, loop):
        assert "a link that leads nowhere" in refused(path).message


def test_a_link_to_a_pipe_is_a_pipe(tmp_path):
    os.mkfifo(tmp_path / "pipe")
    (tmp_path / "a.svg").symlink_to("pipe")
    assert "a pipe or a device" in refused(tmp_path / "a.svg").message


@pytest.mark.parametrize("name", ["a\0b", "\ud800.svg", "x" * 5000, "none.svg", "none/a.svg"])
def test_names_that_are_no_files_are_told(name, tmp_path, monkeypatch):
    monkeypatch.chdir(tmp_path)
    error = refused(name)
    assert ("no file can be called" in error.message) == (name in ("a\0b", "\ud800.svg"))
    assert error.hint == "check its name"
    str(error).encode("utf-8", "strict")


def test_a_byte_order_mark_is_no_text(tmp_path):
    path = tmp_path / "a.csv"
    path.write_bytes(b"\xef\xbb\xbf1, 12.5\n")
    assert read_text(path, 100, "a list") == "1, 12.5\n"
    path.write_bytes(b"\xef\xbb\xbf\xc3\xa9\r\n12\xff\n")
    with pytest.raises(UsageError, match="not UTF-8") as caught:
        read_text(path, 100, "a list")
    assert (caught.value.place.line, caught.value.place.column) == (2, 3)
