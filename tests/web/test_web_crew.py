"""Runaway work stops nobody else, and ends when nobody wants it any more."""

import json
import socket
import threading

import pytest
from support.runaway_work import alive, until, work, workers

from scorecraft.web.app import make_app
from scorecraft.web.crew import MOST_WAITING, Crew, TooLongError, UnwantedError
from scorecraft.web.folder import Folder
from scorecraft.web.serve import bound, hosts_of, waitress_server
from scorecraft.web.worker import TooBusyError

FOREVER_S = 1e6


@pytest.fixture
def crew():
    crew = Crew(work, 4, quick_s=0.2)
    yield crew
    crew.close()


class Asker(threading.Thread):
    """Asks a crew for something, and notes what came of it."""

    def __init__(self, crew, folder, text="hang", *, wanted=None, **more):
        super().__init__(daemon=True)
        self.still = True
        self.told = None
        self.asking = lambda: crew.do(
            "design", {"text": text, "folder": str(folder)}, about=text,
            **({"seconds": FOREVER_S, "wanted": lambda: self.still} | more),
        )  # fmt: skip
        self.start()

    def run(self):
        try:
            self.told = self.asking()
        except (TooLongError, UnwantedError, TooBusyError) as error:
            self.told = error


def quick(crew, number=0):
    return crew.do("design", {"text": "quick"}, about=f"quick {number}", seconds=60)


def test_as_many_runaways_as_workers_leave_one_for_quick_edits(crew, tmp_path):
    """The edits are done while two of the runaways go on and the others wait or have given up."""
    runaways = [Asker(crew, tmp_path, f"hang {number}") for number in range(4)]
    until(lambda: len(workers(tmp_path)) == 4 and crew.longs == 2 and crew.waiting >= 1)
    for number in range(20):
        assert json.loads(quick(crew, number).body) == {"ok": True, "task": "design"}
    assert sum(each.is_alive() for each in runaways) >= 2
    assert (len(crew.hands), crew.longs) == (4, 2)


def test_slow_work_goes_on_while_another_worker_is_free(crew, tmp_path):
    """A busy machine makes an edit slow: it is not stopped for that."""
    runaways = [Asker(crew, tmp_path, f"hang {number}", quick=False) for number in range(2)]
    until(lambda: crew.longs == 2)
    assert json.loads(crew.do("design", {"text": "slow"}, about="slow", seconds=60).body)["ok"]
    assert len(crew.lasting) == 0 and all(each.is_alive() for each in runaways)


def test_long_work_never_takes_the_last_workers(crew, tmp_path):
    asked = [Asker(crew, tmp_path, f"hang {number}", quick=False) for number in range(4)]
    until(lambda: crew.waiting == 2 and len(workers(tmp_path)) == 2)
    assert crew.longs == 2
    assert quick(crew) is not None
    for each in asked:
        each.still = False
    for each in asked:
        each.join()
    assert all(isinstance(each.told, UnwantedError) for each in asked)
    assert (crew.longs, crew.waiting, len(crew.free)) == (0, 0, 4)


def test_no_more_than_a_few_wait_for_their_turn(crew, tmp_path):
    asked = [Asker(crew, tmp_path, "hang", quick=False) for _ in range(2 + MOST_WAITING)]
    until(lambda: crew.longs == 2 and crew.waiting == MOST_WAITING)
    with pytest.raises(TooBusyError):
        crew.do("design", {}, about=1, seconds=60, quick=False)
    assert quick(crew) is not None
    for each in asked:
        each.still = False


def test_a_worker_ends_when_its_answer_is_no_longer_wanted(crew, tmp_path):
    asker = Asker(crew, tmp_path)
    until(lambda: workers(tmp_path))
    (process,) = workers(tmp_path)
    asker.still = False
    asker.join()
    assert isinstance(asker.told, UnwantedError) and not alive(process)
    assert len(crew.free) == 4 and process not in {each.process.pid for each in crew.hands}
    assert quick(crew) is not None


def test_work_that_takes_too_long_is_told_and_its_worker_replaced(crew, tmp_path):
    asker = Asker(crew, tmp_path, seconds=0.5)
    asker.join()
    assert "took longer than 0.5 s" in asker.told.message
    assert not any(alive(process) for process in workers(tmp_path))
    assert len(crew.free) == 4


def test_a_worker_that_dies_is_told_and_replaced(crew):
    with pytest.raises(TooLongError, match="sudden end"):
        crew.do("design", {"text": "die"}, about=3, seconds=60)
    assert len(crew.free) == 4
    assert quick(crew) is not None


def test_closing_ends_those_at_work_too(crew, tmp_path):
    asker = Asker(crew, tmp_path)
    until(lambda: workers(tmp_path))
    everybody = [worker.process.pid for worker in crew.hands]
    crew.close()
    asker.join()
    assert isinstance(asker.told, TooLongError)
    assert set(workers(tmp_path)) <= set(everybody)
    assert not any(alive(process) for process in everybody)


@pytest.fixture
def served(crew, tmp_path):
    """A server whose workers may hang: the port it is at."""
    door = bound("127.0.0.1", 0)
    port = door.getsockname()[1]
    server = waitress_server(make_app(Folder(tmp_path), crew, hosts_of(port)), door)
    thread = threading.Thread(target=server.run, daemon=True)
    thread.start()
    yield port
    server.close()
    thread.join(5)


def asked(port, text, **more):
    """Send a question and leave the line open."""
    body = json.dumps({"text": text, **more}).encode()
    head = (
        f"POST /api/design HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nContent-Type: application/json\r\n"
        f"Connection: close\r\nContent-Length: {len(body)}\r\n\r\n"
    )
    line = socket.create_connection(("127.0.0.1", port))
    line.settimeout(60)
    line.sendall(head.encode() + body)
    return line


def answer(line):
    with line, line.makefile("rb") as file:
        return json.loads(file.read().partition(b"\r\n\r\n")[2])


def test_a_worker_ends_when_the_asker_goes_away(served, crew, tmp_path):
    line = asked(served, "hang")
    until(lambda: workers(tmp_path))
    (process,) = workers(tmp_path)
    line.close()
    until(lambda: not alive(process))
    assert answer(asked(served, "quick"))["ok"]


def test_a_newer_question_of_the_same_page_takes_the_place_of_the_older(served, crew, tmp_path):
    older = asked(served, "hang", page="tab 1", asked="older")
    until(lambda: workers(tmp_path))
    assert answer(asked(served, "quick", page="tab 2"))["ok"]
    (process,) = workers(tmp_path)
    assert alive(process)
    assert answer(asked(served, "quick", page="tab 1"))["ok"]
    assert answer(older) == {"ok": False, "problems": [], "dropped": True, "asked": "older"}
    assert not alive(process)


def test_many_idle_lines_block_nobody(served):
    idle = [socket.create_connection(("127.0.0.1", served)) for _ in range(150)]
    try:
        assert answer(asked(served, "quick"))["ok"]
        for line in idle:
            line.setblocking(False)
            with pytest.raises(BlockingIOError):  # it is still open
                line.recv(1)
    finally:
        for line in idle:
            line.close()
