"""Which answers are still wanted: the page waits for them, and has not asked anew."""

import threading
from collections.abc import Callable

MOST_PAGES = 200
"""So many pages and tasks are remembered."""


class Wishes:
    """The newest question of every page about every task."""

    def __init__(self) -> None:
        self.lock = threading.Lock()
        self.newest: dict[tuple[str, str], object] = {}

    def wanted(self, page: str, task: str, gone: Callable[[], bool]) -> Callable[[], bool]:
        """Note a question; give what tells whether its answer is still wanted.

        It is until the page is `gone` or asks the same task again. A question of no page is
        followed by none.
        """
        if not page:
            return lambda: not gone()
        key, mine = (page, task), object()
        with self.lock:
            self.newest.pop(key, None)
            self.newest[key] = mine
            if len(self.newest) > MOST_PAGES:
                del self.newest[next(iter(self.newest))]
        return lambda: self.newest.get(key, mine) is mine and not gone()
