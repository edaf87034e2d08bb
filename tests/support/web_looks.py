"""What is looked at in every view of the page: when it is ready, what is cut off or unclear."""

from pathlib import Path

import pytest

READY = {
    "shelf": ".card img",
    "design": "#oven:not([disabled])",
    "print": ".page svg",
    "bench": ".bench-stage svg",
    "measure": ".measure-loaf svg",
}
"""Every room, and what is there when it is ready."""

WINDOWS = [(320, 640), (360, 640), (390, 844), (820, 1180), (844, 390), (1000, 700), (1440, 900),
           (2560, 1440)]  # fmt: skip
"""Windows that the page has to fit."""

CUT_OFF = """() => {
    const cut = [];
    const skipped = '.hidden, .skip, .lens, .editor, svg, [hidden], .file-name, .tray';
    const walk = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT);
    while (walk.nextNode()) {
        const node = walk.currentNode;
        const inside = node.parentElement;
        if (!node.data.trim() || !inside.checkVisibility() || inside.closest(skipped)) continue;
        const range = document.createRange();
        range.selectNodeContents(node);
        const word = range.getBoundingClientRect();
        const control = inside.closest('button, .choice span, .mark, th, td');
        const box = control && control.getBoundingClientRect();
        const wrapped = inside.closest('.mark') && word.top >= box.bottom; // hidden on purpose
        if (wrapped || word.width < 2) continue;
        const out = word.left < -0.5 || word.right > innerWidth + 0.5;
        const over = box && (word.left < box.left - 0.5 || word.right > box.right + 0.5
            || word.top < box.top - 4 || word.bottom > box.bottom + 4);
        if (out || over) cut.push(node.data);
    }
    for (const each of document.querySelectorAll('button, input, output, .knob-value')) {
        if (!each.checkVisibility() || each.closest(skipped)) continue;
        const { left, right } = each.getBoundingClientRect();
        if (left < -0.5 || right > innerWidth + 0.5) cut.push(each.outerHTML.slice(0, 80));
    }
    return cut;
}"""
"""Texts and controls that are cut off or stick out."""


def violations(page):
    """List what the accessibility checker has to say, with the elements."""
    axe = pytest.importorskip("axe_playwright_python")
    if not page.evaluate("() => 'axe' in window"):
        page.evaluate((Path(axe.__file__).parent / "axe.min.js").read_text(encoding="utf-8"))
    return page.evaluate(
        """async () => (await axe.run()).violations.map((found) =>
            found.id + ': ' + found.nodes.map((node) => node.html.slice(0, 90)).join(' | '))"""
    )
