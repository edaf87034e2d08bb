"""The baker's folder: plain files are listed, read once and saved; all else has clear words."""

import os

import pytest

from scorecraft.errors import UsageError
from scorecraft.limits import MOST_BYTES

TEXT = "loaf round width 220mm height 95mm\nslash 90mm\n"


@pytest.fixture
def odd(folder):
    """A folder with links to nowhere, a loop and pipes beside one good pattern."""
    (folder.path / "good.score").write_text(TEXT)
    for suffix in ("score", "svg"):
        (folder.path / f"dangling.{suffix}").symlink_to(f"../none.{suffix}")
        (folder.path / f"loop.{suffix}").symlink_to(f"loop.{suffix}")
        os.mkfifo(folder.path / f"pipe.{suffix}")
    return folder


def test_the_page_works_beside_odd_files(asking, odd):
    listed = asking.get("/api/shelf").get_json()
    assert [each["name"] for each in listed["folder"]] == ["good.score"]
    data = {"text": TEXT, "name": "good.score", "place": "folder"}
    assert asking.told("/api/design", data)["ok"]
    assert asking.told("/api/opening", data)["ok"]
    assert asking.get("/picture/folder/good.score").status_code == 200


@pytest.mark.parametrize("name", ["dangling", "loop", "pipe"])
def test_odd_files_are_neither_opened_nor_written_through(name, asking, odd):
    answer = asking.post("/api/open", {"name": name})
    assert answer.status_code == 400
    assert "not an ordinary file" in answer.get_json()["error"]["message"]
    assert asking.get(f"/picture/folder/{name}.score").status_code == 400
    with pytest.raises(UsageError, match="not an ordinary file"):
        odd.save(name, TEXT, None)
    assert not (odd.path.parent / "none.score").exists()
    said = asking.told("/api/design", {"text": f'{TEXT}trace "{name}.svg"\n', "place": "folder"})
    assert not said["ok"] and said["problems"][0]["line"] == 3


def test_what_is_no_pattern_is_not_saved_over(odd):
    large = odd.path / "large.score"
    large.write_bytes(b"#" * (MOST_BYTES + 1))
    with pytest.raises(UsageError, match="too large to be a pattern"):
        odd.open("large")
    with pytest.raises(UsageError, match="too large to be a pattern"):
        odd.save("large", TEXT, None)


def test_text_and_mark_are_of_one_reading(odd):
    (odd.path / "good.score").write_bytes(b"\xef\xbb\xbf" + TEXT.encode())
    opened = odd.open("good")
    assert opened.text == TEXT
    assert odd.save("good", TEXT + "slash 60mm\n", opened.mark).name == "good.score"


@pytest.fixture
def kept(folder):
    for name in ("crown", "sun"):
        (folder.path / f"{name}.score").write_text(TEXT)
    return folder


def names(folder):
    return sorted(str(path.relative_to(folder.path)) for path in folder.path.rglob("*.score"))


def test_a_file_gets_another_name_that_no_other_has(asking, kept):
    told = asking.told("/api/rename", {"name": "crown.score", "new": "my crown"})
    assert told["name"] == "my crown.score"
    assert asking.told("/api/rename", {"name": "sun", "new": "sun"})["name"] == "sun.score"
    assert names(kept) == ["my crown.score", "sun.score"]
    for name, new, why in (
        ("sun.score", "my crown", "exists already"),
        ("gone", "new", "there is no"),
        ("sun.score", "../sun", "not a file name"),
    ):
        answer = asking.post("/api/rename", {"name": name, "new": new})
        assert answer.status_code == 400 and why in answer.get_json()["error"]["message"]
    assert names(kept) == ["my crown.score", "sun.score"]


def test_a_copy_has_a_name_of_its_own(asking, kept):
    given = [asking.told("/api/duplicate", {"name": "sun.score"})["name"] for _ in range(2)]
    assert given == ["sun copy.score", "sun copy 2.score"]
    assert all((kept.path / each).read_text() == TEXT for each in given)
    long = "x" * 80
    (kept.path / f"{long}.score").write_text(TEXT)
    copy = asking.told("/api/duplicate", {"name": long})["name"]
    assert asking.told("/api/open", {"name": copy})["text"] == TEXT


def test_what_is_deleted_lies_in_the_trash_and_nothing_there_is_lost(asking, kept):
    (where,) = {asking.told("/api/delete", {"name": "sun.score"})["where"]}
    assert where == str(kept.path / "trash" / "sun.score")
    (kept.path / "sun.score").write_text("another")
    asking.told("/api/delete", {"name": "sun"})
    assert names(kept) == ["crown.score", "trash/sun 2.score", "trash/sun.score"]
    assert (kept.path / "trash" / "sun.score").read_text() == TEXT
    assert [each["name"] for each in asking.get("/api/shelf").get_json()["folder"]] == [
        "crown.score"
    ]
    assert asking.post("/api/delete", {"name": "sun.score"}).status_code == 400


def test_a_trash_folder_elsewhere_is_not_used(asking, kept, tmp_path_factory):
    elsewhere = tmp_path_factory.mktemp("elsewhere")
    (kept.path / "trash").symlink_to(elsewhere)
    answer = asking.post("/api/delete", {"name": "sun.score"})
    assert answer.status_code == 400 and "trash folder" in answer.get_json()["error"]["message"]
    assert (kept.path / "sun.score").exists() and not list(elsewhere.iterdir())


def test_the_list_tells_when_a_file_was_written(asking, kept):
    os.utime(kept.path / "sun.score", (1_000_000, 1_000_000))
    told = {each["name"]: each["changed"] for each in asking.get("/api/shelf").get_json()["folder"]}
    assert told["sun.score"] == 1_000_000 < told["crown.score"]
