"""A hand on the page: it drags with the mouse or a finger, and waits for what it has made."""

import re
from itertools import pairwise

PATIENCE = 200
TAPS = 5
FLUNG_MS = 500
"""So soon after a quick drag Chromium takes a tap for the end of a fling: it makes no click."""
LISTEN = "() => { self.heard = 0; addEventListener('click', () => { self.heard = 1 }, true) }"
READY = ".tile:not([disabled])"


class Hand:
    """Somebody at the page, with a mouse or a finger."""

    def __init__(self, web):
        self.page = web.page
        self.finger = None
        if web.size != "desk":
            self.finger = web.context.new_cdp_session(self.page)

    @property
    def text(self):
        return self.page.input_value("#pattern-text")

    def middle(self, selector):
        box = self.page.locator(selector).first.bounding_box()
        return box["x"] + box["width"] / 2, box["y"] + box["height"] / 2

    def place(self, x, y):
        """Where a place of the loaf is on the screen: parts of its half width, y away."""
        box = self.page.locator(".stage .dough").bounding_box()
        half = box["width"] / 2
        return box["x"] + half + x * half, box["y"] + box["height"] / 2 - y * half

    def drag(self, *points, steps=4):
        """Drag along points of the screen."""
        way = [points[0]]
        for (x, y), (u, v) in pairwise(points):
            way += [(x + (u - x) * k / steps, y + (v - y) * k / steps) for k in range(1, steps + 1)]
        if self.finger is None:
            self.page.mouse.move(*way[0])
            self.page.mouse.down()
            for place in way[1:]:
                self.page.mouse.move(*place)
            self.page.mouse.up()
            return
        self.touch("touchStart", [way[0]])
        for place in way[1:]:
            self.touch("touchMove", [place])
        self.touch("touchEnd", [])

    def touch(self, kind, fingers):
        points = [{"x": x, "y": y, "id": number} for number, (x, y) in enumerate(fingers)]
        self.finger.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    def tap(self, x, y):
        self.drag((x, y))

    def press(self, name, exact=True):
        button = self.page.get_by_role("button", name=name, exact=exact).locator("visible=true")
        if self.finger is None:
            button.first.click()
            return
        self.page.evaluate(LISTEN)
        for _ in range(TAPS):
            self.page.wait_for_timeout(FLUNG_MS)
            button.first.tap()
            for _ in range(PATIENCE):
                if self.page.evaluate("self.heard"):
                    return
                self.page.wait_for_timeout(10)
        raise AssertionError(f"no tap on {name} was taken for a click")

    def written(self, pattern):
        """Wait until the text has what a gesture writes, and the handles are there again."""
        found = re.compile(pattern, re.MULTILINE)
        for _ in range(PATIENCE):
            if found.search(self.text):
                break
            self.page.wait_for_timeout(50)
        told = self.page.locator("#lasting, .caption").all_text_contents()
        assert found.search(self.text), (pattern, self.text, told)
        self.rest()

    def rest(self):
        """Wait until nothing is on its way any more."""
        self.page.wait_for_selector(".hand[aria-busy=false]")

    def pick(self, cut):
        """Tap a cut where its line begins."""
        path = f".stage-loaf .touch path[data-cut='{cut}']"
        x, y = self.page.locator(path).evaluate("""(path) => {
            const { x, y } = path.getPointAtLength(path.getTotalLength() / 2);
            const { a, d, e, f } = path.getScreenCTM();
            return [a * x + e, d * y + f];
        }""")
        return x, y

    def grip(self, name):
        self.rest()
        self.page.wait_for_selector(f".grip-{name}", state="visible")
        return self.middle(f".grip-{name}")
