"""While one works: edits, slow and dead servers, kept work, fields that say what they take."""

import re

import pytest
from support.web_patterns import SLASH

playwright = pytest.importorskip("playwright.sync_api")
BROKEN = (
    'title "Broken"\nloaf round width 200mm height 85mm\nknob other 3 min 1 max 5\nslush 30mm\n'
)
TIN = '\ntitle "Mine"\nloaf round width 200mm height 85mm  # my tin\nslash 90mm\n'
CUT = ".stage-loaf .cut"


def ready(page):
    page.wait_for_selector(CUT, state="attached")


def text_is(page, text):
    playwright.expect(page.locator("#pattern-text")).to_have_value(text)


def typed(page, text):
    """Type a whole text at once, as a paste does."""
    page.locator("#pattern-text").evaluate(
        "(f, t) => { f.value = t; f.dispatchEvent(new Event('input')) }", text
    )


def count_of(requests, path):
    return sum(1 for each in requests if each.endswith(path))


class Gate:
    """Holds the server's answers to a path until they are let through."""

    def __init__(self, page, path):
        self.page, self.held, self.open = page, [], False
        page.route(f"**{path}", self.came)

    def came(self, route):
        if self.open:
            route.continue_()
        else:
            self.held.append(route)

    def wait_for(self, count):
        for _ in range(600):
            if len(self.held) >= count:
                return
            self.page.wait_for_timeout(20)
        raise AssertionError(f"{len(self.held)} questions came, not {count}")

    def let(self):
        self.held.pop(0).continue_()

    def let_all(self):
        self.open = True
        while self.held:
            self.let()


# edits are made in the text as it is


def test_a_form_never_writes_over_another_line(seen):
    """Lines added at the top and a slip at the end: the loaf's line is found where it is now."""
    web = seen()
    page = web.page
    web.open("leaf-crown", "design")
    ready(page)
    moved = "# one\n# two\n" + page.input_value("#pattern-text") + "slush 30mm\n"
    typed(page, moved)
    playwright.expect(page.locator(".finding.problem")).to_be_visible()
    page.uncheck("#bake-steam")
    expected = re.sub(r"(\nbake [^\n]*)", r"\1 steam no", moved)
    if expected == moved:
        expected = re.sub(
            r"(\n(?:loaf|dough) [^\n]*)(?!\ndough)(?=\n\n)", r"\1\nbake steam no", moved
        )
    text_is(page, expected)
    page.click("#loaf-shape-oval", force=True)  # it needs the width of what cannot be read
    playwright.expect(page.locator("#lasting")).to_contain_text("Fix the text first")
    text_is(page, expected)
    playwright.expect(page.locator("#loaf-shape-round")).to_be_checked()


def test_a_form_clicked_right_after_typing_takes_the_text_that_was_typed(seen):
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    ready(page)
    gate = Gate(page, "/api/design")
    typed(page, "# one\n" + SLASH.replace("200mm", "300mm"))
    page.check("#loaf-shape-oval", force=True)
    gate.wait_for(1)
    gate.let_all()
    text_is(
        page,
        "# one\n" + SLASH.replace("round width 200mm height 85mm", "oval width 300mm height 85mm "
                                  "length 480mm"),
    )  # fmt: skip


def test_a_slider_and_typing_at_once_both_count(seen):
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    ready(page)
    gate = Gate(page, "/api/edit")
    web.slide("#knob-deep", 9)
    gate.wait_for(1)
    typed(page, "# typed\n" + SLASH)
    gate.let_all()
    text_is(page, "# typed\n" + SLASH.replace("deep 8mm", "deep 9mm"))
    page.keyboard.press("Control+z")
    text_is(page, "# typed\n" + SLASH)


def test_an_edit_on_its_way_does_not_reach_another_file(seen):
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    ready(page)
    gate = Gate(page, "/api/edit")
    web.slide("#knob-deep", 9)
    gate.wait_for(1)
    page.get_by_role("link", name="Shelf").click()
    page.get_by_role("button", name="Open Swirl").click()
    page.wait_for_selector("#knob-arms")
    text = page.input_value("#pattern-text")
    gate.let_all()
    ready(page)
    text_is(page, text)


POINTED = """(words) => {
    const cut = document.querySelector(".stage .touch path");  // each answer draws another one
    if (cut) cut.dispatchEvent(new PointerEvent("pointerover", { bubbles: true }));
    return document.querySelector(".caption").textContent.includes(words);
}"""


def test_sliding_asks_once_for_each_place_and_shows_every_one(seen):
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    page.wait_for_selector("#oven:not([disabled])")
    asked = []
    page.on("request", lambda sent: asked.append(sent.url))
    for value in (9, 10, 11):
        web.slide("#knob-deep", value)
        text_is(page, SLASH.replace("8mm min", f"{value}mm min"))
        page.wait_for_function(POINTED, arg=f"{value} mm deep")
    assert (count_of(asked, "/api/edit"), count_of(asked, "/api/design")) == (3, 3)


# opening what cannot be read


def test_a_broken_file_shows_its_name_and_nothing_of_the_one_before(seen, live, pictures):
    web = seen()
    page = web.page
    (live[1] / "broken.score").write_text(BROKEN)
    web.open("leaf-crown", "design")
    ready(page)
    page.get_by_role("link", name="Shelf").click()
    page.get_by_role("button", name="Open broken.score").click()
    playwright.expect(page.locator(".no-loaf")).to_contain_text("cannot be read yet")
    playwright.expect(page.locator(".loaf-title")).to_have_text("broken.score")
    playwright.expect(page.locator(".finding.problem")).to_contain_text("slush")
    assert page.locator(".knob, .forms input, .stage svg").count() == 0
    playwright.expect(page.locator(".verdict")).not_to_contain_text("last readable version")
    web.picture(pictures, "unreadable")
    page.get_by_role("link", name="Measure").click()
    assert page.locator(".measure .cut-button, .measure svg .cut").count() == 0
    page.get_by_role("link", name="Design").click()
    typed(page, BROKEN.replace("slush", "slash"))
    page.wait_for_selector("#knob-other")
    ready(page)


# work that is not saved


def rescued(page):
    return page.locator(".rescued li")


def closed(page):
    with page.expect_event("close"):
        page.close(run_before_unload=True)


NOTHING_HELD = "() => navigator.locks.query().then((locks) => locks.held.length === 0)"
"""The browser has let go of the work of every tab that was closed."""


def test_work_of_two_tabs_is_kept_apart(seen):
    """Edit in one tab, open another pattern in a second, close the first, then the second."""
    web = seen()
    one = web.page
    web.start(TIN, "mine.score", "design")
    ready(one)
    typed(one, TIN + "# my thought\n")
    playwright.expect(one.locator(".file-dot")).to_be_visible()
    two = web.context.new_page()
    two.goto(web.address)
    two.get_by_role("button", name="Open Swirl").click()
    ready(two)
    typed(two, two.input_value("#pattern-text") + "# another thought\n")
    playwright.expect(two.locator(".file-dot")).to_be_visible()
    three = web.context.new_page()
    closed(one)
    closed(two)
    three.goto(f"{web.address}/static/icon.svg")
    three.wait_for_function(NOTHING_HELD)
    three.goto(web.address)
    ready(three)
    assert three.input_value("#pattern-text").endswith("# another thought\n")
    playwright.expect(three.locator("#lasting")).to_contain_text("more unsaved work on the shelf")
    three.get_by_role("link", name="Shelf").click()
    playwright.expect(rescued(three)).to_have_count(1)
    playwright.expect(three.locator("#lasting p")).to_have_count(0)
    playwright.expect(rescued(three)).to_contain_text("mine.score")
    rescued(three).get_by_role("button", name="Restore").click()
    text_is(three, TIN + "# my thought\n")
    three.get_by_role("link", name="Shelf").click()
    playwright.expect(rescued(three)).to_contain_text("swirl.score")


def test_opening_another_pattern_keeps_the_edits_on_the_shelf(seen, pictures):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "design")
    ready(page)
    typed(page, TIN + "# my thought\n")
    page.get_by_role("link", name="Shelf").click()
    assert rescued(page).count() == 0  # it is open in this tab
    page.get_by_role("button", name="Open Swirl").click()
    page.get_by_role("dialog").get_by_role("button", name="Open it").click()
    ready(page)
    page.get_by_role("link", name="Shelf").click()
    playwright.expect(rescued(page)).to_contain_text("mine.score, ")
    page.wait_for_selector(".card img")
    web.picture(pictures, "rescued")
    rescued(page).get_by_role("button", name="Delete").click()
    page.get_by_role("dialog").get_by_role("button", name="Keep them").click()
    playwright.expect(rescued(page)).to_have_count(1)
    rescued(page).get_by_role("button", name="Delete").click()
    page.get_by_role("dialog").get_by_role("button", name="Delete").click()
    playwright.expect(rescued(page)).to_have_count(0)


def test_opening_what_is_in_the_file_has_a_way_back(seen, live):
    web = seen()
    page = web.page
    file = live[1] / "both.score"
    file.write_text(TIN.replace("Mine", "Both"))
    page.goto(web.address)
    page.get_by_role("button", name="Open Both").click()
    ready(page)
    mine = page.input_value("#pattern-text") + "# mine\n"
    file.write_text(TIN + "# theirs\n")
    typed(page, mine)
    page.keyboard.press("Control+s")
    page.get_by_role("dialog").get_by_role("button", name="Open the changed file").click()
    text_is(page, TIN + "# theirs\n")
    web.complaints.clear()  # the browser itself reports the answer 409
    playwright.expect(page.locator(".file-dot")).to_be_hidden()
    page.get_by_role("link", name="Shelf").click()
    playwright.expect(rescued(page)).to_contain_text("both.score")
    page.get_by_role("link", name="Design").click()
    page.get_by_role("button", name="Undo").click()
    text_is(page, mine)
    page.keyboard.press("Control+s")
    playwright.expect(page.locator("#told")).to_contain_text("both.score")
    assert file.read_text() == mine


def test_a_browser_without_room_is_told_of(seen):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "design")
    ready(page)
    page.evaluate("""() => {
        let size = 4_000_000;
        for (let piece = 0; size > 10; piece++) {
            try { localStorage.setItem('filler' + piece, 'x'.repeat(size)) } catch { size >>= 1 }
        }
    }""")
    typed(page, TIN + "# more\n" * 40)
    playwright.expect(page.locator("#lasting")).to_contain_text("no space left")
    page.evaluate("() => localStorage.removeItem('filler0')")
    typed(page, TIN + "# more\n" * 41)
    playwright.expect(page.locator("#lasting p")).to_have_count(0)


# a server that is away, or slow


def cut_off(page):
    page.context.route("**/api/**", lambda route: route.abort())


def test_a_dead_server_is_told_of_until_it_answers(seen, pictures):
    web = seen("phone")
    page = web.page
    web.start(TIN, "mine.score", "design")
    page.wait_for_selector("#oven:not([disabled])")
    cut_off(page)
    typed(page, TIN + "# more\n")
    playwright.expect(page.locator("#lasting")).to_contain_text("The server is not responding")
    page.get_by_role("button", name="Checks").click()
    playwright.expect(page.locator(".verdict")).to_contain_text("Out of date")
    for look in ("Side", "Guide", "Top"):  # nothing lies over the ways to look
        page.locator(".looking .choice", has_text=look).tap()
        playwright.expect(page.get_by_role("radio", name=look)).to_be_checked()
    web.picture(pictures, "dead")
    page.context.unroute("**/api/**")
    playwright.expect(page.locator("#lasting p")).to_have_count(0)
    playwright.expect(page.locator(".verdict")).not_to_contain_text("Out of date")
    ready(page)
    web.complaints.clear()  # the browser itself reports what did not answer


def test_a_lasting_message_can_be_closed(seen):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "design")
    ready(page)
    cut_off(page)
    typed(page, TIN + "# more\n")
    playwright.expect(page.locator("#lasting p")).to_have_count(1)
    page.get_by_role("button", name="Close this message").click()
    playwright.expect(page.locator("#lasting p")).to_have_count(0)
    assert page.evaluate("() => document.documentElement.scrollHeight <= innerHeight")
    web.complaints.clear()


def test_a_slow_server_gets_one_question_at_a_time_and_shows_the_last(seen, pictures):
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    page.wait_for_selector("#oven:not([disabled])")
    gate = Gate(page, "/api/design")
    for value in (7, 9, 10):
        web.slide("#knob-deep", value)
        text_is(page, SLASH.replace("8mm min", f"{value}mm min"))
    gate.wait_for(1)
    page.wait_for_selector(".working:not([hidden])")
    playwright.expect(page.locator(".verdict")).to_contain_text("Out of date")
    web.picture(pictures, "working")
    assert len(gate.held) == 1
    gate.let()
    gate.wait_for(1)
    assert "deep 10mm" in gate.held[0].request.post_data_json["text"]
    gate.let_all()
    page.wait_for_selector(".working", state="hidden")
    page.hover(".stage .touch path", force=True)
    playwright.expect(page.locator(".caption")).to_contain_text("10 mm deep")


def test_pictures_come_while_a_slow_server_is_asked_on_and_on(seen):
    """Each answer is shown although the text has gone on; the hand on the slider stays free."""
    web = seen()
    page = web.page
    web.start(SLASH, "mine.score", "design")
    page.wait_for_selector("#oven:not([disabled])")
    gate = Gate(page, "/api/design")
    typed(page, SLASH.replace("Mine", "First"))
    gate.wait_for(1)
    typed(page, SLASH.replace("Mine", "Second"))
    page.wait_for_timeout(300)
    gate.let()
    playwright.expect(page.locator(".loaf-title")).to_have_text("First")
    gate.wait_for(1)
    gate.let_all()
    playwright.expect(page.locator(".loaf-title")).to_have_text("Second")


def test_old_pages_are_not_printed(seen, pictures):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "print")
    page.wait_for_selector(".page svg")
    buttons = page.locator(".print-side .buttons button")
    playwright.expect(buttons.first).to_be_enabled()
    gate = Gate(page, "/api/print")
    page.keyboard.press("Control+z")
    page.get_by_role("radio", name="Bench card").check(force=True)
    gate.wait_for(1)
    page.wait_for_selector(".pages.outdated .page")
    for button in buttons.all():
        assert button.is_disabled()
    playwright.expect(page.get_by_role("status").filter(has_text="Out of date")).to_be_visible()
    web.picture(pictures, "old-pages")
    page.emulate_media(media="print")
    assert not page.locator(".page").first.is_visible()
    page.emulate_media(media="screen")
    gate.let_all()
    page.wait_for_selector(".pages:not(.outdated) .page")
    for button in buttons.all():
        assert button.is_enabled()


# names and numbers that cannot be


def test_a_name_that_cannot_be_stays_to_be_mended(seen, live, pictures):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "design", place="folder")
    ready(page)
    page.keyboard.press("Control+Shift+s")
    page.fill("#prompted", "my/loaf")
    page.keyboard.press("Enter")
    fault = page.locator("#prompted-fault")
    playwright.expect(fault).to_contain_text("is not a file name")
    web.picture(pictures, "file-name")
    assert page.input_value("#prompted") == "my/loaf"
    assert "prompted-fault" in page.get_attribute("#prompted", "aria-describedby")
    page.keyboard.press("Control+s")
    assert page.get_by_role("dialog").count() == 1
    page.fill("#prompted", "my loaf")
    page.keyboard.press("Enter")
    playwright.expect(page.locator("#told")).to_contain_text("my loaf.score")
    assert (live[1] / "my loaf.score").read_text() == TIN
    web.complaints.clear()  # the browser itself reports the answer 400


def test_there_is_one_question_at_a_time_and_none_about_nothing(seen, live):
    web = seen()
    page = web.page
    page.goto(web.address)
    page.wait_for_selector(".card img")
    before = sorted(live[1].iterdir())
    page.keyboard.press("Control+s")
    playwright.expect(page.locator("#told")).to_contain_text("nothing open to save")
    assert page.get_by_role("dialog").count() == 0 and sorted(live[1].iterdir()) == before
    page.get_by_role("button", name="Open Swirl").click()
    ready(page)
    for _ in range(2):
        page.keyboard.press("Control+s")
    playwright.expect(page.get_by_role("dialog")).to_have_count(1)


def test_a_field_says_what_it_takes(seen):
    web = seen()
    for field, value, told, good in (
        ("bake-spring", "5", "from 1 to 3×", "2"),
        ("loaf-width", "-5", "from 20 to 1500 mm", "210"),
        ("loaf-height", "9999", "from 8 to 1500 mm", "210"),
        ("bake-spread", "", "from 0 to 100%", "40"),
    ):
        web.start(TIN, "mine.score", "design")  # no answer to the field before is on its way
        says_what_it_takes(web.page, field, value, told, good)


def says_what_it_takes(page, field, value, told, good):
    page.wait_for_selector(f"#{field}")
    page.fill(f"#{field}", value)
    page.keyboard.press("Tab")
    fault = page.locator(f"#{field}-fault")
    playwright.expect(fault).to_contain_text(told)
    assert page.get_attribute(f"#{field}", "aria-describedby") == f"{field}-fault"
    typed(page, TIN.replace("Mine", f"More {field}"))  # a new design leaves what is to be mended
    playwright.expect(page.locator(".loaf-title")).to_have_text(f"More {field}")
    assert page.input_value(f"#{field}") == value
    page.fill(f"#{field}", good)
    playwright.expect(fault).to_be_hidden()
    page.keyboard.press("Tab")
    playwright.expect(page.locator("#pattern-text")).to_have_value(re.compile(f" {good}(mm|%|\\n)"))


def test_fields_say_their_range_in_inches(seen, pictures):
    web = seen()
    page = web.page
    page.goto(web.address)
    page.evaluate("() => localStorage.setItem('scorecraft.units', '{\"length\":\"in\"}')")
    web.start(TIN, "mine.score", "design")
    page.wait_for_selector("#loaf-width")
    page.fill("#loaf-width", "90")
    page.keyboard.press("Tab")
    playwright.expect(page.locator("#loaf-width-fault")).to_contain_text("from 0.79 to 59.05 in")
    web.picture(pictures, "field")
    page.get_by_role("link", name="Measure").click()
    page.get_by_role("button", name="Measure").first.click()
    page.keyboard.type("999")
    playwright.expect(page.locator(".measured .fault")).to_contain_text("from 0 to 5.9 in")
    playwright.expect(page.get_by_role("button", name="Compare with the model")).to_be_disabled()
    web.picture(pictures, "measured-field")


# measuring


def test_ones_own_bakes_can_be_chosen_once_one_is_kept(seen, live):
    (live[1] / "baker.toml").unlink(missing_ok=True)
    web = seen()
    page = web.page
    web.open("swirl", "design")
    ready(page)
    assert page.locator("#bake-baker").count() == 0
    page.get_by_role("link", name="Measure").click()
    for width in ("3.5", "6"):
        page.get_by_role("button", name="Measure").first.click()
        page.keyboard.type(width)
    page.get_by_role("button", name="Add to the log").click()
    playwright.expect(page.locator("#told")).to_contain_text("baker.toml")
    page.get_by_role("link", name="Design").click()
    playwright.expect(page.locator("#bake-baker")).to_be_visible()
    for name in ("baker.toml", "bakes.jsonl"):
        (live[1] / name).unlink()


def test_measuring_before_the_design_is_there_does_nothing(seen):
    web = seen()
    page = web.page
    web.start(TIN, "mine.score", "measure")
    page.wait_for_selector(".cut-button")
    gate = Gate(page, "/api/design")
    page.get_by_role("link", name="Shelf").click()
    page.get_by_role("button", name="Open Swirl").click()
    playwright.expect(page.locator(".loaf-title")).to_have_text("swirl.score")
    page.get_by_role("link", name="Measure").click()
    assert page.locator(".cut-button").count() == 0
    assert page.locator(".measure-loaf .touch path").count() == 0
    gate.let_all()
    page.wait_for_selector(".cut-button")
    page.get_by_role("button", name="Measure").first.click()
    assert page.locator(".measured input").count() == 1
