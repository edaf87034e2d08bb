"""What lies on the shelf and in the baker's folder, told without drawing anything."""

from scorecraft.errors import ScorecraftError
from scorecraft.json_data import JsonObject
from scorecraft.language.parse import parse
from scorecraft.language.tree import Pattern
from scorecraft.shelf import from_file, shelf
from scorecraft.web.asked import BAKER
from scorecraft.web.folder import Folder


def listing(folder: Folder) -> JsonObject:
    """List the shipped patterns and the folder's own."""
    shipped = [entry(path.name, from_file(path).text) for path in shelf().values()]
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
    title = first(tree, "title", "text") or name.removesuffix(".score")
    return {"name": name, "title": title, "shape": first(tree, "loaf", "shape"), "problem": ""}


def first(tree: Pattern, word: str, key: str) -> str:
    """Find the value of a key of the first statement of a word, or ""."""
    statement = next((each for each in tree.statements if each.word == word), None)
    argument = statement.get(key) if statement else None
    if argument is None:
        return ""
    return str(getattr(argument.value, "value", argument.value))
