"""The gallery is the golden set: every shipped pattern's picture, compared as text.

`python -m pytest tests/test_gallery.py --remake` writes it anew; look at it before committing.
"""

import difflib
from pathlib import Path

import pytest

from scorecraft import design
from scorecraft.drawing.loafview import loaf_picture
from scorecraft.drawing.svg import svg
from scorecraft.shelf import shelf

GALLERY = Path(__file__).parents[1] / "gallery"
PICTURE_MM = 120.0


def picture(name: str, **options) -> str:
    return svg(loaf_picture(design(name, **options).layout, width_mm=PICTURE_MM))


def compare(path: Path, text: str, remake: bool) -> None:
    """Compare a text with its golden file, or write the file."""
    if remake:
        path.write_text(text, encoding="utf-8")
    assert path.exists(), f"{path.name} is missing: run with --remake"
    old, new = path.read_text(encoding="utf-8").splitlines(), text.splitlines()
    changed = list(difflib.unified_diff(old, new, "golden", "now", n=0, lineterm=""))
    shown = "\n".join(line[:160] for line in changed[:24])
    assert not changed, f"{path.name} has changed in {len(changed)} lines:\n{shown}"


@pytest.mark.parametrize("name", shelf())
def test_every_shipped_pattern_draws_as_in_the_gallery(name, remake):
    compare(GALLERY / f"{name}.svg", picture(name), remake)


@pytest.mark.xfail(strict=True, reason="proves that the comparison can fail")
def test_a_changed_picture_is_noticed():
    compare(GALLERY / "leaf-crown.svg", picture("leaf-crown", knobs={"leaves": 9}), False)


def test_the_gallery_shows_every_pattern_and_no_other(remake):
    compare(GALLERY / "README.md", contents(), remake)
    stems = {path.stem.removesuffix("-bloom") for path in GALLERY.glob("*.svg")}
    assert stems == set(shelf())


def contents() -> str:
    """Write the gallery's page from the patterns themselves."""
    lines = [
        "# Gallery",
        "",
        "Every shipped pattern, on the loaf it was made for: as it is cut, seen from above. Print",
        "one at full size with `scorecraft guide NAME`.",
        "",
    ]
    for name, path in shelf().items():
        made = design(name)
        head = path.read_text("utf-8").split("title", 1)[0]
        opening = [line[2:] for line in head.splitlines() if line.startswith("# ")]
        lines += [f"## {made.layout.title}", "", *opening, ""]
        lines += [f'<img src="{name}.svg" alt="{made.layout.title}, as it is cut" width="380">', ""]
        lines += [f"`{name}`", ""]
    return "\n".join(lines)
