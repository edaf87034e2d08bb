import os
import threading
from pathlib import Path

import pytest
from flask import request
from support.web_browser import ARGUMENTS, CHROMIUM, Watched
from support.web_patterns import HOST, LAN

from scorecraft.web.app import make_app
from scorecraft.web.crew import Crew
from scorecraft.web.folder import Folder
from scorecraft.web.guards import KEPT
from scorecraft.web.guests import Guests
from scorecraft.web.serve import bound, hosts_of, waitress_server
from scorecraft.web.tasks import work


class Asking:
    """A browser's page as the server sees it."""

    def __init__(self, app):
        self.client = app.test_client()

    def get(self, path, **more):
        return self.client.get(path, base_url=f"http://{HOST}", buffered=True, **more)

    def post(self, path, data, **more):
        return self.client.post(path, base_url=f"http://{HOST}", json=data, **more)

    def told(self, path, data):
        answer = self.post(path, data)
        assert answer.status_code == 200, answer.text
        return answer.get_json()


@pytest.fixture(scope="session")
def crew():
    crew = Crew(work, 2, quick_s=60)  # on a busy machine nothing is begun anew
    yield crew
    crew.close()


@pytest.fixture
def folder(tmp_path):
    return Folder(tmp_path)


@pytest.fixture
def guests():
    return Guests(f"http://{LAN}/")


@pytest.fixture
def asking(folder, crew, guests):
    return Asking(make_app(folder, crew, {HOST, LAN}, guests))


def kept_in_browser(answer):
    """Let the browser keep scripts too, which it else reads anew: half of what a page costs."""
    if answer.status_code == 200 and request.path.startswith("/static/"):
        answer.headers["Cache-Control"] = KEPT
    return answer


@pytest.fixture(scope="session")
def live(crew, tmp_path_factory):
    """A served page: its address and its folder."""
    path = tmp_path_factory.mktemp("patterns")
    door = bound("127.0.0.1", 0)
    port = door.getsockname()[1]
    app = make_app(Folder(path), crew, hosts_of(port))
    app.after_request_funcs[None].insert(0, kept_in_browser)  # the last to see an answer
    server = waitress_server(app, door)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield f"http://127.0.0.1:{port}/", Path(path)
    server.close()
    thread.join(5)


@pytest.fixture(scope="session")
def browser():
    """A real browser; without one its tests are skipped with the reason."""
    playwright = pytest.importorskip("playwright.sync_api")
    if not CHROMIUM.exists():
        pytest.skip(f"no browser at {CHROMIUM}")
    playwright.expect.set_options(timeout=20_000)  # a busy machine only takes longer
    with playwright.sync_playwright() as made:
        browser = made.chromium.launch(executable_path=str(CHROMIUM), args=ARGUMENTS)
        yield browser
        browser.close()


@pytest.fixture(scope="session")
def pictures():
    """Screenshots are made only where SCREENSHOTS names a folder for them."""
    folder = os.environ.get("SCREENSHOTS")
    if not folder:
        return None
    made = Path(folder)
    made.mkdir(parents=True, exist_ok=True)
    return made


@pytest.fixture(scope="session")
def kept():
    """Pages by their size, left as new: a page of its own for each test would cost a second."""
    return {}


@pytest.fixture
def seen(browser, live, kept):
    """Open a watched page, for a taste of colours and motion; at the end it must be clean.

    A page with a clock of its own is used again for such tests alone.
    """
    opened = []

    def look(size="desk", *, own_clock=False, **taste):
        web = kept.pop((size, own_clock), None) or Watched(browser, live[0], size)
        opened.append((web, own_clock))
        web.page.emulate_media(**taste)
        return web

    yield look
    for web, own_clock in opened:
        if (web.size, own_clock) in kept:
            web.context.close()
        else:
            web.forget()
            kept[web.size, own_clock] = web
        web.clean()
