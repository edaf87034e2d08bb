"""Designing on the loaf itself, without the text: with the mouse, one finger, and the keyboard."""

import re

import pytest
from support.web_hand import READY, Hand
from support.web_looks import violations

playwright = pytest.importorskip("playwright.sync_api")
EMPTY = 'title "My loaf"\nloaf round width 220mm height 95mm\n'
LEAF = EMPTY + "\nat y 45mm:\n    leaf 40mm width 20mm depth 6mm\n"
BATARD = 'title "Batard"\nloaf oval width 150mm length 280mm height 80mm\n'


def handed(seen, size, text=None):
    """Open a pattern, or an empty loaf, and take it in hand."""
    web = seen(size)
    page = web.page
    if text is None:
        page.goto(web.address)
        page.get_by_role("button", name="An empty loaf").click()
    else:
        web.start(text, "mine.score", "design", place="")
        page.wait_for_selector(".stage-loaf .dough")
        if size in ("phone", "small"):
            page.get_by_role("button", name="Score", exact=True).tap()
    page.wait_for_selector(READY)
    return web, Hand(web)


def undo_all(page):
    undo = page.get_by_role("button", name="Undo")
    while undo.is_enabled():
        undo.click()


@pytest.mark.parametrize("size", ["desk", "small"])
def test_the_first_design_is_a_wreath_made_from_nothing(seen, pictures, size):
    web, hand = handed(seen, size)
    page = web.page
    step = page.locator(".first b")
    playwright.expect(step).to_contain_text("1 of 6")
    web.picture(pictures, "hand-empty")
    hand.press("Leaf")
    x, y = hand.place(0, 0.45)
    hand.tap(x, y + (56 if hand.finger else 0))  # above a finger
    hand.written(r"^    leaf 60mm width 26mm$")
    playwright.expect(step).to_contain_text("2 of 6")
    x, y = hand.grip("length")
    hand.drag((x, y), (x, y + 0.18 * (hand.place(1, 0)[0] - hand.place(0, 0)[0])))
    hand.written(r"^    leaf (3\d|4\d)mm width 26mm$")
    playwright.expect(step).to_contain_text("3 of 6")
    x, y = hand.grip("turn")
    side = hand.place(0.6, 0.35)
    hand.drag((x, y), side)
    hand.written(r"turn -?\d+deg$")
    hand.press("Repeat", exact=False)
    hand.press("× 8")
    hand.written(r"^around 8:$")
    page.keyboard.press("Escape")
    playwright.expect(step).to_contain_text("5 of 6")
    hand.press("Depth", exact=False)
    hand.press("8mm")
    hand.written(r"depth 8mm")
    page.keyboard.press("Escape")
    playwright.expect(step).to_contain_text("6 of 6")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(88)
    web.picture(pictures, "hand-wreath")
    hand.press("Done")
    assert page.locator(".first").is_hidden()
    undo_all(page)
    assert hand.text == EMPTY
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(0)
    page.goto(f"{web.address}#shelf")
    page.get_by_role("button", name="An empty loaf").click()
    page.wait_for_selector(".hand-hint:not([hidden])")
    assert page.locator(".first").is_hidden()  # shown once


@pytest.mark.parametrize("size", ["desk", "tablet", "phone"])
def test_move_turn_size_repeat_mirror_draw_delete_and_undo(seen, pictures, size):
    web, hand = handed(seen, size, LEAF)
    page = web.page
    hand.tap(*hand.pick(0))
    page.wait_for_selector(".grip-length", state="attached")
    assert page.locator(".stage-loaf .cut.own").count() == 11
    x, y = hand.pick(0)
    hand.drag((x, y), (x + 23, y + 11))
    hand.written(r"^at x \d+(\.5)?mm y \d+(\.5)?mm:|^at y \d+(\.5)?mm x \d+(\.5)?mm:")
    x, y = hand.grip("width")
    hand.drag((x, y), (x + 9, y))
    hand.written(r"leaf 40mm width 2[1-9]mm|leaf 40mm width 3\dmm")
    x, y = hand.grip("turn")
    hand.drag((x, y), (x + 40, y + 20))
    hand.written(r"turn -?\d+deg$")
    hand.press("Mirror")
    hand.written(r"^mirror:$")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(22)
    hand.press("Mirror")
    page.wait_for_function("() => !document.getElementById('pattern-text').value.includes('mirr')")
    hand.press("Duplicate")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(22)
    web.picture(pictures, "hand-picked")
    assert violations(page) == []
    hand.press("Delete")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(11)
    hand.press("Free stroke")
    for _ in range(2):
        hand.press("More copies")
    hand.drag(hand.place(-0.2, -0.1), hand.place(-0.4, -0.2), hand.place(-0.5, -0.45))
    hand.written(r"^around 3:\n    at .*:\n        path \(")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(14)
    path = re.search(r"path (.*)$", hand.text, re.MULTILINE).group(1)
    assert 2 <= path.count("(") <= 12
    web.picture(pictures, "hand-stroke")
    undo_all(page)
    assert hand.text == LEAF
