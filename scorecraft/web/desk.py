"""Takes the page's questions to the workers, as long as somebody waits for the answers."""

from collections.abc import Callable

from scorecraft.frozen import dataclass, field
from scorecraft.web.answer import Answer
from scorecraft.web.asked import LONGEST_MARK, Data, asked, text_of
from scorecraft.web.crew import Crew, always
from scorecraft.web.folder import Folder
from scorecraft.web.wishes import Wishes

EDIT_S = 10.0
"""So long an edit may take; what the model or a print needs may take `MODEL_S`."""
MODEL_S = 40.0
QUICK = ("sight", "design", "picture", "reform", "look", "pick", "do")
FOLLOWED = ("sight", "design", "opening", "bloom", "view", "print", "look", "pick")
"""Of these a page wants the newest only."""
WRITES = ("measure",)
"""What may write files is done to its end."""


@dataclass(frozen=True, slots=True)
class Desk:
    """The crew, and the folder it works in."""

    crew: Crew
    folder: Folder
    wishes: Wishes = field(default_factory=Wishes)

    def done(self, task: str, data: Data, gone: Callable[[], bool]) -> Answer:
        """Have a worker do a task about a pattern; `gone` tells whether the asker went away.

        Raises ScorecraftError as `Crew.do` does.
        """
        return self.crew.do(
            task,
            {**data, "folder": str(self.folder.path)},
            about=asked(data),
            seconds=EDIT_S if task in QUICK else MODEL_S,
            quick=task in QUICK,
            wanted=always if task in WRITES else self.wanted(task, data, gone),
        )

    def tray(self) -> Answer:
        """Have a worker tell the figures of the tray; raises ScorecraftError as `Crew.do` does."""
        return self.crew.do("tray", {}, about="tray", seconds=EDIT_S)

    def wanted(self, task: str, data: Data, gone: Callable[[], bool]) -> Callable[[], bool]:
        """Give what tells whether the answer is still wanted.

        A question may name its `page`, any short text: a newer one of the same page then takes
        its place. A file to keep is wanted beside others.
        """
        page = text_of(data, "page", default="", limit=LONGEST_MARK)
        followed = task in FOLLOWED and data.get("form", "pages") == "pages"
        return self.wishes.wanted(page if followed else "", task, gone)
