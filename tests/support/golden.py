"""The golden set in gallery/: texts that are written by `--remake` and compared ever after."""

import difflib
from pathlib import Path

GALLERY = Path(__file__).parents[2] / "gallery"


def compare(path: Path, text: str, remake: bool) -> None:
    """Compare a text with its golden file, or write the file."""
    if remake:
        path.write_text(text, encoding="utf-8")
    assert path.exists(), f"{path.name} is missing: run with --remake"
    old, new = path.read_text(encoding="utf-8").splitlines(), text.splitlines()
    changed = list(difflib.unified_diff(old, new, "golden", "now", n=0, lineterm=""))
    shown = "\n".join(line[:160] for line in changed[:24])
    assert not changed, f"{path.name} has changed in {len(changed)} lines:\n{shown}"
