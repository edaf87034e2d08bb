"""What lies on the shelf and in the baker's folder, told without drawing anything."""

from scorecraft.errors import ScorecraftError
from scorecraft.json_data import JsonObject
from scorecraft.language.parse import parse
from scorecraft.shelf import SUFFIX
from scorecraft.shelf_list import first, listed
from scorecraft.web.asked import BAKER
from scorecraft.web.folder import Folder


def listing(folder: Folder) -> JsonObject:
    """List the shipped patterns, by form and level, and the folder's own."""
    shipped = [
        {"name": row.name + SUFFIX, "title": row.title, "shape": row.shape, "level": row.level,
         "problem": ""}
        for row in listed()
    ]  # fmt: skip
    own: list[JsonObject] = []
    for name in folder.names():
        try:
            told = entry(name, folder.open(name).text)
        except ScorecraftError as error:
            told = {"name": name, "title": name, "shape": "", "problem": error.message}
        own.append({**told, "changed": folder.changed(name)})
    taught = (folder.path / BAKER).is_file()
    return {"shelf": shipped, "folder": own, "path": str(folder.path), "baker": taught}


def entry(name: str, text: str) -> dict[str, str]:
    """Tell a pattern's name, title and loaf, or the first thing wrong with it."""
    try:
        tree = parse(text, name)
    except ScorecraftError as error:
        where = f"line {error.place.line}: " if error.place else ""
        return {"name": name, "title": name, "shape": "", "problem": where + error.message}
    title = first(tree, "title", "text") or name.removesuffix(SUFFIX)
    return {"name": name, "title": title, "shape": first(tree, "loaf", "shape"), "problem": ""}
