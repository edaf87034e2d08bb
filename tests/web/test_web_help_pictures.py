"""The pictures of the page's help: small, told in words, and legible by day and by night."""

import io
import re
from pathlib import Path
from xml.etree import ElementTree

import pytest
from PIL import Image

import scorecraft.web

HELP = Path(scorecraft.web.__file__).parent / "static" / "help"
NAMES = ("strings", "light-first", "blade", "depth", "order", "steam", "card", "measure")
MOST_BYTES = 12_000
SVG = "{http://www.w3.org/2000/svg}"
PAPERS = {"light": "#fffdf8", "dark": "#26201a"}
"""What the page lays the pictures on (`--sheet` of base.css)."""


def test_there_are_eight_pictures_and_no_other():
    assert {path.name for path in HELP.iterdir()} == {f"{name}.svg" for name in NAMES}


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_is_small_and_says_what_it_shows(name):
    path = HELP / f"{name}.svg"
    assert path.stat().st_size < MOST_BYTES
    root = ElementTree.fromstring(path.read_bytes())
    assert root.tag == f"{SVG}svg" and root.get("viewBox") == "0 0 320 200"
    title, desc = root.findtext(f"{SVG}title"), root.findtext(f"{SVG}desc")
    assert title and desc and len(desc) > len(title)
    known = {"svg", "title", "desc", "style", "defs", "g", "use", "path", "circle", "ellipse"}
    assert {each.tag.removeprefix(SVG) for each in root.iter()} <= known | {"rect", "text"}


@pytest.mark.parametrize("name", NAMES)
def test_a_color_of_the_page_has_one_to_fall_back_on(name):
    text = (HELP / f"{name}.svg").read_text(encoding="utf-8")
    used = re.findall(r"var\((--[a-z-]+)(, #[0-9a-f]{6})?\)", text)
    assert used and all(fallback for _, fallback in used)
    for scheme in text.split("@media")[:2]:
        assert {each for each, _ in used} <= set(re.findall(r"(--[a-z-]+):#", scheme))


@pytest.mark.parametrize("name", NAMES)
def test_the_server_gives_a_picture_out(asking, name):
    answer = asking.get(f"/static/help/{name}.svg")
    assert answer.status_code == 200 and answer.mimetype == "image/svg+xml"


@pytest.fixture(scope="module", params=PAPERS)
def shown(browser, live, request) -> tuple[str, dict[str, Image.Image]]:
    """Every picture as the page shows it by day or by night, in an image, on the page's paper."""
    scheme = request.param
    page = browser.new_page(viewport={"width": 320, "height": 200}, color_scheme=scheme)
    page.goto(live[0])
    shots = {}
    for name in NAMES:
        page.evaluate(
            """async ([source, paper]) => {
                document.body.replaceChildren();
                const image = new Image();
                image.src = source;
                await image.decode();
                const look = { position: "fixed", inset: "0", background: paper };
                for (const [key, value] of Object.entries(look)) {
                    image.style.setProperty(key, value);
                }
                document.body.append(image);
            }""",
            [f"/static/help/{name}.svg", PAPERS[scheme]],
        )
        shots[name] = Image.open(io.BytesIO(page.screenshot())).convert("RGB")
    page.close()
    return scheme, shots


def luminance(color: tuple[int, int, int]) -> float:
    """Give the relative luminance of a colour (WCAG 2.2; recalled)."""
    lit = [part / 255 for part in color]
    linear = [p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in lit]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def contrast(one: tuple[int, int, int], other: tuple[int, int, int]) -> float:
    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


@pytest.mark.parametrize("name", NAMES)
def test_a_picture_takes_its_colors_from_day_and_night(shown, name):
    scheme, shots = shown
    ink = {"light": ("#2a211a", "#675a4c", "#34427a"), "dark": ("#f1e8da", "#bfb09c", "#b3bdf2")}
    seen = {color for _, color in shots[name].getcolors(64_000)}
    paper = tuple(bytes.fromhex(PAPERS[scheme][1:]))
    assert shots[name].getpixel((1, 1)) == paper
    found = [each for each in (tuple(bytes.fromhex(i[1:])) for i in ink[scheme]) if each in seen]
    assert found and all(contrast(each, paper) >= 4.5 for each in found)


@pytest.mark.parametrize("name", NAMES)
def test_nothing_touches_the_edge_of_a_picture(shown, name):
    scheme, shots = shown
    paper = tuple(bytes.fromhex(PAPERS[scheme][1:]))
    edges = [(x, y) for x in range(320) for y in (0, 199)]
    edges += [(x, y) for y in range(200) for x in (0, 319)]
    assert all(shots[name].getpixel(at) == paper for at in edges)
