"""A baker's first hour with the page: a pattern made to fit my loaf, printed, cut and measured."""

import re
from pathlib import Path

import pytest
from support.printed_rule import A4, LETTER, papers, ruled

playwright = pytest.importorskip("playwright.sync_api")


def test_a_baker_at_home(seen):
    web = seen()
    page = web.page
    page.goto(web.address)
    shelf = page.get_by_role("region", name="Ready-made patterns")
    shelf.get_by_role("button", name="Open Swirl").click()
    page.wait_for_selector("#oven:not([disabled])")
    for name, size in (("width", "205"), ("height", "88")):
        page.fill(f"#loaf-{name}", size)
        page.press(f"#loaf-{name}", "Enter")
        playwright.expect(page.locator("#pattern-text")).to_have_value(
            re.compile(rf"\nloaf round [^\n]*{name} {size}mm")
        )
    playwright.expect(page.locator("#panel-findings")).to_contain_text("Enough room to spring")

    page.locator("[aria-label=Help]:visible").click()
    playwright.expect(page.get_by_role("heading", name="Help", level=1)).to_be_visible()
    page.keyboard.press("Escape")

    page.get_by_role("link", name="Print").click()
    page.wait_for_selector(".page svg")
    with page.expect_download() as waiting:
        page.get_by_role("button", name="Save as PDF").click()
    data = Path(waiting.value.path()).read_bytes()
    assert papers(data) <= {A4, LETTER} and ruled(data)

    page.get_by_role("link", name="Bench").click()
    playwright.expect(page.locator(".bench-text")).to_contain_text("Razor blades are very sharp")
    screens = int(page.locator(".bench-bar .count").inner_text().split()[0]) + 3
    for _ in range(screens):
        page.keyboard.press("ArrowRight")
    playwright.expect(page.locator(".bench-text")).to_contain_text("Into the oven")
    page.locator(".bench-next").click()
    page.get_by_role("button", name="Measure").first.click()
    page.keyboard.type("6")
    page.get_by_role("button", name="Compare with the model").click()
    playwright.expect(page.locator(".result tbody tr")).to_have_count(1, timeout=90_000)
