"""The room at the bench: floury hands, a clock, short windows, and the way on to the bake.

The page's own clock stands still and is set forward by the tests, so that no tap depends on how
fast this machine is.
"""

import re

import pytest

from scorecraft.designing import make
from scorecraft.drawing.card.telling import oven
from scorecraft.drawing.paper.cautions import BLADE, OVEN
from scorecraft.web.telling import HANDLE

playwright = pytest.importorskip("playwright.sync_api")
LATER_MS = 1000
SHORT = [(844, 390), (720, 450), (568, 320)]
"""A phone on its side, letters twice as large, and a small window."""
COUNT, CLOCK = ".bench-bar .count", ".clock"


@pytest.fixture
def bench(seen):
    """Open the bench with a clock that only the test sets forward."""

    def opened(name="leaf-crown", size="phone", text="", **more):
        web = seen(size, own_clock=True, **more)
        web.page.clock.install(time=0)
        if text:
            web.start(text, f"{name}.score", "bench")
        else:
            web.open(name, "bench")
        web.page.wait_for_selector(".bench-stage svg")
        web.page.clock.pause_at(60_000)
        return web

    return opened


def tap(page, name):
    page.get_by_role("button", name=name, exact=True).tap()
    page.clock.run_for(LATER_MS)


def told(page, selector, text):
    playwright.expect(page.locator(selector)).to_have_text(text)


@pytest.mark.parametrize("size", ["phone", "small"])
def test_the_bench_on_a_phone(bench, pictures, size):
    web = bench(size=size)
    page = web.page
    for name in ("Start", "Next", "Next"):  # the string lines, and two steps
        tap(page, name)
    web.picture(pictures, "bench-step")
    for name in ("Back", "Next"):  # huge, for floury hands
        box = page.get_by_role("button", name=name, exact=True).bounding_box()
        assert box["height"] >= 84 and box["width"] >= 110
    told(page, COUNT, "2 / 25")
    swipe(page, ".bench-stage", (300, 300), (200, 310))
    told(page, COUNT, "3 / 25")
    page.reload()  # a phone that slept may have to load the page again
    page.wait_for_selector(".bench-stage svg")
    told(page, COUNT, "3 / 25")
    assert page.locator(".bench .cut.now").count() > 0
    assert page.evaluate("() => document.documentElement.scrollHeight <= innerHeight")


def swipe(page, selector, begin, end):
    page.eval_on_selector(
        selector,
        """(element, [[x1, y1], [x2, y2]]) => {
            const send = (what, clientX, clientY) => element.dispatchEvent(
                new PointerEvent(what, { clientX, clientY, pointerType: 'touch', bubbles: true }));
            send('pointerdown', x1, y1);
            send('pointerup', x2, y2);
        }""",
        [begin, end],
    )


def test_one_tap_is_one_step(bench):
    page = bench().page
    tap(page, "Start")
    tap(page, "Next")
    told(page, COUNT, "1 / 25")
    following = page.get_by_role("button", name="Next", exact=True)
    following.tap()
    following.tap()  # at the same moment: the first one's echo
    told(page, COUNT, "2 / 25")
    page.clock.run_for(LATER_MS)
    following.tap()
    told(page, COUNT, "3 / 25")


def test_a_press_that_drags_is_one_step(bench):
    page = bench().page
    tap(page, "Start")
    tap(page, "Next")
    box = page.get_by_role("button", name="Next", exact=True).bounding_box()
    x, y = box["x"] + box["width"] * 0.8, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x - 70, y, steps=4)
    page.mouse.up()
    told(page, COUNT, "2 / 25")
    swipe(page, ".bench-next", (x, y), (x - 70, y))  # a finger's press; its click is not sent here
    told(page, COUNT, "2 / 25")
    swipe(page, ".bench-stage", (300, 100), (240, 300))  # scrolling is no swipe either
    told(page, COUNT, "2 / 25")


def test_a_key_held_down_is_one_step(bench):
    page = bench(size="desk").page
    for _ in range(4):
        page.keyboard.down("ArrowRight")  # from the second on these are repeats
    page.keyboard.up("ArrowRight")
    told(page, COUNT, "25 steps")  # at the string lines
    page.keyboard.press("ArrowRight")
    told(page, COUNT, "1 / 25")


def test_steps_are_counted_once(bench):
    page = bench("swirl", size="desk").page
    words = page.locator(".bench-text").inner_text()
    (steps,) = re.findall(r"(\d+) turntable positions", words)
    told(page, COUNT, f"{steps} steps")
    seen = []
    while "Into the oven" not in page.locator(".bench-text").inner_text():
        page.keyboard.press("ArrowRight")
        seen.append(page.locator(COUNT).inner_text())
    cut = [each for each in seen if "/" in each]
    assert cut == [f"{number} / {steps}" for number in range(1, int(steps) + 1)]


def test_the_clock_rests_before_it_is_set_to_zero(bench):
    page = bench().page
    clock, zero = page.locator(CLOCK), page.get_by_role("button", name="Tap to reset")
    assert clock.inner_text().startswith("0:00 /")
    tap(page, "Start")
    page.clock.run_for(64_000)
    told(page, CLOCK, re.compile("^1:05 /"))
    clock.tap()
    page.clock.run_for(30_000)
    told(page, CLOCK, re.compile("^1:05 /"))  # a tap by mistake has lost nothing
    assert zero.is_visible()
    clock.tap()
    page.clock.run_for(5_000)
    told(page, CLOCK, re.compile("^1:10 /"))
    assert not zero.is_visible()
    clock.tap()
    page.clock.run_for(LATER_MS)
    page.reload()
    page.wait_for_selector(".bench-stage svg")
    told(page, CLOCK, re.compile("^1:10 /"))
    zero.focus()
    page.keyboard.press("Enter")
    told(page, CLOCK, re.compile("^0:00 /"))
    assert page.evaluate("() => document.activeElement.className") == "clock"


@pytest.mark.parametrize("name", ["leaf-crown", "wheat-sheaf"])
def test_short_windows_keep_the_loaf_large_beside_the_words(bench, pictures, name):
    """The loaf takes most of the height, and neither words nor lens lie over what is cut."""
    web = bench(name, size="desk", reduced_motion="reduce")
    page = web.page
    for step, (width, height) in enumerate(SHORT * 3):
        page.set_viewport_size({"width": width, "height": height})
        page.keyboard.press("ArrowRight")
        if step < len(SHORT):
            web.picture(pictures, f"bench-{name}", width)
        loaf = page.locator(
            ".bench-stage > svg > .ring .ticks"
        ).bounding_box()  # the dial hugs the loaf
        assert min(loaf["width"], loaf["height"]) >= 0.7 * height
        words = page.locator(".bench-told").bounding_box()
        assert words["x"] >= loaf["x"] + loaf["width"]
        assert page.evaluate(CLIPPED) == [], step
        lens = page.locator(".lens")
        if lens.is_visible():
            for cut in page.locator(".bench-stage > svg .cut.now").all():
                assert apart(lens.bounding_box(), cut.bounding_box()), step


CLIPPED = """() => [...document.querySelectorAll(
        '.bench button, .bench h1, .bench dd, .turn, .count, .bench-told')]
    .filter((each) => each.checkVisibility())
    .filter((each) => {
        const box = each.getBoundingClientRect();
        const table = each.querySelector('.oven-ways'); // it may be scrolled, below the caution
        if (each.scrollHeight > each.clientHeight + 1 && each.matches('.bench-told')) return !table;
        return box.left < 0 || box.top < 0 || box.right > innerWidth || box.bottom > innerHeight
            || each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0;
    })
    .map((each) => each.textContent)"""


def apart(one, other):
    return (
        one["x"] + one["width"] <= other["x"]
        or other["x"] + other["width"] <= one["x"]
        or one["y"] + one["height"] <= other["y"]
        or other["y"] + other["height"] <= one["y"]
    )


def test_the_handle_and_its_side_are_told(bench):
    page = bench("one-slash", size="desk").page
    asked = {"place": "shelf", "name": "one-slash.score"}
    address = page.url.split("#")[0]
    text = page.request.post(f"{address}api/open", data=asked).json()["text"]
    plan = page.request.post(f"{address}api/bench", data={"text": text}).json()
    lines = [line for step in plan["steps"] for line in step["lines"]]
    leans = [said for line in lines for key, said in line["facts"] if key == HANDLE]
    assert leans
    told_leans = []
    for _ in range(len(plan["steps"]) + 2):
        page.keyboard.press("ArrowRight")
        told_leans += page.locator(".stroke").all_inner_texts()
    for lean in leans:
        assert any(HANDLE in each and lean in each for each in told_leans)


def test_turn_and_cut_are_heard_together(bench):
    page = bench("swirl", size="desk").page
    page.keyboard.press("ArrowRight")
    page.keyboard.press("ArrowRight")
    live = page.locator(".bench [aria-live]")
    assert live.count() == 1 and live.get_attribute("aria-atomic") == "true"
    playwright.expect(live).to_contain_text(re.compile(r"Turn\s*\d+°"))
    playwright.expect(live).to_contain_text("Depth")


def test_the_end_warns_and_leads_on_to_measuring(bench):
    page = bench("one-slash", size="desk").page
    playwright.expect(page.locator(".bench-text")).to_contain_text(BLADE)
    go_to_the_end(page)
    playwright.expect(page.locator(".bench-text")).to_contain_text(OVEN)
    for name, steps in oven(make("one-slash").layout):
        way = page.locator(".oven-ways > div", has_text=name)
        assert way.locator("li").count() == len(steps)
    page.clock.resume()
    page.get_by_role("button", name="Measure", exact=True).click()
    page.wait_for_selector(".measure-loaf svg")
    assert page.evaluate("() => document.activeElement.textContent") == "Measure"


def test_a_guest_has_no_dead_button_at_the_end(bench):
    page = bench("one-slash", size="desk").page
    page.route("**/api/guest", lambda route: route.fulfill(json={"guest": True, "welcome": False}))
    page.reload()
    page.wait_for_selector(".bench-stage svg")
    go_to_the_end(page)
    assert page.locator(".bench-go button:visible").all_inner_texts() == ["Back"]


def go_to_the_end(page):
    while "Into the oven" not in page.locator(".bench-text").inner_text():
        page.keyboard.press("ArrowRight")


def test_back_at_the_beginning_keeps_the_keyboard(bench):
    page = bench("swirl", size="desk").page
    page.keyboard.press("ArrowRight")
    back = page.get_by_role("button", name="Back", exact=True)
    back.focus()
    page.keyboard.press("Enter")
    told(page, ".bench-next span", "Start")
    assert back.get_attribute("aria-disabled") == "true"
    assert page.evaluate("() => document.activeElement.className") == "bench-back"


BATCH = """title "Rolls"
loaf round width 220mm height 95mm
bench loaves 3 skill new temperature 26C
around 7:
    path (0%, 10%) (0%, 60%) depth 8mm blade 40deg
"""


def test_equal_loaves_are_counted_and_a_new_board_starts_the_timer_again(bench, pictures):
    """Two boards: two loaves, and one."""
    web = bench("rolls", "small", BATCH)
    page = web.page
    playwright.expect(page.locator(".bench-text")).to_contain_text("2 boards of up to 2 loaves")
    seen, leads = [], []
    while page.locator(".bench-next span").inner_text() != "Measure":
        page.keyboard.press("ArrowRight")
        page.clock.run_for(30_000)
        seen.append(page.locator(".bench-bar .loaf").inner_text())
        if len(seen) == 3:
            web.picture(pictures, "bench-batch")
        if "Into the oven" in page.locator(".bench-text").inner_text():
            leads.append(page.locator(".bench-text .lead").inner_text())
    assert list(dict.fromkeys(seen)) == [f"Loaf {number} of 3" for number in (1, 2, 3)]
    assert "this board" in leads[0] and "Bring the next one" in leads[1] and len(leads) == 3
    told(page, CLOCK, re.compile("^3:30 /"))  # seven turns of the last board: it rests at its end
    assert page.locator(".turn").all_inner_texts() == [""]
