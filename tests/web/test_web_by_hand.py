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


def test_the_first_design_is_a_wreath_made_from_nothing(seen, pictures):
    """With one finger, on the smallest screen."""
    web, hand = handed(seen, "small")
    page = web.page
    step = page.locator(".first b")
    playwright.expect(step).to_contain_text("1 of 6")
    web.picture(pictures, "hand-empty")
    hand.press("Leaf")
    x, y = hand.place(0, 0.66)
    hand.tap(x, y + 56)  # above a finger
    hand.written(r"^    leaf 60mm width 26mm$")
    playwright.expect(step).to_contain_text("2 of 6")
    x, y = hand.grip("length")
    hand.drag((x, y), (x, y + 0.1 * (hand.place(1, 0)[0] - hand.place(0, 0)[0])))
    hand.written(r"^    leaf (4\d|5\d)mm width 26mm$")
    playwright.expect(step).to_contain_text("3 of 6")
    x, y = hand.grip("turn")
    hand.drag((x, y), hand.place(0.5, 0.65))  # its foot is at (0, 0.4)
    hand.written(r"turn \d+(\.\d)?deg$")
    hand.press("Repeat", exact=False)
    hand.press("× 6")
    hand.written(r"^around 6:$")
    page.keyboard.press("Escape")
    playwright.expect(step).to_contain_text("5 of 6")
    hand.press("Depth", exact=False)
    hand.press("6mm")
    hand.written(r"depth 6mm")
    page.keyboard.press("Escape")
    playwright.expect(step).to_contain_text("6 of 6")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(66)
    playwright.expect(page.locator(".room-words")).to_contain_text("Enough room")
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


def test_move_turn_size_repeat_mirror_draw_delete_and_undo(seen, pictures):
    """With the mouse."""
    web, hand = handed(seen, "desk", LEAF)
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


def test_a_batard_slash_with_two_ears(seen, pictures):
    web, hand = handed(seen, "phone")
    page = web.page
    hand.press("Skip")
    hand.press("Loaf")
    page.locator("#loaf-shape-oval").check(force=True)
    hand.written("^loaf oval ")
    hand.press("Score")
    hand.press("Slash")
    x, y = hand.place(-0.1, 0.35)
    hand.tap(x, y + 56)
    hand.written(r"^(    )?slash 80mm")
    x, y = hand.grip("turn")
    hand.drag((x, y), (x + 14, y + 4))
    hand.written(r"slash .* turn \d+(\.\d)?deg$")
    hand.press("Blade", exact=False)
    hand.press("30deg")
    hand.written(r"slash .* blade 30deg")
    page.keyboard.press("Escape")
    hand.press("Duplicate")
    hand.written(r"slash[^#]*blade 30deg[^#]*slash[^#]*blade 30deg")
    playwright.expect(page.locator(".stage-loaf .cut")).to_have_count(2)
    page.wait_for_selector(".grip-length", state="attached")
    x, y = hand.pick(1)
    hand.drag((x, y), (x + 20, y + 70))
    page.wait_for_function("() => document.querySelectorAll('.stage-loaf .cut').length === 2")
    web.picture(pictures, "hand-batard")
    asked = {"text": hand.text}
    cuts = page.request.post(f"{web.address}api/design", data=asked).json()["cuts"]
    assert [cut["blade_deg"] for cut in cuts] == [30, 30]


def test_the_keyboard_comes_to_every_statement_and_moves_it(seen):
    text = LEAF + "slash 60mm turn 20deg\n"
    web, hand = handed(seen, "desk", text)
    page = web.page
    rows = page.locator(".statement")
    playwright.expect(rows).to_have_count(2)
    page.locator("#panel-score").evaluate("(panel) => panel.querySelector('button').focus()")
    playwright.expect(page.locator(".stage-loaf .cut.own")).to_have_count(11)
    assert "o'clock" in rows.first.inner_text()
    for _ in range(3):
        page.keyboard.press("ArrowRight")
    page.keyboard.press("Shift+ArrowDown")
    hand.written(r"^at y (39|40)mm x [34](\.5)?mm:$")
    page.keyboard.press("]")
    hand.written("depth 6mm turn 5deg$")
    page.keyboard.press("Enter")
    page.fill("#exact-width", "25mm")
    page.fill("#exact-depth", "1/4in")
    page.keyboard.press("Enter")
    hand.written("leaf 40mm width 25mm depth 1/4in turn 5deg$")
    page.keyboard.press("+")
    playwright.expect(page.get_by_role("button", name="Whole loaf")).to_be_visible()
    page.keyboard.press("0")
    playwright.expect(page.get_by_role("button", name="Whole loaf")).to_be_hidden()
    page.keyboard.press("Tab")
    playwright.expect(rows.nth(1)).to_have_attribute("aria-pressed", "true")
    page.keyboard.press("Delete")
    playwright.expect(rows).to_have_count(1)
    assert "slash" not in hand.text
    assert page.evaluate("() => document.activeElement.className") == "statement"
    for _ in range(8):
        page.keyboard.press("Control+z")
    assert hand.text == text


def test_broken_text_rests_the_hand_and_says_why(seen):
    page = handed(seen, "desk", LEAF)[0].page
    page.fill("#pattern-text", LEAF + "slush 3mm\n")
    playwright.expect(page.locator(".hand-hint")).to_contain_text("Fix line 6")
    assert page.locator(".tile").first.is_disabled()
    page.fill("#pattern-text", LEAF)
    page.wait_for_selector(READY)


def test_the_loaf_is_looked_at_closely(seen):
    web, hand = handed(seen, "tablet", LEAF)
    page = web.page
    whole = page.locator(".stage svg").get_attribute("viewBox")
    x, y = hand.place(0, 0.5)
    hand.touch("touchStart", [(x - 30, y), (x + 30, y)])
    for step in range(1, 9):
        hand.touch("touchMove", [(x - 30 - 5 * step, y), (x + 30 + 5 * step, y)])
    hand.touch("touchEnd", [])
    seen_part = page.locator(".stage svg").get_attribute("viewBox")
    assert float(seen_part.split()[2]) < 0.6 * float(whole.split()[2])
    hand.tap(*hand.pick(0))
    page.wait_for_selector(".grip-length", state="attached")
    x, y = hand.pick(0)
    hand.drag((x, y), (x + 40, y))
    hand.written("^at y 45mm x")
    same = playwright.expect(page.locator(".stage svg"))
    same.to_have_attribute("viewBox", seen_part)  # a new picture is looked at as the one before
    hand.press("Whole loaf")
    playwright.expect(page.locator(".stage svg")).to_have_attribute("viewBox", whole)


def test_a_finding_is_fixed_with_one_tap_and_knobs_are_reset(seen, pictures):
    text = BATARD + "knob far 30mm min 10mm max 40mm\n\nat y far:\n    slash 100mm depth 40mm\n"
    web, hand = handed(seen, "phone", text)
    page = web.page
    hand.press("Checks", exact=False)
    fix = page.locator(".fix", has_text="no deeper than")
    fix.first.wait_for()
    web.picture(pictures, "hand-fix")
    fix.first.tap()
    page.wait_for_function("() => !document.querySelector('.finding.stop')")
    assert re.search(r"slash 100mm depth (\d\d)mm", hand.text) and "depth 40mm" not in hand.text
    hand.press("Knobs")
    web.slide("#knob-far", 15)
    hand.written("^knob far 15mm ")
    hand.press("Reset knobs")
    hand.written("^knob far 30mm ")
    playwright.expect(page.locator(".knobs-back")).to_be_hidden()
    undo_all(page)
    assert hand.text == text


def test_own_files_on_the_shelf(seen, live, pictures):
    web = seen("small")
    page = web.page
    for name in ("apple", "berry"):
        (live[1] / f"{name}.score").write_text(EMPTY.replace("My loaf", name.capitalize()))
    page.goto(web.address)
    own = page.locator(".own-card")
    playwright.expect(own.filter(has_text="Apple")).to_have_count(1)

    def choose(title, act):
        page.get_by_role("button", name=f"More for {title}").click()
        page.get_by_role("button", name=act).locator("visible=true").click()

    choose("Apple", "Duplicate")
    playwright.expect(own.filter(has_text="apple copy")).to_have_count(1)
    choose("Berry", "Rename…")
    page.fill("#prompted", "apple")
    page.keyboard.press("Enter")
    playwright.expect(page.locator("#prompted-fault")).to_contain_text("exists already")
    web.complaints.clear()  # the browser itself reports the answer 400
    page.fill("#prompted", "cherry")
    page.keyboard.press("Enter")
    playwright.expect(own.filter(has_text="cherry")).to_have_count(1)
    choose("Berry", "Delete")
    playwright.expect(own.filter(has_text="cherry")).to_have_count(0)
    assert (live[1] / "trash" / "cherry.score").is_file()
    page.fill("#shelf-search", "oval")
    playwright.expect(own).to_have_count(0)
    playwright.expect(page.locator(".card", has_text="Fern")).to_be_visible()
    page.fill("#shelf-search", "one slash")
    page.check("#shelf-baked")
    page.wait_for_function("() => document.querySelector('.card img').src.endsWith('baked')")
    web.picture(pictures, "shelf-baked")
    assert violations(page) == []
