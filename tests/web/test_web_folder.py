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
