"""`scorecraft page`: it says where it is, serves, and stops cleanly."""

import re
import signal
import socket
import subprocess
import sys
import time
import urllib.request

import pytest

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
    begun = time.monotonic()
    page = started(str(tmp_path), "--port", "0")
    address = re.search(r"http://127\.0\.0\.1:\d+/", page.stdout.readline()).group()
    with urllib.request.urlopen(address, timeout=10) as answer:
        assert b"scorecraft" in answer.read()
    assert time.monotonic() - begun < 8  # under one second where nothing else runs
    assert str(tmp_path) in page.stdout.readline()
    page.send_signal(signal.SIGINT)
    _, complaints = page.communicate(timeout=10)
    assert page.returncode == 0
    assert "Traceback" not in complaints


def test_a_shared_page_gives_a_link_for_a_phone(tmp_path):
    try:
        own = network_address()
    except OSError:
        pytest.skip("this machine is on no network")
    page = started(str(tmp_path), "--port", "0", "--share")
    told = "".join(page.stdout.readline() for _ in range(3))
    link = re.search(rf"http://{re.escape(own)}:\d+/join/\S+", told).group()
    visitor = urllib.request.build_opener(urllib.request.HTTPCookieProcessor())
    with visitor.open(link, timeout=10) as answer:
        assert answer.url.endswith("/#bench") or answer.status == 200
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
