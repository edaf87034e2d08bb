"""Files are written whole or not at all."""

import os

import pytest

from scorecraft.errors import UsageError
from scorecraft.writing import write_whole


def test_a_new_file_and_one_that_is_replaced(tmp_path):
    path = tmp_path / "a.svg"
    write_whole(path, b"one")
    path.chmod(0o640)
    write_whole(path, b"two")
    assert path.read_bytes() == b"two"
    assert path.stat().st_mode & 0o777 == 0o640
    assert os.listdir(tmp_path) == ["a.svg"]


def test_a_failure_half_way_leaves_the_old_file_and_nothing_else(tmp_path, monkeypatch):
    path = tmp_path / "a.svg"
    path.write_bytes(b"old")

    def full(source, target):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.replace", full)
    with pytest.raises(UsageError, match="no space left"):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert os.listdir(tmp_path) == ["a.svg"]


def test_a_folder_is_no_file(tmp_path):
    with pytest.raises(UsageError, match="is a folder"):
        write_whole(tmp_path, b"x")
    with pytest.raises(UsageError, match="no such file"):
        write_whole(tmp_path / "none" / "a.svg", b"x")
