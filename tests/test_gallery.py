"""The gallery is the golden set: every shipped pattern's picture, compared as text.

`python -m pytest tests/test_gallery.py --remake` writes it anew; look at it before committing.
Blooms, guides and cards are kept as small images, to be looked at: they are compared coarsely,
since libraries that make pixels differ in their last digits.
"""

import difflib
import io
from pathlib import Path

import numpy as np
import pytest
from PIL import Image
from support.shelf_designs import shipped

from scorecraft import design
from scorecraft.bench import plan
from scorecraft.drawing.card.card import card, joined
from scorecraft.drawing.loafview import loaf_picture
from scorecraft.drawing.pdf import png
from scorecraft.drawing.svg import svg
from scorecraft.shelf import shelf

GALLERY = Path(__file__).parents[1] / "gallery"
PICTURE_MM = 120.0
LOOKS = ("bloom", "guide", "card")
ACROSS = {"bloom": 420, "guide": 900, "card": 620}
"""Widths of the small images, in pixels."""
ALIKE = 6.0
"""How far two images' blocks may differ on average, of 255."""
COLUMNS, CELL = 5, 240
"""The contact sheet: blooms in a row, and the pixels of each."""


def picture(name: str, **options) -> str:
    made = design(name, **options) if options else shipped(name)
    return svg(loaf_picture(made.layout, width_mm=PICTURE_MM))


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


def look(name: str, what: str, **options) -> Image.Image:
    """Draw a bloom, guide or card of a pattern as a small image."""
    made = design(name, **options) if options else shipped(name)
    if what == "bloom":
        drawn = made.bloom(width_mm=150.0)
    elif what == "guide":
        (drawn,) = made.printed("guide").pages
    else:
        drawn = joined(card(made.layout, plan(made.layout)))
    dpi = ACROSS[what] / drawn.width_mm * 25.4
    return Image.open(io.BytesIO(png(drawn, dpi))).convert("RGB")


def save(image: Image.Image, path: Path) -> None:
    """Keep an image small: photographs as JPEG, lines with few greys."""
    if path.suffix == ".jpg":
        image.save(path, quality=82, optimize=True)
    else:
        image.quantize(16).save(path, optimize=True)


def blocks(image: Image.Image, size: tuple[int, int] = (24, 24)) -> np.ndarray:
    return np.asarray(image.convert("RGB").resize(size, Image.Resampling.BOX), dtype=float)


def far(one: Image.Image, other: Image.Image) -> float:
    """Say how far two images differ: the mean over blocks of their largest difference."""
    return float(np.abs(blocks(one) - blocks(other)).max(axis=2).mean())


def file_of(name: str, what: str) -> Path:
    return GALLERY / f"{name}-{what}.{'jpg' if what == 'bloom' else 'png'}"


@pytest.mark.parametrize("what", LOOKS)
@pytest.mark.parametrize("name", shelf())
def test_every_look_is_as_in_the_gallery(name, what, remake):
    path = file_of(name, what)
    if not remake and what != "bloom":
        assert path.exists(), f"{path.name} is missing: run with --remake"
        return
    image = look(name, what)
    if remake:
        save(image, path)
    assert far(image, Image.open(path)) < ALIKE


def test_another_bloom_is_noticed():
    other = look("leaf-crown", "bloom", knobs={"leaves": 6})
    assert far(other, Image.open(file_of("leaf-crown", "bloom"))) > ALIKE


def test_the_gallery_shows_every_pattern_and_no_other(remake):
    compare(GALLERY / "README.md", contents(), remake)
    if remake:
        save(contact_sheet(), GALLERY / "contact-sheet.jpg")
    wanted = {f"{name}.svg" for name in shelf()} | {"README.md", "contact-sheet.jpg"}
    wanted |= {file_of(name, what).name for name in shelf() for what in LOOKS}
    assert {path.name for path in GALLERY.iterdir()} == wanted
    assert sum(path.stat().st_size for path in GALLERY.iterdir()) < 12_000_000


def contact_sheet() -> Image.Image:
    """Lay all blooms out on one sheet."""
    rows = -(-len(shelf()) // COLUMNS)
    sheet = Image.new("RGB", (COLUMNS * CELL, rows * CELL), "#efe9dd")
    for index, name in enumerate(shelf()):
        bloom = Image.open(file_of(name, "bloom"))
        bloom.thumbnail((CELL, CELL))
        x = index % COLUMNS * CELL + (CELL - bloom.width) // 2
        sheet.paste(bloom, (x, index // COLUMNS * CELL + (CELL - bloom.height) // 2))
    return sheet


def contents() -> str:
    """Write the gallery's page from the patterns themselves."""
    lines = [
        "# Gallery",
        "",
        "Every shipped pattern on the loaf it was made for: as it is cut, as the model thinks it",
        "will bake, its guide and its bench card. Print one at full size with",
        "`scorecraft guide NAME`.",
        "",
        "![All the loaves, baked](contact-sheet.jpg)",
        "",
    ]
    for name, path in shelf().items():
        title = shipped(name).layout.title
        head = path.read_text("utf-8").split("title", 1)[0]
        opening = [line[2:] for line in head.splitlines() if line.startswith("# ")]
        lines += [f"## {title}", "", *opening, ""]
        lines += [
            f'<img src="{name}.svg" alt="{title}, as it is cut" width="380">',
            f'<img src="{name}-bloom.jpg" alt="{title}, as it may bake" width="380">',
            "",
            f"`{name}`: [guide]({name}-guide.png), [bench card]({name}-card.png)",
            "",
        ]
    return "\n".join(lines)
