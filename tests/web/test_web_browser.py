"""The whole journey in a real browser, on a desk and on a phone."""

import io
import json
import re
import threading
from pathlib import Path

import pytest
from support.printed_rule import A4, LETTER, papers, ruled
from support.web_browser import SIZES, Watched
from support.web_looks import READY, violations
from support.web_patterns import SLASH

from scorecraft.checks.finding import SEVERITIES
from scorecraft.shelf import find_source
from scorecraft.web.app import make_app
from scorecraft.web.folder import Folder
from scorecraft.web.guests import Guests, network_address
from scorecraft.web.serve import bound, hosts_of, waitress_server

playwright = pytest.importorskip("playwright.sync_api")


@pytest.mark.parametrize("size", ["desk", "phone"])
def test_the_whole_journey(seen, live, pictures, size):
    address, folder = live
    web = seen(size)
    page = web.page
    page.goto(address)
    shelf = page.get_by_role("region", name="Ready-made patterns")
    shelf.get_by_role("button", name="Open Swirl").click()
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    cuts = page.locator(".stage-loaf .cut").count()
    web.picture(pictures, "design")

    web.slide("#knob-arms", 8)
    playwright.expect(page.locator(".stage-loaf .cut")).not_to_have_count(cuts)
    assert "knob arms 8 " in page.input_value("#pattern-text")

    page.wait_for_selector("#oven:not([disabled])")
    web.slide("#oven", 100)
    baked = page.locator(".stage image.baked")  # one for each stage of the bake, the last on top
    playwright.expect(baked.last).to_have_attribute("opacity", "1")
    web.picture(pictures, "baked")
    web.slide("#oven", 0)
    for stage in baked.all():
        playwright.expect(stage).to_have_attribute("opacity", "0")

    panel = "Text"
    if size == "phone":
        page.get_by_role("button", name=panel, exact=True).click()
    text = page.input_value("#pattern-text")
    page.fill("#pattern-text", text + "slash 300mm\n")
    if size == "phone":
        page.get_by_role("button", name="Checks").click()
    finding = page.locator(".finding", has_text="rim").first
    finding.hover()
    page.wait_for_selector(".stage-loaf .cut.lit", state="attached")
    page.wait_for_selector(".editor .marks .lit", state="attached")
    web.picture(pictures, "finding")
    page.fill("#pattern-text", text + "slush 30mm\n") if size == "desk" else page.locator(
        "#pattern-text"
    ).evaluate(
        "(f, t) => { f.value = t; f.dispatchEvent(new Event('input')) }",
        text + "slush 30mm\n",
    )
    problem = page.locator(".finding.problem")
    playwright.expect(problem).to_contain_text('unknown word "slush"')
    playwright.expect(page.locator(".editor .marks u")).to_have_text("slush")
    web.picture(pictures, "problem")
    problem.click()
    assert page.evaluate("() => document.getSelection().toString()") == "slush"
    for _ in range(2):
        if page.input_value("#pattern-text") != text:
            page.keyboard.press("Control+z")
    assert page.input_value("#pattern-text") == text
    playwright.expect(page.locator(".finding.problem")).to_have_count(0)

    page.get_by_role("button", name="Save", exact=True).first.click()
    page.fill("#prompted", f"whirl {size}")
    page.keyboard.press("Enter")
    playwright.expect(page.locator("#told")).to_contain_text(f"whirl {size}.score")
    assert "knob arms 8 " in (folder / f"whirl {size}.score").read_text()
    page.reload()
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    assert "knob arms 8 " in page.input_value("#pattern-text")

    page.get_by_role("link", name="Print").click()
    page.wait_for_selector(".page svg")
    web.picture(pictures, "print")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save as PDF").click()
    assert waiting.value.suggested_filename == f"whirl {size}-guide.pdf"
    data = Path(waiting.value.path()).read_bytes()
    assert papers(data) <= {A4, LETTER} and ruled(data)

    page.get_by_role("link", name="Bench").click()
    page.wait_for_selector(".bench-stage svg")
    web.picture(pictures, "bench")
    count = int(page.locator(".bench-bar .count").inner_text().split()[0])
    for _ in range(count + 3):  # the string lines and the end are screens too
        page.keyboard.press("ArrowRight")
    playwright.expect(page.locator(".bench-text")).to_contain_text("Into the oven")
    assert page.locator(".bench .cut:not(.done)").count() == 0
    (folder / f"whirl {size}.score").unlink()  # other tests open the Swirl of the shelf


def test_unsaved_work_survives_a_reload(seen):
    web = seen()
    web.open("sun", "design")
    web.page.wait_for_selector(".stage-loaf .cut", state="attached")
    web.page.fill("#pattern-text", web.page.input_value("#pattern-text") + "# a thought\n")
    web.page.wait_for_timeout(300)
    web.page.reload()
    web.page.wait_for_selector(".stage-loaf .cut", state="attached")
    assert web.page.input_value("#pattern-text").endswith("# a thought\n")
    assert web.page.locator(".file-dot").is_visible()


def test_a_file_changed_meanwhile_is_asked_about(seen, live):
    web = seen()
    page = web.page
    (live[1] / "shared.score").write_text('title "Old"\nloaf round width 200mm\nslash 90mm\n')
    page.goto(live[0])
    page.get_by_role("button", name="Open Old").click()
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    (live[1] / "shared.score").write_text("another hand")
    page.fill("#pattern-text", page.input_value("#pattern-text") + "# mine\n")
    page.keyboard.press("Control+s")
    dialog = page.get_by_role("dialog")
    playwright.expect(dialog).to_contain_text("has changed on disk")
    assert (live[1] / "shared.score").read_text() == "another hand"
    web.complaints.clear()  # the browser itself reports the answer 409
    dialog.get_by_role("button", name="Overwrite").click()
    playwright.expect(page.locator("#told")).to_contain_text("shared.score")
    assert (live[1] / "shared.score").read_text().endswith("# mine\n")


def test_a_stale_answer_never_overwrites_a_newer_one(seen):
    web = seen()
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    held = []

    def hold(route):
        if not held:
            held.append(route)
        else:
            route.continue_()

    page.route("**/api/design", hold)
    text = page.input_value("#pattern-text")
    page.fill("#pattern-text", text.replace("Swirl", "First"))
    page.wait_for_timeout(1000)
    assert len(held) == 1
    page.fill("#pattern-text", text.replace("Swirl", "Second"))
    playwright.expect(page.locator(".loaf-title")).to_have_text("Second")
    held[0].continue_()
    page.wait_for_timeout(300)
    playwright.expect(page.locator(".loaf-title")).to_have_text("Second")


def test_the_hand_that_holds_the_blade_is_chosen_with_a_tap(seen):
    web = seen()
    page = web.page
    web.open("one-slash", "design")
    page.wait_for_selector("#bench-hand-right:checked")
    page.locator("#bench-hand-left").check()
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        re.compile(r"\nbench hand left\n")
    )
    page.wait_for_selector("#bench-hand-left:checked")
    page.locator("#bench-skill-new").check()
    page.wait_for_selector("#bench-skill-new:checked")
    page.fill("#bench-loaves", "12")
    page.locator("#bench-loaves").press("Tab")
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        re.compile(r"\nbench hand left skill new loaves 12\n")
    )
    assert page.locator(".finding.problem").count() == 0


def test_loaf_form_writes_into_the_text(seen):
    web = seen()
    page = web.page
    web.start(
        'title "Mine"\nloaf round width 200mm height 85mm  # my tin\nslash 90mm\n',
        "mine.score",
        "design",
    )
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    page.fill("#loaf-width", "240")
    page.keyboard.press("Tab")
    playwright.expect(page.locator(".caption")).to_contain_text("240 mm")
    page.check("#loaf-shape-oval", force=True)
    playwright.expect(page.locator(".caption")).to_contain_text("384 mm long, 240 mm wide")
    page.uncheck("#bake-steam")
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        'title "Mine"\nloaf oval width 240mm height 85mm length 384mm  # my tin\n'
        "bake steam no\nslash 90mm\n"
    )
    page.keyboard.press("Control+z")
    playwright.expect(page.locator("#bake-steam")).to_be_checked()
    page.check("#dough-proof-over", force=True)
    playwright.expect(page.locator("#bake-spring")).to_have_value("1.15")
    page.fill("#dough-temperature", "5")
    page.keyboard.press("Tab")
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        re.compile(r"\ndough over temperature 5C\n")
    )
    page.check("#loaf-sizing-dough", force=True)
    page.select_option("#loaf-basket", label="25 × 15 cm: 700–900 g")
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        re.compile(r"loaf oval dough \d+g basket 250mm by 150mm")
    )


def test_units_by_choice(seen):
    web = seen()
    page = web.page
    web.open("swirl", "design")
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    page.get_by_role("button", name="Units").click()
    page.check("#length-in", force=True)
    page.keyboard.press("Escape")
    page.mouse.move(5, 400)
    playwright.expect(page.locator("label[for=knob-arm_depth] + output")).to_have_text("0.31 in")
    playwright.expect(page.locator(".caption")).to_contain_text("8.66 in")
    page.get_by_role("button", name="Units").click()
    page.check("#heat-F", force=True)
    page.keyboard.press("Escape")
    page.fill("#loaf-width", "10")
    page.keyboard.press("Tab")
    playwright.expect(page.locator("#pattern-text")).to_have_value(
        re.compile("loaf round width 254mm")
    )
    page.get_by_role("link", name="Bench").click()
    playwright.expect(page.locator(".bench-text")).to_contain_text("At 75 °F")


def test_a_print_is_kept_under_the_name_of_its_pattern_in_any_script(seen):
    web = seen()
    web.page.goto(web.address)
    for name in ("żółć i róża", "葉の輪", "a; b=c 'd", "100% rye"):
        asked = {"text": SLASH, "name": f"{name}.score", "what": "cutter", "form": "svg"}
        told = web.page.evaluate(
            """async (asked) => {
                const { askFile } = await import("/static/api.js");
                return (await askFile("/api/print", asked)).name;
            }""",
            asked,
        )
        assert told == f"{name}-cutter.svg"


def test_a_phone_on_the_network_follows_the_cuts(browser, crew, pictures, tmp_path):
    try:
        own = network_address()
    except OSError:
        pytest.skip("this machine is on no network")
    door = bound("0.0.0.0", 0)
    port = door.getsockname()[1]
    address = f"http://{own}:{port}/"
    guests = Guests(address)
    app = make_app(Folder(tmp_path), crew, hosts_of(port) | {f"{own}:{port}"}, guests)
    server = waitress_server(app, door)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    baker = Watched(browser, f"http://127.0.0.1:{port}/", "desk")
    phone, stranger = (Watched(browser, address, size) for size in ("phone", "small"))
    try:
        baker.open("swirl", "bench")
        baker.page.get_by_role("button", name="Open on a phone").click()
        baker.page.wait_for_selector(".invite .code svg")
        link = baker.page.locator(".invite code").inner_text()
        assert stranger.page.goto(link).status == 200  # looked at, and left alone
        phone.page.goto(link)
        phone.picture(pictures, "door")
        phone.page.get_by_role("button", name="Show the cuts").tap()
        phone.page.wait_for_selector(".bench-stage svg")
        playwright.expect(phone.page.locator(".bench-text")).to_contain_text("Swirl")
        phone.page.get_by_role("button", name="Start", exact=True).tap()
        assert phone.page.get_by_role("link").count() == 0
        follow_a_changed_plan(baker, phone)
        baker.clean()
        phone.clean()
        phone.page.goto(link)
        phone.page.wait_for_selector(".bench-stage svg")  # who is in need not come in again
        stranger.page.get_by_role("button", name="Show the cuts").tap()
        playwright.expect(stranger.page.locator("h1")).to_have_text("This link has been used")
        stranger.picture(pictures, "door-used")
        assert stranger.page.goto(address).status == 403
        playwright.expect(stranger.page.locator("h1")).to_have_text("This phone was not let in")
        assert stranger.strangers == []
    finally:
        stranger.context.close()
        baker.context.close()
        phone.context.close()
        server.close()
        thread.join(5)


def follow_a_changed_plan(baker, phone):
    """The phone shows a plan that is laid out anew at once, goes on where it was, and so awakes."""
    page = phone.page
    where, turn = page.locator(".bench-bar .count"), page.locator(".bench-text")
    page.keyboard.press("ArrowRight")  # a second tap so soon would be the first one's echo
    step, shown = where.inner_text(), turn.inner_text()
    text = find_source("swirl").text
    assert "light line" in shown and "2.5" in shown
    text = text.replace("line_depth 2.5mm", "line_depth 3.5mm")
    laid = {"text": text, "name": "swirl.score", "place": "shelf"}
    assert baker.page.request.post(f"{baker.address}api/bench", data=laid).ok
    playwright.expect(turn).to_contain_text("3.5")
    assert where.inner_text() == step
    playwright.expect(page.locator("#lasting")).to_contain_text("plan has changed")
    page.evaluate("document.dispatchEvent(new Event('visibilitychange'))")
    page.reload()
    page.wait_for_selector(".bench-stage svg")
    assert where.inner_text() == step


def test_measured_openings_are_compared_and_kept(seen, live):
    web = seen()
    page = web.page
    web.open("swirl", "measure")
    page.get_by_role("button", name="Measure").first.click()
    page.keyboard.type("3.5")
    path = page.locator(".stage-loaf .touch path").last
    path.dispatch_event("click")
    assert page.locator(".measured li").count() == 2
    page.keyboard.type("11")
    page.get_by_role("button", name="Compare with the model").click()
    playwright.expect(page.locator(".result")).to_contain_text("too few to be sure", timeout=30_000)
    assert page.locator(".result tbody tr").count() == 2
    assert not (live[1] / "bakes.jsonl").exists()
    page.fill("#bake-note", "a hot <b>oven</b>")
    page.get_by_role("button", name="Add to the log").click()
    playwright.expect(page.locator(".log")).to_contain_text("a hot <b>oven</b>", timeout=30_000)
    (bake,) = [json.loads(line) for line in (live[1] / "bakes.jsonl").read_text().splitlines()]
    assert bake["note"] == "a hot <b>oven</b>" and bake["pattern"] == "swirl"
    assert "skin_mm" in (live[1] / "baker.toml").read_text()
    page.reload()
    page.wait_for_selector(".measured input")
    assert page.locator(".measured input").first.input_value() == "3.5"


def test_taking_a_width_away_leaves_the_keyboard_among_the_rows(seen):
    web = seen()
    page = web.page
    web.open("swirl", "measure")
    for _ in range(2):
        page.get_by_role("button", name="Measure").first.click()
    rows = page.locator(".measured button")
    for left in (1, 0):
        rows.last.press("Enter")
        assert rows.count() == left
        focused = page.evaluate(
            "document.activeElement.closest('.measured, .measure-cuts') !== null"
        )
        assert focused


def test_a_width_never_moves_to_another_cut_when_the_pattern_is_edited(seen, pictures):
    light = 'at x -40mm:\n    slash 60mm depth 3mm called "mark"\n'
    text = SLASH.replace("slash 100mm", f"{light}slash 100mm")
    web = seen()
    page = web.page
    web.start(text, "mine.score", "measure")
    page.get_by_role("button", name="Measure 1 mark").click()
    page.keyboard.type("3.5")
    page.get_by_role("button", name="Measure 2 slash").click()
    page.keyboard.type("11")

    def edited(text):
        page.goto(f"{web.address}#design")
        page.fill("#pattern-text", text)
        page.goto(f"{web.address}#measure")

    edited(SLASH)
    gone = page.locator(".measured .gone")
    playwright.expect(gone).to_have_count(1)
    assert "mark is no longer in the pattern" in gone.text_content()
    assert "3.5 mm" in gone.text_content()
    (told,) = page.locator(".measured li:not(.gone) .measured-name").all_text_contents()
    assert told == "1 slash"
    assert page.locator(".measured input").input_value() == "11"
    edited(SLASH.replace("slash 100mm", "slash 90mm"))
    playwright.expect(gone).to_have_count(2)
    assert "slash has changed since it was measured" in gone.nth(1).text_content()
    assert page.get_by_role("button", name="Compare with the model").is_disabled()
    web.picture(pictures, "measure-gone")
    edited(text)
    playwright.expect(page.locator(".measured input")).to_have_count(2)


def told_in(asked, key, value):
    """Whether a request is for a print with an option of a value."""
    return asked.url.endswith("/api/print") and asked.post_data_json.get(key) == value


def test_options_of_a_print_are_those_of_its_row(seen, pictures):
    web = seen()
    page = web.page
    web.open("swirl", "print")
    page.wait_for_selector(".page svg")
    assert page.locator(".print-extra label").count() == 0
    page.get_by_role("radio", name="Stencil").check(force=True)
    playwright.expect(page.locator("#slot-")).to_be_checked()
    with page.expect_request(lambda asked: told_in(asked, "slot_mm", 3)):
        page.locator("#slot-3").check(force=True)
    with page.expect_request(lambda asked: told_in(asked, "mirrored", True)):
        page.get_by_label("Mirrored").check()
    page.get_by_label("Split into plates").check()
    with page.expect_request(lambda asked: told_in(asked, "plate", "400x400mm")):
        page.get_by_label("Largest plate").fill("400x400mm")
        page.get_by_label("Largest plate").press("Enter")
    page.wait_for_selector(".pages:not(.outdated) .page")
    web.picture(pictures, "print-stencil")
    page.get_by_role("radio", name="Cutter file").check(force=True)
    playwright.expect(page.locator("#follow-stencil")).to_be_checked()
    playwright.expect(page.locator("#slot-3")).to_be_checked()
    playwright.expect(page.locator("#paper-A4")).to_be_hidden()
    with page.expect_request(lambda asked: told_in(asked, "follow", "cuts")):
        page.get_by_role("radio", name="The cuts").check(force=True)
    web.picture(pictures, "print-cutter")


def test_browser_print_has_pages_at_full_size(seen):
    import pypdfium2

    web = seen()
    page = web.page
    web.open("swirl", "print")
    page.wait_for_selector(".page svg")
    data = page.pdf(prefer_css_page_size=True)
    with pypdfium2.PdfDocument(io.BytesIO(data)) as document:
        sizes = [
            [round(each * 25.4 / 72) for each in document[k].get_size()]
            for k in range(len(document))
        ]
    assert len(sizes) == page.locator(".page svg").count()
    assert all(sorted(size) in ([210, 297], [216, 279]) for size in sizes)


@pytest.mark.parametrize("room", READY)
def test_every_room_at_every_size_and_for_everybody(seen, pictures, room):
    web = seen("desk", reduced_motion="reduce")
    page = web.page
    web.open("wheat-sheaf", room)
    page.wait_for_selector(READY[room])
    if room == "bench":
        for _ in range(3):
            page.keyboard.press("ArrowRight")
    for size, (width, height) in SIZES.items():
        page.set_viewport_size({"width": width, "height": height})
        page.wait_for_timeout(60)
        assert page.evaluate("() => document.documentElement.scrollWidth - innerWidth") <= 0, size
        web.picture(pictures, room, size)
        if size == "phone":
            assert violations(page) == [], size
    page.set_viewport_size({"width": 1440, "height": 900})
    page.emulate_media(color_scheme="dark")
    web.picture(pictures, room, "dark")
    assert violations(page) == [], "dark"


def test_the_keyboard_alone_is_enough(seen):
    web = seen()
    page = web.page
    page.goto(web.address)
    page.wait_for_selector(".card img")
    page.keyboard.press("Tab")
    assert page.evaluate("() => document.activeElement.textContent") == "Skip to the page"
    page.keyboard.press("Enter")
    tab_to(page, "aria-label", "Open Swirl")
    page.keyboard.press("Enter")
    page.wait_for_selector(".stage-loaf .cut", state="attached")
    tab_to(page, "id", "knob-arms")
    before = page.input_value("#pattern-text")
    page.keyboard.press("ArrowRight")
    playwright.expect(page.locator("#pattern-text")).not_to_have_value(before)


def tab_to(page, attribute, value):
    for _ in range(120):
        page.keyboard.press("Tab")
        if page.evaluate("name => document.activeElement.getAttribute(name)", attribute) == value:
            return
    raise AssertionError(f"the keyboard does not reach {value}")


def test_scripts_stay_small():
    folder = Path(__file__).parents[2] / "scorecraft" / "web" / "static"
    assert sum(path.stat().st_size for path in folder.rglob("*.js")) <= 220_000


def test_a_finding_is_called_what_the_server_calls_it(seen):
    """The page has no words of its own for how grave a finding is."""
    web = seen()
    web.start(
        SLASH.replace("100mm depth", "196mm depth") + "slash 300mm turn 90deg\n", "mine.score"
    )
    page = web.page
    page.wait_for_selector("#oven:not([disabled])")
    signs = page.locator(".finding .sign")
    assert set(signs.all_inner_texts()) <= {each.capitalize() for each in SEVERITIES}
    assert "Stop" in signs.all_inner_texts()
    for finding in page.locator(".finding").all():
        grave = finding.locator(".sign").text_content()
        assert grave in finding.get_attribute("class").split()
        assert finding.locator(f".icon-{grave} use").get_attribute("href") == f"#icon-{grave}"
