"""PDF and PNG, with and without Cairo, read back with pypdf and Pillow: pages, scale, bytes."""

import io
import subprocess
import sys

import numpy as np
import pypdf
import pytest
from PIL import Image

from scorecraft.drawing.pdf import pdf, png
from scorecraft.drawing.picture import Ink, Label, Picture, Shape, line
from scorecraft.errors import UsageError

both_ways = pytest.mark.usefixtures("both_ways")


def page(width, height, text="Leaf crown é"):
    rule = Shape((line(20, 50, 120, 50),), ink=Ink(0.5, cap="butt"))
    return Picture(width, height, "page", items=(rule, Label(text, (20, 40), 4)))


@both_ways
def test_pages_keep_their_own_sizes_and_the_title():
    data = pdf([page(210, 297), page(431.8, 279.4), page(297, 420)], "Brot – épi")
    reader = pypdf.PdfReader(io.BytesIO(data), strict=True)
    sizes = [[float(v) / 72 * 25.4 for v in each.mediabox[2:]] for each in reader.pages]
    assert np.allclose(sizes, [[210, 297], [431.8, 279.4], [297, 420]], atol=0.001)
    assert reader.metadata.title == "Brot – épi"
    assert reader.viewer_preferences.print_scaling == "/None"
    assert all(each.get("/UserUnit", 1) == 1 for each in reader.pages)


@both_ways
def test_second_run_makes_the_same_bytes():
    pages = [page(210, 297), page(297, 210)]
    assert pdf(pages, "t") == pdf(pages, "t")


@both_ways
def test_png_has_the_size_white_paper_and_resolution():
    image = Image.open(io.BytesIO(png(page(127, 63.5), dpi=200)))
    assert image.size == (1000, 500)
    assert image.info["dpi"] == pytest.approx((200, 200), abs=0.01)
    assert image.convert("RGB").getpixel((0, 0)) == (255, 255, 255)
    row = np.asarray(image.convert("L"))[round(50 / 25.4 * 200)]
    dark = np.flatnonzero(row < 128)
    assert (dark[-1] - dark[0] + 1) * 25.4 / 200 == pytest.approx(100, abs=0.13)


@both_ways
def test_a_page_beyond_what_readers_take_is_refused():
    with pytest.raises(UsageError, match="5080"):
        pdf([page(6000, 100)], "t")
    with pytest.raises(UsageError, match="5080"):
        png(page(6000, 100))


def test_drawing_modules_load_no_heavy_library():
    code = (
        "import sys, pkgutil, importlib, scorecraft.drawing as d\n"
        "for m in pkgutil.iter_modules(d.__path__, 'scorecraft.drawing.'):\n"
        "    importlib.import_module(m.name)\n"
        "print([n for n in "
        "('svgwrite','cairosvg','cairocffi','fontTools','fpdf','PIL','pypdf','pypdfium2') "
        "if n in sys.modules])"
    )
    run = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert run.stdout.strip() == "[]"
