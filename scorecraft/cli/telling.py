"""What the command line says: the help of its commands and options, and its messages."""

BRIEFS = {
    "page": "design, check and print in a browser",
    "list": "list the shipped patterns",
    "new": "start a pattern of your own",
    "check": "find what is wrong with a design, and what to do next",
    "tune": "adjust the model to your own bakes",
    "words": "look up the words of the pattern language",
    "rules": "list the rules of thumb behind the checks, with sources",
}
"""What a command is for; a print says it in its own row."""
EXAMPLES = {
    "page": "page my-patterns",
    "list": "list",
    "new": "new mine --like one-slash",
    "check": 'check leaf-crown --set leaves=9 --loaf "round width 200mm height 85mm"',
    "tune": "tune leaf-crown --measured measured.csv --log bakes.jsonl",
    "words": "words leaf",
    "rules": "rules oven",
}
EXAMPLE = "Example: scorecraft {command}"
"""A command line to try: the last line of a command's help."""
START, WORK, BAKED, LOOK_UP = "Start here", "Check and print", "After the bake", "Look things up"

SET = "Set a knob, like leaves=9; may be given more than once."
LOAF = 'Another loaf, like "round width 180mm height 80mm".'
DOUGH = 'The dough as it is today, like "over temperature 5C"; the rest stays.'
BAKE = 'Different baking conditions, like "spring 1.5 steam no".'
LOAVES = "Score so many equal loaves in a row, board by board."
BAKER = "Calibration file from `tune`."
QUIET = "Print only warnings and errors."
FORMAT = "Format for standard output."
AS_JSON = "Print everything as JSON, errors too, as check.schema.json in the package says."
QUICK = "Skip the opening model and the cutting plan."
VERBOSE = "Also show how the loaf was sized and the cutting planned."
CHANGES = "Show what is new in each version and exit."
DEBUG = "On an internal error, show where it happened."
LIKE = "The shipped pattern to start from."
PORT = "The port of the page; 0 takes any free one."
NO_BROWSER = "Do not open the browser."
SHARE = "Let a phone on the same network follow the cuts."
ALL_WORDS = "Print the whole reference."
LEVELS = {"first": "a first loaf", "steady": "a steady hand", "show": "a show piece"}
"""What a level of the shelf says."""
OWN_PLURALS = {"baguette": "Baguettes", "roll": "Rolls", "fougasse": "Fougasses", "epi": "Épis"}
"""Forms that are not called loaves."""
DRAW_WORD = "Draw WORD to an .svg, .pdf or .png file."
MEASURED = "CSV of cuts by name (as on the guide) and their opened widths in mm."
CALIBRATION = "Calibration file to write, for --baker; - prints it."
LOG = "The bake log to add to and learn from, or to list ({log})."
LOG_NOTE = "A note for the log."
LIST_BAKES = "List the bakes in the log."
PLOT = "Plot predicted against measured widths; with --list, of all bakes."
BAKED_LOAF = "The loaf that was baked."
BAKED_DOUGH = "The dough as it was scored."
BAKED_HOW = "How it was baked."

PREDICTING = "predicting how the cuts open ..."
WROTE = "wrote {target}"
EDIT_IT = "edit it, then run: scorecraft check {target}"
FITTING = "running the model for skins from thin to thick, on dough from soft to firm ..."


def files(forms: tuple[str, ...]) -> str:
    """Say in which forms a print is written, by the name of its file."""
    *others, last = (f".{form}" for form in forms)
    article = "An" if others[0] == ".svg" else "A"
    return f"{article} {', '.join(others)} or {last} file, or - for standard output."


def shape_heading(shape: str) -> str:
    """Head the patterns for a form of loaf."""
    return OWN_PLURALS.get(shape) or f"{shape} loaves".capitalize()
