"""Files are written whole or not at all, through links, and into what is no file as it is."""

import os
import signal
import stat
import subprocess
import sys
import threading
from pathlib import Path

import pytest

from scorecraft.errors import UsageError
from scorecraft.writing import LEFT, write_whole

POSIX = pytest.mark.skipif(os.name != "posix", reason="pipes, devices and locks of POSIX")


def left_file(folder, name="0123"):
    return folder / LEFT.replace("*", name)


def test_a_new_file_and_one_that_is_replaced(tmp_path):
    path = tmp_path / "a.svg"
    write_whole(path, b"one")
    path.chmod(0o640)
    write_whole(path, b"two")
    assert path.read_bytes() == b"two"
    assert path.stat().st_mode & 0o777 == 0o640
    assert os.listdir(tmp_path) == ["a.svg"]


@POSIX
def test_a_new_file_is_for_those_whom_the_mask_allows(tmp_path):
    before = os.umask(0o027)
    try:
        write_whole(tmp_path / "a.svg", b"x")
    finally:
        os.umask(before)
    assert (tmp_path / "a.svg").stat().st_mode & 0o777 == 0o640


@pytest.mark.parametrize("call", ["os.replace", "os.fsync"])
def test_a_failure_half_way_leaves_the_old_file_and_nothing_else(tmp_path, monkeypatch, call):
    path = tmp_path / "a.svg"
    path.write_bytes(b"old")

    def full(*given):
        raise OSError(28, "No space left on device")

    monkeypatch.setattr(call, full)
    with pytest.raises(UsageError, match="no space left"):
        write_whole(path, b"new")
    assert path.read_bytes() == b"old"
    assert os.listdir(tmp_path) == ["a.svg"]


def test_file_and_folder_are_forced_to_the_disk(tmp_path, monkeypatch):
    forced = []
    real = os.fsync
    monkeypatch.setattr("os.fsync", lambda file: (forced.append(os.fstat(file)), real(file)))
    write_whole(tmp_path / "a.svg", b"x")
    kinds = [stat.S_IFMT(each.st_mode) for each in forced]
    assert kinds == ([stat.S_IFREG, stat.S_IFDIR] if os.name == "posix" else [stat.S_IFREG])
    assert forced[0].st_size == 1


def test_a_folder_is_no_file(tmp_path):
    with pytest.raises(UsageError, match="is a folder"):
        write_whole(tmp_path, b"x")
    with pytest.raises(UsageError, match="no such file"):
        write_whole(tmp_path / "none" / "a.svg", b"x")


def test_a_name_that_no_file_can_have_is_told(tmp_path):
    with pytest.raises(UsageError, match="no file can be called"):
        write_whole(tmp_path / "a\0b", b"x")


@POSIX
def test_a_link_stays_and_what_it_leads_to_is_replaced(tmp_path):
    inner = tmp_path / "inner"
    inner.mkdir()
    (inner / "real.svg").write_bytes(b"old")
    (tmp_path / "one.svg").symlink_to("inner/real.svg")
    (tmp_path / "two.svg").symlink_to("one.svg")
    (tmp_path / "new.svg").symlink_to(inner / "made.svg")
    for name, target in (("two.svg", "real.svg"), ("new.svg", "made.svg")):
        write_whole(tmp_path / name, b"new")
        assert (tmp_path / name).is_symlink()
        assert (inner / target).read_bytes() == b"new"
    assert sorted(os.listdir(inner)) == ["made.svg", "real.svg"]
    assert sorted(os.listdir(tmp_path)) == ["inner", "new.svg", "one.svg", "two.svg"]


@POSIX
def test_a_link_to_itself_and_one_to_a_folder_are_refused(tmp_path):
    (tmp_path / "a.svg").symlink_to("a.svg")
    (tmp_path / "b.svg").symlink_to(tmp_path)
    with pytest.raises(UsageError, match="cannot write"):
        write_whole(tmp_path / "a.svg", b"x")
    with pytest.raises(UsageError, match="is a folder"):
        write_whole(tmp_path / "b.svg", b"x")


@POSIX
@pytest.mark.parametrize("data", [b"short", b"longer than before"])
def test_both_names_of_a_file_stay_one_file(tmp_path, data):
    one, two = tmp_path / "one.svg", tmp_path / "two.svg"
    one.write_bytes(b"what was there")
    os.link(one, two)
    write_whole(two, data)
    assert one.read_bytes() == data
    assert os.path.samefile(one, two)
    assert sorted(os.listdir(tmp_path)) == ["one.svg", "two.svg"]


@POSIX
def test_a_pipe_gets_the_data_and_stays_a_pipe(tmp_path):
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    got = []
    reader = threading.Thread(target=lambda: got.append(pipe.read_bytes()))
    reader.start()
    data = b"x" * 300_000
    write_whole(pipe, data)
    reader.join(60)
    assert got == [data]
    assert stat.S_ISFIFO(pipe.stat().st_mode)


@POSIX
def test_a_device_stays_a_device():
    write_whole(Path(os.devnull), b"x")
    assert stat.S_ISCHR(os.stat(os.devnull).st_mode)


@POSIX
@pytest.mark.skipif(not os.path.exists("/proc/self/fd"), reason="a system with /proc")
@pytest.mark.parametrize("name", ["/dev/stdout", "/dev/fd/1", "/proc/self/fd/1"])
def test_a_name_of_standard_output_is_written_on_from_where_it_stands(tmp_path, name):
    """`... >> file` with -o /dev/stdout: what stands there is not lost."""
    code = f"from pathlib import Path; from scorecraft.writing import write_whole as w; " \
           f"w(Path({name!r}), b'more')"  # fmt: skip
    kept = tmp_path / "kept"
    kept.write_bytes(b"before ")
    with kept.open("ab") as out:
        subprocess.run([sys.executable, "-c", code], stdout=out, check=True)
    assert kept.read_bytes() == b"before more"
    piped = subprocess.run([sys.executable, "-c", code], capture_output=True, check=True)
    assert piped.stdout == b"more"


KILLED = """
import os, signal, sys
from pathlib import Path
from scorecraft import writing
def kill(source, target):
    if sys.argv[2] == "kill":
        os.kill(os.getpid(), signal.SIGKILL)
    print("there", flush=True)
    sys.stdin.read()
    real(source, target)
real, os.replace = os.replace, kill
writing.write_whole(Path(sys.argv[1]), b"x" * 1000)
"""


@POSIX
def test_what_a_killed_run_left_is_swept_by_the_next(tmp_path):
    ran = subprocess.run([sys.executable, "-c", KILLED, str(tmp_path / "a.svg"), "kill"])
    assert ran.returncode == -signal.SIGKILL
    (left,) = os.listdir(tmp_path)
    assert left.startswith(".scorecraft-")
    write_whole(tmp_path / "other.svg", b"x")
    assert os.listdir(tmp_path) == ["other.svg"]


@POSIX
def test_the_file_of_a_run_that_lives_is_let_be(tmp_path):
    run = subprocess.Popen(
        [sys.executable, "-c", KILLED, str(tmp_path / "a.svg"), "wait"],
        stdin=subprocess.PIPE, stdout=subprocess.PIPE,
    )  # fmt: skip
    assert run.stdout.readline() == b"there\n"
    write_whole(tmp_path / "b.svg", b"x")
    assert len(os.listdir(tmp_path)) == 2
    run.communicate(timeout=60)
    assert run.returncode == 0
    assert sorted(os.listdir(tmp_path)) == ["a.svg", "b.svg"]
    assert (tmp_path / "a.svg").stat().st_size == 1000


@POSIX
def test_only_its_own_left_files_are_swept(tmp_path):
    keep = tmp_path / "keep"
    keep.write_bytes(b"x")
    left_file(tmp_path, "link").symlink_to(keep)
    left_file(tmp_path, "folder").mkdir()
    (tmp_path / ".a.svg.tmp").touch()
    left_file(tmp_path).touch()
    write_whole(tmp_path / "b.svg", b"x")
    names = {".a.svg.tmp", "b.svg", "keep", ".scorecraft-link.tmp", ".scorecraft-folder.tmp"}
    assert set(os.listdir(tmp_path)) == names


def test_without_such_locks_a_file_is_written_all_the_same(tmp_path, monkeypatch):
    monkeypatch.setattr("scorecraft.writing.LOCKS", False)
    path = tmp_path / "a.svg"
    for data in (b"one", b"two"):
        write_whole(path, data)
        assert path.read_bytes() == data
    assert os.listdir(tmp_path) == ["a.svg"]


def test_the_longest_name_that_the_disk_takes_is_written(tmp_path):
    path = tmp_path / ("a" * 251 + ".svg")
    write_whole(path, b"x")
    assert path.read_bytes() == b"x"
