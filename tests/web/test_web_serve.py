"""`scorecraft page`: it says where it is, serves, and stops cleanly."""

import contextlib
import http.client
import json
import os
import re
import signal
import socket
import subprocess
import sys
import threading
import urllib.request

import pytest
from support.runaway_work import alive, until, workers

from scorecraft.errors import UsageError
from scorecraft.web.folder import Folder
from scorecraft.web.guests import code, network_address
from scorecraft.web.serve import bound


def started(*arguments):
    return subprocess.Popen(
        [sys.executable, "-u", "-m", "scorecraft", "page", "--no-browser", *arguments],
        stdout=subprocess.PIPE,
        stderr=subprocess.PIPE,
        text=True,
    )


def test_it_says_where_it_is_and_stops_on_ctrl_c(tmp_path):
    page = started(str(tmp_path), "--port", "0")
    address = re.search(r"http://127\.0\.0\.1:\d+/", page.stdout.readline()).group()
    with urllib.request.urlopen(address, timeout=10) as answer:
        assert b"scorecraft" in answer.read()
    assert str(tmp_path) in page.stdout.readline()
    page.send_signal(signal.SIGINT)
    _, complaints = page.communicate(timeout=10)
    assert page.returncode == 0
    assert "Traceback" not in complaints


SERVER = """
from pathlib import Path
from support.runaway_work import work
from scorecraft.web import serve
if __name__ == "__main__":
    serve.work = work
    serve.serve(Path({folder!r}), port=0, browser=False, share=False, say=print)
"""


@pytest.mark.skipif(sys.platform == "win32", reason="there are no such signals")
@pytest.mark.parametrize("number", ["SIGTERM", "SIGINT", "SIGKILL", "SIGHUP"])
def test_no_worker_is_left_however_the_server_ends(tmp_path, number):
    (tmp_path / "server.py").write_text(SERVER.format(folder=str(tmp_path)))
    page = subprocess.Popen(
        [sys.executable, "-u", str(tmp_path / "server.py")],
        env=os.environ | {"PYTHONPATH": os.pathsep.join(sys.path)},
        stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True,
    )  # fmt: skip
    address = re.search(r"http://127\.0\.0\.1:\d+/", page.stdout.readline()).group()
    body = json.dumps({"text": "hang"}).encode()
    question = urllib.request.Request(
        f"{address}api/design", body, {"Content-Type": "application/json"}
    )

    def ask():
        with contextlib.suppress(OSError, http.client.HTTPException):
            urllib.request.urlopen(question)

    asking = threading.Thread(target=ask)
    asking.start()
    until(lambda: workers(tmp_path))
    (process,) = workers(tmp_path)
    page.send_signal(getattr(signal, number))
    _, complaints = page.communicate()
    asking.join()
    until(lambda: not alive(process))
    if number in ("SIGTERM", "SIGINT"):
        assert (page.returncode, complaints) == (0, "")


def test_a_shared_page_gives_a_link_for_a_phone(tmp_path):
    try:
        own = network_address()
    except OSError:
        pytest.skip("this machine is on no network")
    page = started(str(tmp_path), "--port", "0", "--share")
    told = "".join(page.stdout.readline() for _ in range(3))
    link = re.search(rf"http://{re.escape(own)}:\d+/join/\S+", told).group()
    visitor = urllib.request.build_opener(urllib.request.HTTPCookieProcessor())
    with visitor.open(link) as answer:
        assert b'<form method="post">' in answer.read()
    with visitor.open(link, b"") as answer:
        assert answer.status == 200 and b"/static/app.js" in answer.read()
    page.send_signal(signal.SIGINT)
    page.communicate(timeout=10)


def test_a_port_that_is_taken_is_told():
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        with pytest.raises(UsageError, match=r"port \d+ cannot be used"):
            bound("127.0.0.1", taken.getsockname()[1])


def test_a_folder_that_is_none_is_told(tmp_path):
    with pytest.raises(UsageError, match="is not a folder"):
        Folder(tmp_path / "nowhere")


def test_the_code_holds_the_link():
    """The modules are those of the encoder's own matrix, three modules of quiet zone around."""
    import segno

    link = "http://192.168.1.20:29571/join/abcdefgh"
    drawn = code(link)
    size = segno.make(link, error="m", micro=False).symbol_size(border=3)[0]
    assert f'viewBox="0 0 {size} {size}"' in drawn
    assert "style=" not in drawn
