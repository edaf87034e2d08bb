"""A watched page in a real browser: where the browser is, the sizes looked at, what was said."""

import json
import os
from pathlib import Path
from urllib.parse import urlsplit

SHELL, FULL = Path("/usr/bin/chromium-headless-shell"), Path("/usr/bin/chromium")
CHROMIUM = Path(os.environ.get("CHROMIUM", SHELL if SHELL.exists() else FULL))
"""The browser without a window, which costs the least; else the one people use."""
ARGUMENTS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--font-render-hinting=none",  # letters as wide as they are drawn, also in the headless shell
]
SIZES = {"desk": (1440, 900), "tablet": (820, 1180), "phone": (390, 844), "small": (360, 640)}


class Watched:
    """A page whose every request and complaint is noted."""

    def __init__(self, browser, address, size, **more):
        width, height = SIZES[size]
        self.size, self.address = size, address
        self.context = browser.new_context(
            viewport={"width": width, "height": height}, has_touch=size != "desk", **more
        )
        self.context.set_default_timeout(15_000)
        self.complaints, self.strangers = [], []
        self.watch()

    def watch(self):
        """Open a page and note what it says and asks for."""
        self.page = self.context.new_page()
        self.page.on(
            "console",
            lambda told: (
                self.complaints.append(told.text) if told.type in ("error", "warning") else None
            ),
        )
        self.page.on("pageerror", lambda error: self.complaints.append(str(error)))
        self.page.on("request", self.noted)

    def noted(self, request):
        place = urlsplit(request.url)
        if place.scheme not in ("blob", "data") and place.netloc != urlsplit(self.address).netloc:
            self.strangers.append(request.url)

    def open(self, name="leaf-crown", room=""):
        text = self.page.request.post(
            f"{self.address}api/open", data={"place": "shelf", "name": f"{name}.score"}
        ).json()["text"]
        self.start(text, f"{name}.score", room)

    def start(self, text, name="", room="", place="shelf"):
        """Come back to a text as after a reload of this tab."""
        work = {"text": text, "name": name, "place": place, "mark": None, "saved": text, "time": 1}
        self.leave()
        self.page.evaluate(
            """work => {
                localStorage.setItem('scorecraft.work.started', work);
                sessionStorage.setItem('scorecraft.here', 'started');
            }""",
            json.dumps(work),
        )
        self.page.goto(f"{self.address}#{room}")

    def leave(self):
        """Go to a drawing of the same site, soon loaded and without a script."""
        drawing = f"{self.address}static/icon.svg"
        if self.page.url != drawing:
            self.page.goto(drawing)

    def forget(self):
        """Be as new: nothing is open, kept, held back or set, and no page is open but one."""
        self.context.unroute_all(behavior="ignoreErrors")
        for page in self.context.pages:
            if page is not self.page:
                page.close()
        if self.page.is_closed():
            self.watch()
        self.page.unroute_all(behavior="ignoreErrors")
        self.leave()
        self.page.evaluate("() => [localStorage, sessionStorage].forEach((each) => each.clear())")
        self.page.emulate_media(
            media="null", color_scheme="null", reduced_motion="null", forced_colors="null"
        )
        width, height = SIZES[self.size]
        self.page.set_viewport_size({"width": width, "height": height})

    def slide(self, selector, value):
        self.page.locator(selector).evaluate(
            "(s, v) => { s.value = v; s.dispatchEvent(new Event('input')) }", value
        )

    def clean(self):
        """Have had nothing to complain of; what was said is told once."""
        said, self.complaints = self.complaints, []
        asked, self.strangers = self.strangers, []
        assert said == [] == asked, said + asked

    def picture(self, folder, name, size=None):
        """Keep what is seen for a person to look at; nothing without a folder."""
        if folder:
            self.page.screenshot(path=folder / f"{name}-{size or self.size}.png")
