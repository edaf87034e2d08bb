"""Start the server, open the page, and stop cleanly."""

import logging
import os
import select
import signal
import socket
import sys
import threading
import webbrowser
from collections.abc import Callable
from pathlib import Path
from types import FrameType
from typing import TYPE_CHECKING

from scorecraft.web import telling
from scorecraft.web.app import make_app
from scorecraft.web.crew import Crew
from scorecraft.web.folder import Folder
from scorecraft.web.guards import MOST_BODY_BYTES
from scorecraft.web.guests import Guests, network_address
from scorecraft.web.tasks import work

if TYPE_CHECKING:
    from flask import Flask
    from waitress.server import BaseWSGIServer

THREADS = 16
"""More than the long work that is done or waited for, so that quick edits come through."""
IDLE_S = 15
"""So long a connection may be idle."""
MOST_CONNECTIONS = 1000
LEAST_WORKERS, MOST_WORKERS = 4, 5


def serve(
    folder: Path, *, port: int, browser: bool, share: bool, say: Callable[[str], None]
) -> None:
    """Serve the page for a folder until Ctrl-C; `say` tells the baker where it is.

    A port of 0 takes any free one. Raises UsageError where the port is taken.
    """
    own = Folder(folder)
    outside = shared_address() if share else ""
    door = bound("0.0.0.0" if share else "127.0.0.1", port)
    number = door.getsockname()[1]
    hosts = hosts_of(number)
    guests = Guests()
    if share:
        hosts.add(f"{outside}:{number}")
        guests = Guests(f"http://{outside}:{number}/")
    crew = Crew(work, workers_wanted())
    try:
        end_on_signals(crew)
        server = waitress_server(make_app(own, crew, hosts, guests), door)
        address = f"http://127.0.0.1:{number}/"
        welcome(address, own, guests, say)
        if browser:
            threading.Thread(target=webbrowser.open, args=(address,), daemon=True).start()
        server.run()
        server.close()
    finally:
        crew.close()


def welcome(address: str, folder: Folder, guests: Guests, say: Callable[[str], None]) -> None:
    """Tell the baker where the page is, and how a phone gets in."""
    say(telling.AT.format(address=address))
    say(telling.SHOWS.format(folder=folder.path))
    if guests.welcome:
        say(telling.PHONE_LINK.format(link=guests.invite()))
        say(telling.PHONE_ONCE)


def end_on_signals(crew: Crew) -> None:
    """End the workers and then this process on Ctrl-C and on a request to end.

    The signal raises SystemExit.
    """

    def end(number: int, frame: FrameType | None) -> None:
        crew.close()
        raise SystemExit(0)

    for number in (signal.SIGINT, signal.SIGTERM):
        signal.signal(number, end)


def shared_address() -> str:
    """Find where a phone reaches this machine; raises UsageError without a network."""
    try:
        return network_address()
    except OSError as error:
        raise telling.NO_NETWORK.usage() from error


def hosts_of(port: int) -> set[str]:
    """Name every host the server answers to on this machine."""
    return {f"{name}:{port}" for name in ("127.0.0.1", "localhost", "[::1]")}


def workers_wanted() -> int:
    """Choose how many workers to hire: one is free for the next edit, whatever the others do."""
    return max(LEAST_WORKERS, min(MOST_WORKERS, os.cpu_count() or LEAST_WORKERS))


def bound(host: str, port: int) -> socket.socket:
    """Bind a socket; raises UsageError where the port is taken."""
    door = socket.socket(socket.AF_INET, socket.SOCK_STREAM)
    if sys.platform != "win32":
        door.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    try:
        door.bind((host, port))
    except OSError as error:
        door.close()
        raise telling.NO_PORT(port=port, why=error.strerror).usage() from error
    return door


def most_connections() -> int:
    """Choose how many connections may be open: as many as is sound where files are few."""
    if sys.platform == "win32":
        return MOST_CONNECTIONS // 2
    import resource

    files, _ = resource.getrlimit(resource.RLIMIT_NOFILE)
    return MOST_CONNECTIONS if files < 0 else min(MOST_CONNECTIONS, files * 3 // 4)


def waitress_server(app: "Flask", door: socket.socket) -> "BaseWSGIServer":
    """Make a waitress server on a bound socket."""
    from waitress.server import create_server

    logging.getLogger("waitress.queue").setLevel(logging.ERROR)  # a short queue is no news
    door.listen(128)
    return create_server(
        app,
        sockets=[door],
        threads=THREADS,
        max_request_body_size=MOST_BODY_BYTES * 2,
        channel_timeout=IDLE_S,
        cleanup_interval=IDLE_S // 3,
        connection_limit=most_connections(),
        asyncore_use_poll=hasattr(select, "poll"),
        channel_request_lookahead=1,  # so that it is seen when the asker goes away
        ident="scorecraft",
    )
