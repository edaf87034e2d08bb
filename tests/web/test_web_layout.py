"""How the page lies: its own letters, any width, any scheme, with the keyboard or the ear alone."""

import io
import re
from itertools import product
from pathlib import Path

import pytest
from support.web_looks import CUT_OFF, READY, WINDOWS

playwright = pytest.importorskip("playwright.sync_api")
STATIC = Path(__file__).parents[2] / "scorecraft" / "web" / "static"
FONTS = STATIC / "fonts"
WIDER = 1.15


def test_the_fonts_are_light_and_their_licences_lie_beside_them():
    fonts = sorted(FONTS.glob("*.woff2"))
    assert len(fonts) == 3
    assert sum(path.stat().st_size for path in fonts) <= 150_000
    told = (FONTS / "README.md").read_text()
    sheet = (STATIC / "fonts.css").read_text()
    for path in fonts:
        assert f"`{path.name}`" in told and f"fonts/{path.name}" in sheet
    licences = sorted(path.name for path in FONTS.glob("LICENSE*"))
    assert len(licences) == 3 and all(name in told for name in licences)
    for name in licences:
        assert "SIL OPEN FONT LICENSE Version 1.1" in (FONTS / name).read_text()


def test_fonts_may_come_from_here_alone_and_are_kept(asking):
    page = asking.get("/")
    assert "font-src 'self'" in page.headers["Content-Security-Policy"]
    for address in re.findall(r'"(/static/fonts/[^"]+)"', page.text):
        answer = asking.get(address)
        assert answer.status_code == 200
        assert re.fullmatch(r"private, max-age=\d+", answer.headers["Cache-Control"])
    assert asking.get("/static/fonts/none.woff2").headers["Cache-Control"] == "no-store"
    assert asking.get("/static/app.js").headers["Cache-Control"] == "no-store"


def test_all_letters_come_from_the_pages_own_fonts(seen):
    """A letter the font lacks would be as wide as another font draws it."""
    web = seen()
    page = web.page
    page.goto(web.address)
    page.wait_for_selector(READY["shelf"])
    used = "".join(path.read_text(encoding="utf-8") for path in STATIC.rglob("*.js"))
    letters = {each for each in used if each.isprintable() and each != " "}
    letters |= {chr(code) for code in (*range(0xA1, 0x180),) if code != 0xAD}
    letters |= set("½⅓⅔¼¾⅛←→↑↓–—‘’“”…″′≤≥−€")
    missing = page.evaluate(
        """async (letters) => {
            const pen = document.createElement('canvas').getContext('2d');
            const missing = [];
            for (const font of ['Scorecraft Sans', 'Vollkorn', 'Scorecraft Code']) {
                const [face] = await document.fonts.load(`40px "${font}"`);
                if (!face) missing.push(font);
                const wide = (letter, other) => {
                    pen.font = `40px "${font}", ${other}`;
                    return pen.measureText(letter).width;
                };
                for (const letter of letters) {
                    const same = wide(letter, 'serif') === wide(letter, 'monospace');
                    if (!same) missing.push(`${font}: ${letter}`);
                }
            }
            return missing;
        }""",
        sorted(letters),
    )
    assert missing == []


@pytest.mark.parametrize("room", READY)
def test_nothing_is_cut_off_at_any_width_with_any_font(seen, room):
    """No room scrolls sideways, no word or control is clipped, with letters 15 % wider too."""
    web = seen(reduced_motion="reduce")
    page = web.page
    web.open("wheat-sheaf", room)
    page.wait_for_selector(READY[room])
    if room == "bench":
        for _ in range(2):
            page.keyboard.press("ArrowRight")
    if room == "measure":
        page.get_by_role("button", name="Measure").first.click()
        page.keyboard.type("12.5")
    fits(page, WINDOWS)
    widen(page)
    fits(page, WINDOWS[::3])


def fits(page, windows):
    """Look at windows: none scrolls sideways or cuts a word off."""
    for width, height in windows:
        page.set_viewport_size({"width": width, "height": height})
        assert page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0, width
        assert page.evaluate(CUT_OFF) == [], width


def widen(page):
    """Draw the page's letters wider, as another machine's fonts would be."""
    measured = """() => {
        const word = document.createElement('span');
        word.textContent = 'Every pattern fits itself';
        word.style.position = 'absolute';
        document.body.append(word);
        const { width } = word.getBoundingClientRect();
        word.remove();
        return width;
    }"""
    before = page.evaluate(measured)
    page.evaluate(
        """async (by) => {
            const faces = [...document.fonts].map((face) => face.family.replaceAll('"', ''));
            const files = { 'Vollkorn': 'vollkorn', 'Scorecraft Sans': 'sans',
                            'Scorecraft Code': 'code' };
            const sheet = new CSSStyleSheet();
            sheet.replaceSync([...new Set(faces)].map((family) =>
                `@font-face { font-family: "${family}"; font-weight: 400 700; size-adjust: ${by};
                 src: url("/static/fonts/${files[family]}.woff2") }`).join(' '));
            document.adoptedStyleSheets.push(sheet);
            await Promise.all([...document.fonts].map((face) => face.load()));
        }""",
        f"{WIDER:.0%}",
    )
    assert page.evaluate(measured) == pytest.approx(WIDER * before, rel=0.02)


def test_the_shelf_breaks_no_word_on_a_large_screen(seen):
    web = seen()
    page = web.page
    web.open("sun", "shelf")
    page.wait_for_selector(READY["shelf"])
    for width, height in WINDOWS:
        page.set_viewport_size({"width": width, "height": height})
        assert page.evaluate(BROKEN) == [], width


BROKEN = """() => [...document.querySelectorAll('.card-title, .card-about')].flatMap((title) => {
    const node = title.firstChild;
    return [...node.data.matchAll(/\\S+/g)].filter((word) => {
        const range = document.createRange();
        range.setStart(node, word.index);
        range.setEnd(node, word.index + word[0].length);
        return range.getClientRects().length > 1 && !word[0].includes('-');
    }).map((word) => word[0]);
})"""


def test_prints_on_the_page_are_read_in_the_dark(seen, pictures):
    web = seen(color_scheme="dark")
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    for look in ("guide", "tension"):
        page.check(f"#look-{look}", force=True)
        page.wait_for_selector(f"[data-look={look}]")
        web.picture(pictures, f"{look}-dark")
        read_in_the_dark(page)


def read_in_the_dark(page):
    inks = page.evaluate("""() => {
        const svg = document.querySelector('.stage svg');
        const paper = svg.querySelector('.paper');
        const { width, height } = paper.getBBox();
        const { width: all, height: high } = svg.viewBox.baseVal;
        return { paper: getComputedStyle(paper).fill, whole: width === all && height === high,
                 words: [...svg.querySelectorAll('text')].map((e) => getComputedStyle(e).fill) };
    }""")
    assert inks["whole"] and inks["words"]
    assert min(contrast(ink, inks["paper"]) for ink in inks["words"]) >= 4.5


def contrast(one, other):
    """The contrast of two colours, by WCAG 2.2 (relative luminance)."""
    light, dark = sorted((luminance(one), luminance(other)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def luminance(colour):
    red, green, blue = (int(each) / 255 for each in re.findall(r"\d+", colour)[:3])
    linear = [
        c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in (red, green, blue)
    ]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


def test_the_ring_of_the_keyboard_is_seen_on_the_large_buttons(seen):
    web = seen(reduced_motion="reduce")
    page = web.page
    web.open("swirl", "bench")
    page.wait_for_selector(READY["bench"])
    page.keyboard.press("ArrowRight")
    for scheme, button in product(("light", "dark"), ("next", "back")):
        page.emulate_media(color_scheme=scheme)
        page.keyboard.press("Tab")  # so that the ring shows
        page.focus(f".bench-{button}")
        ring, ground, style = page.eval_on_selector(
            f".bench-{button}",
            """(each) => { const { outlineColor, backgroundColor, outlineStyle }
                = getComputedStyle(each); return [outlineColor, backgroundColor, outlineStyle] }""",
        )
        assert style == "solid" and contrast(ring, ground) >= 3


def test_slider_tracks_are_seen_in_forced_colours(seen):
    from PIL import Image

    web = seen(forced_colors="active")
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    box = page.locator(".knob input").first.bounding_box()
    picture = Image.open(io.BytesIO(page.screenshot(clip=box))).convert("RGB")
    ground = picture.getpixel((picture.width // 2, 1))
    for share in (0.03, 0.97):  # both ends of the track, away from the thumb
        column = [picture.getpixel((int(share * picture.width), y)) for y in range(picture.height)]
        marked = [each for each in column if contrast(rgb(each), rgb(ground)) >= 3]
        assert len(marked) >= 2
        assert column[0] == column[-1] == ground


def rgb(pixel):
    return "rgb({}, {}, {})".format(*pixel)


def test_a_change_of_view_keeps_the_keyboard(seen):
    web = seen()
    page = web.page
    where = "() => [document.activeElement.localName, document.activeElement.innerText]"
    page.goto(web.address)
    page.wait_for_selector(READY["shelf"])
    page.get_by_role("button", name="Open Swirl").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector(READY["design"])
    assert page.evaluate(where) == ["h1", "Swirl"]
    page.get_by_role("link", name="Print").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector(READY["print"])
    assert page.evaluate(where) == ["a", "Print"]
    page.get_by_role("link", name="Bench").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector(READY["bench"])
    assert page.evaluate(where) == ["button", "Start"]
    page.get_by_role("button", name="Leave the bench").focus()
    page.keyboard.press("Enter")
    page.wait_for_selector(READY["design"])
    assert page.evaluate(where) == ["h1", "Swirl"]


def test_another_paper_keeps_the_keyboard_on_the_choice(seen):
    web = seen()
    page = web.page
    web.open("swirl", "print")
    page.wait_for_selector("#paper-A4:checked")
    page.focus("#paper-A4")
    page.keyboard.press("ArrowRight")
    page.wait_for_function("() => document.querySelector('.page').dataset.size.includes('4200')")
    assert page.evaluate("() => document.activeElement.id") == "paper-A3"


def test_a_slider_tells_its_value_once(seen):
    web = seen()
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    for output in page.locator(".knob output").all():
        assert output.get_attribute("aria-hidden") == "true"
    slider = page.locator(".knob input").first
    slider.focus()
    page.keyboard.press("ArrowRight")
    shown = page.locator(".knob-value").first.inner_text()
    assert slider.get_attribute("aria-valuetext") == shown
