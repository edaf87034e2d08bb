"""The bake log: nothing is lost, by a crash or by two runs at once."""

import json
import multiprocessing
import os
import sys
from pathlib import Path

import pytest
from support.log_writers import in_small_pieces, without_fcntl, write_many

from scorecraft.errors import UsageError
from scorecraft.tune import log
from scorecraft.tune.telling import log_text


def test_bakes_are_kept_in_order(tmp_path):
    path = tmp_path / "bakes.jsonl"
    for number in range(3):
        log.add(path, {"number": number, "note": "crisp\nmürbe"})
    read = log.read(path)
    assert [bake["number"] for bake in read.bakes] == [0, 1, 2]
    assert read.unreadable == ()
    assert path.read_bytes().count(b"\n") == 3


def test_a_line_torn_by_a_crash_costs_no_other_bake(tmp_path):
    path = tmp_path / "bakes.jsonl"
    log.add(path, {"number": 0})
    with path.open("ab") as file:
        file.write(b'{"number": 1, "note": "half wri')
    log.add(path, {"number": 2})
    read = log.read(path)
    assert [bake["number"] for bake in read.bakes] == [0, 2]
    assert read.unreadable == (2,)
    assert b"half wri" in path.read_bytes()


def test_lines_that_are_no_bake_are_told(tmp_path):
    path = tmp_path / "bakes.jsonl"
    path.write_bytes(b'[1]\n{"number": 1}\n\xff\n\n"text"\n')
    read = log.read(path)
    assert [bake["number"] for bake in read.bakes] == [1]
    assert read.unreadable == (1, 3, 5)


DEEP = b"[" * 100_000
ODD = [
    b"null", b"[]", b"7", b'"x"', b"\xff", b"\x00", DEEP, b'{"a": ' * 100_000,
    b'{"skin_mm": {"best": ' + b"9" * 5000 + b"}}", b'{"growth": 1e200}', b'{"skin_mm": NaN}',
    b'{"cuts": [{"predicted_mm": ' + b"9" * 400 + b"}]}", b'{"cuts": [{"predicted_mm": -1e999}]}',
    b'{"cuts": null}', b'{"cuts": {}}', b'{"cuts": [null]}', b'{"cuts": [{"measured_mm": null}]}',
    b'{"cuts": [{"measured_mm": 9}]}', b'{"cuts": [{"measured_mm": ["9"]}]}',
    b'{"cuts": [{"predicted_mm": true}]}', b'{"cuts": [{"predicted_mm": null}]}',
    b'{"skin_mm": 9}', b'{"skin_mm": {"best": null}}', b'{"skin_mm": {"best": [1]}}',
    b'{"date": null}', b'{"pattern": 5}', b'{"note": ["x"]}', b'{"title": {}}',
]  # fmt: skip


@pytest.mark.parametrize("line", ODD, ids=lambda line: ascii(line[:40]))
def test_an_odd_line_costs_no_other_bake_and_stays(tmp_path, line):
    path = tmp_path / "bakes.jsonl"
    good = {"date": "2026-01-02", "pattern": "sun", "skin_mm": {"best": 11.5}}
    log.add(path, good)
    with path.open("ab") as file:
        file.write(line + b"\n")
    log.add(path, good)
    read = log.read(path)
    assert (read.bakes, read.unreadable) == ((good, good), (2,))
    text = log_text(read)
    assert text.count("sun") == 2 and "line 2 cannot be read" in text
    assert line in path.read_bytes()


def test_a_byte_order_mark_is_no_fault(tmp_path):
    path = tmp_path / "bakes.jsonl"
    path.write_bytes(b'\xef\xbb\xbf{"number": 1}\r\n')
    assert log.read(path) == log.Logged(({"number": 1},), ())


def test_what_is_no_file_on_the_disk_is_refused():
    with pytest.raises(UsageError, match="not a file on the disk"):
        log.read(Path(os.devnull))
    with pytest.raises(UsageError, match="not a file on the disk"):
        log.add(Path(os.devnull), {})


@pytest.mark.parametrize("work", [write_many, without_fcntl, in_small_pieces])
def test_two_runs_at_once_lose_nothing(tmp_path, work):
    path = tmp_path / "bakes.jsonl"
    spawn = multiprocessing.get_context("spawn")
    runs = [spawn.Process(target=work, args=(path, writer)) for writer in (1, 2)]
    for run in runs:
        run.start()
    for run in runs:
        run.join(60)
        assert run.exitcode == 0
    read = log.read(path)
    assert read.unreadable == ()
    for writer in (1, 2):
        own = [bake["number"] for bake in read.bakes if bake["writer"] == writer]
        assert own == list(range(25))
    assert not (tmp_path / "bakes.jsonl.lock").exists()


def test_a_lock_that_stays_is_told(tmp_path, monkeypatch):
    monkeypatch.setitem(sys.modules, "fcntl", None)
    monkeypatch.setattr(log, "WAIT_S", 0.1)
    (tmp_path / "bakes.jsonl.lock").touch()
    with pytest.raises(UsageError, match=r"delete bakes\.jsonl\.lock"):
        log.add(tmp_path / "bakes.jsonl", {})


def test_a_place_that_cannot_be_written_is_told(tmp_path):
    with pytest.raises(UsageError, match="cannot write"):
        log.add(tmp_path / "none" / "bakes.jsonl", {})
    with pytest.raises(UsageError, match="cannot read"):
        log.read(tmp_path / "none.jsonl")


def test_a_number_that_json_does_not_have_is_not_written(tmp_path):
    path = tmp_path / "bakes.jsonl"
    with pytest.raises(ValueError, match="JSON"):
        log.add(path, {"skin": float("nan")})
    assert not path.exists()
    assert json.dumps({}) == "{}"
