"""The help: reached from everywhere and left again, read by everybody; cautions where danger is."""

import pytest
from support.web_browser import SIZES
from support.web_looks import CUT_OFF, READY, WINDOWS, violations

from scorecraft.drawing.paper.cautions import BLADE, FILM, OVEN, STICKING
from scorecraft.language.words import ATTRIBUTES, WORDS
from scorecraft.web.word_list import word_list

playwright = pytest.importorskip("playwright.sync_api")
HELP, ANSWER, WAY = "dialog.help", ".answer:popover-open", "[aria-label=Help]:visible"
FOCUSED = "() => document.activeElement.getAttribute('aria-label')"
SCROLLED = """() => {
    const places = [...document.querySelectorAll('main :not(select)')];
    return [scrollY, ...places.map((each) => each.scrollTop)];
}"""
LESSONS = ("strings", "light-first", "blade", "depth", "order", "steam", "card", "measure")
TERMS = ("lame", "boule", "batard", "banneton", "pot", "ear", "crumb", "spring", "expansion",
         "decorative", "string-line", "reach", "room", "mouth", "tension", "spread", "drape",
         "guide", "card", "stencil", "ring", "cutter", "upright", "knob")  # fmt: skip

DRAWN = """(lesson) => {
    const picture = document.querySelector(`#help-lesson-${lesson} img`);
    return picture.complete && picture.naturalWidth > 0;
}"""


def opened(page):
    """The view of the help, once it is there with all its words."""
    page.wait_for_selector(f"{HELP} .word", state="attached")
    return page.locator(HELP)


def scrolled(page):
    """How far the window and each part that is scrolled are; more parts may have come since."""
    return [each for each in page.evaluate(SCROLLED) if each]


def ask(page, term):
    page.locator(f"#ask-{term}").focus()
    page.keyboard.press("Enter")
    return page.locator(ANSWER)


def test_the_help_opens_from_every_view_and_comes_back(seen):
    web = seen("phone", reduced_motion="reduce")
    web.open("swirl", next(iter(READY)))
    for room in READY:
        web.page.goto(f"{web.address}#{room}")
        web.page.wait_for_selector(READY[room])
        opens_and_comes_back(web.page, room)


def opens_and_comes_back(page, room):
    """Open the help from a view, come back with a key, and once more with a phone's own way."""
    if room == "bench":
        page.keyboard.press("ArrowRight")
    page.evaluate("""() => {
        scrollTo(0, 40);
        for (const each of document.querySelectorAll('main *')) each.scrollTop = 40;
    }""")
    before, address, title = scrolled(page), page.url, page.title()
    page.locator(WAY).focus()
    page.keyboard.press("Enter")
    playwright.expect(opened(page).get_by_role("heading", name="Help", level=1)).to_be_visible()
    playwright.expect(page).to_have_title("Help · scorecraft")
    assert page.url.endswith("#help")
    page.keyboard.press("Escape")
    playwright.expect(page.locator(HELP)).to_be_hidden()
    page.wait_for_url(address)
    playwright.expect(page).to_have_title(title)
    assert page.evaluate(FOCUSED) == "Help"
    assert scrolled(page) == before
    page.locator(WAY).click()
    page.wait_for_url("**#help")
    page.go_back()
    playwright.expect(page.locator(HELP)).to_be_hidden()
    playwright.expect(page).to_have_title(title)
    assert page.url == address


def test_an_address_of_the_help_opens_it_at_its_term(seen):
    web = seen("phone")
    page = web.page
    page.goto(f"{web.address}#help-reach")
    at = opened(page).locator("#help-reach")
    playwright.expect(at).to_be_in_viewport()
    playwright.expect(at).to_be_focused()
    page.get_by_role("button", name="Back", exact=True).click()
    page.wait_for_url("**#shelf")
    playwright.expect(page.locator(READY["shelf"]).first).to_be_visible()


def test_course_glossary_cautions_and_language_are_all_there(seen):
    web = seen()
    page = web.page
    page.goto(f"{web.address}#help")
    help_ = opened(page)
    for lesson in LESSONS:
        picture = help_.locator(f"#help-lesson-{lesson} img")
        page.wait_for_function(DRAWN, arg=lesson)
        assert len(picture.get_attribute("alt")) > 20
        text = help_.locator(f"#help-lesson-{lesson} p").inner_text()
        assert 2 <= text.count(". ") + 1 <= 4
    assert help_.locator(".lessons img").count() == len(LESSONS)
    for term in TERMS:
        assert help_.locator(f"#help-{term}").count() == 1, term
        assert len(help_.locator(f"#help-{term} dd").inner_text()) > 10
    safety = help_.locator("#help-safety").inner_text()
    for words in (BLADE, STICKING, OVEN, FILM, "Raw flour", "allergens", "local rules"):
        assert words in safety
    told = word_list()
    names = [word["name"] for group in told["groups"] for word in group["words"]]
    assert sorted(names) == sorted(WORDS)
    assert [each["name"] for each in told["attributes"]] == [key.name for key in ATTRIBUTES]
    assert help_.locator(".word h3").all_text_contents() == names
    examples = help_.locator(".word pre").all_text_contents()
    assert examples == [WORDS[name].example for name in names] and all(examples)


def test_the_help_is_read_at_every_width_and_by_everybody(seen, pictures):
    web = seen()
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    page.goto(f"{web.address}#help")
    help_ = opened(page)
    help_.locator("details").evaluate_all("(all) => all.forEach((each) => (each.open = true))")
    for width, height in WINDOWS:
        page.set_viewport_size({"width": width, "height": height})
        assert help_.evaluate("(e) => e.scrollWidth - e.clientWidth") <= 0, width
        assert page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0, width
        assert page.evaluate(CUT_OFF) == [], width
    for size, scheme in (("desk", "light"), ("small", "dark")):
        width, height = SIZES[size]
        page.set_viewport_size({"width": width, "height": height})
        page.emulate_media(color_scheme=scheme)
        assert violations(page) == [], size
        web.picture(pictures, "help", f"{size}-{scheme}")


def test_what_is_this_is_answered_with_the_keyboard_alone(seen, pictures):
    web = seen()
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    for term in ("tension", "spread", "room"):
        answered(web, term, pictures, looked_at=term == "room")
    page.get_by_role("link", name="Print").click()
    page.wait_for_selector(READY["print"])
    page.get_by_role("radio", name="Drape").focus()
    page.keyboard.press("Space")
    page.wait_for_selector(".pages[data-what=drape]:not(.outdated) .page")
    answered(web, "drape", pictures, looked_at=True)


def answered(web, term, pictures, *, looked_at=False):
    """Ask what a term is, read on in the help, and come back."""
    page = web.page
    playwright.expect(page.locator(f"#ask-{term}")).to_be_visible()
    answer = ask(page, term)
    playwright.expect(answer).to_be_visible()
    page.wait_for_function(PLACED)
    if looked_at:
        assert violations(page) == []
        web.picture(pictures, f"what-{term}")
    page.keyboard.press("Escape")
    playwright.expect(answer).to_be_hidden()
    playwright.expect(page.locator(f"#ask-{term}")).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    assert page.evaluate("() => document.activeElement.hash") == f"#help-{term}"
    page.keyboard.press("Enter")
    playwright.expect(opened(page).locator(f"#help-{term}")).to_be_focused()
    page.keyboard.press("Escape")
    playwright.expect(page.locator(HELP)).to_be_hidden()
    playwright.expect(page.locator(f"#ask-{term}")).to_be_focused()


PLACED = f"""() => {{
    const answer = document.querySelector('{ANSWER}');
    const {{ left, top, right, bottom }} = answer.getBoundingClientRect();
    return left >= 8 && top >= 8 && right <= innerWidth - 8 && bottom <= innerHeight;
}}"""
"""The answer stands within the window, and no longer where it was before it was placed."""


def test_every_kind_of_print_is_explained(seen):
    web = seen("small")
    page = web.page
    web.open("swirl", "print")
    page.wait_for_selector(READY["print"])
    for kind in page.get_by_role("group", name="What to print").get_by_role("radio").all():
        kind.check(force=True)
        button = page.locator(".print-side .what")
        assert button.count() == 1
        button.focus()
        page.keyboard.press("Enter")
        answer = page.locator(ANSWER)
        playwright.expect(answer).to_be_visible()
        page.wait_for_function(PLACED)
        title = answer.locator("b").inner_text()
        assert button.get_attribute("aria-label") == f"What is this? {title}"
        page.keyboard.press("Escape")
        playwright.expect(answer).to_be_hidden()


@pytest.mark.parametrize("guest", [False, True], ids=["baker", "guest"])
def test_cautions_stand_before_the_first_cut_and_before_the_oven(seen, pictures, guest):
    web = seen("phone")
    page = web.page
    web.open("swirl", "bench")
    page.wait_for_selector(READY["bench"])
    if guest:
        told = {"guest": True, "welcome": False}
        page.route("**/api/guest", lambda route: route.fulfill(json=told))
        page.reload()
        page.wait_for_selector(READY["bench"])
    text, caution = page.locator(".bench-text"), page.locator(".caution")
    for width, height in WINDOWS:
        page.set_viewport_size({"width": width, "height": height})
        assert in_sight(page), (width, height)
    page.set_viewport_size({"width": 390, "height": 844})
    web.picture(pictures, f"caution-{guest}")
    playwright.expect(page.locator(".bench-next")).to_have_text("Start")
    assert caution.inner_text() == f"{BLADE} {STICKING}"
    assert "rigid sharps container" in BLADE and "dip it in oil or water" in STICKING
    while "Into the oven" not in text.inner_text():
        page.keyboard.press("ArrowRight")
    for width, height in WINDOWS:
        page.set_viewport_size({"width": width, "height": height})
        assert in_sight(page), (width, height)
    assert caution.inner_text() == OVEN
    assert "into a rigid sharps container" in text.inner_text()


def in_sight(page):
    """Whether the caution is seen whole, in letters of the usual size."""
    return page.evaluate("""() => {
        const caution = document.querySelector('.caution');
        const box = caution.getBoundingClientRect();
        const seen = document.querySelector('.bench-told').getBoundingClientRect();
        const size = (each) => parseFloat(getComputedStyle(each).fontSize);
        return box.top >= seen.top - 1 && box.bottom <= seen.bottom + 1
            && seen.bottom <= innerHeight && size(caution) >= size(document.body);
    }""")


def test_the_help_says_when_it_cannot_be_fetched_and_comes_later(seen):
    web = seen()
    page = web.page
    page.route("**/api/help", lambda route: route.abort())
    web.open("swirl", "design")
    page.wait_for_selector(READY["design"])
    page.locator(WAY).click()
    playwright.expect(page.locator(HELP)).to_contain_text("not responding")
    page.unroute("**/api/help")
    page.keyboard.press("Escape")
    page.wait_for_url("**#design")
    page.locator(WAY).click()
    assert opened(page).locator(".word").count() == len(WORDS)
    page.keyboard.press("Escape")
    page.route("**/api/**", lambda route: route.abort())
    page.locator(WAY).click()  # what is there stays there without a server
    assert opened(page).locator(".word").count() == len(WORDS)
    web.complaints.clear()  # the browser itself reports what did not answer
