"""One change of a form or a slider, written into the text that the page has now."""

from collections.abc import Mapping

from scorecraft.designing import Design
from scorecraft.editing.head import keys_as_written, with_keys, with_knob
from scorecraft.errors import ScorecraftError, UsageError
from scorecraft.json_data import JsonObject
from scorecraft.web.answer import Answer, json_answer, problems_answer
from scorecraft.web.asked import Data, choice_of, text_of, words_of

FORMS = ("loaf", "dough", "bake", "bench")
MOST_KEYS = 20


def edit_answer(data: Data) -> Answer:
    """Answer with the text after a change, or with why the text does not take it."""
    try:
        return json_answer({"ok": True, "text": edited(data)})
    except UsageError:
        raise
    except ScorecraftError as error:
        return problems_answer(error.problems)


def edited(data: Data) -> str:
    """Give the text with `keys` of a `word` changed, or with a `knob` at a `value`.

    Raises UsageError where the request is not right, ScorecraftError where the text does not take
    the change.
    """
    text = text_of(data, "text", limit=None)
    knob = words_of(data, "knob")
    if knob is not None:
        return with_knob(text, knob, line_of(data, "value"))
    return with_keys(text, choice_of(data, "word", FORMS), keys_of(data))


def reformed(design: Design, data: Data) -> JsonObject:
    """Give the text with its loaf of another `form`, in another `pan`, or sized `by` what is asked.

    Raises UsageError where the request is not right, ScorecraftError where the text does not take
    the change.
    """
    from scorecraft.editing import forms

    line = next(each for each in design.tree.statements if each.word == "loaf")
    layout, written = design.layout, keys_as_written(line)
    if data.get("form"):
        keys = forms.keys_of_form(layout, written, text_of(data, "form"))
    elif "pan" in data:
        keys = forms.keys_of_pan(layout, line_of(data, "pan"))
    elif choice_of(data, "by", ("size", "dough")) == "dough":
        keys = forms.keys_by_dough(layout, written)
    else:
        keys = forms.keys_by_size(layout, written)
    return {"ok": True, "text": with_keys(design.source.text, "loaf", keys)}


def keys_of(data: Data) -> dict[str, str]:
    """Read the keys that change, each with its value as it stands in a pattern.

    Raises UsageError for none or too many.
    """
    keys = data.get("keys")
    if not isinstance(keys, Mapping) or not 0 < len(keys) <= MOST_KEYS:
        raise UsageError('"keys" must be a few keys with their values')
    return {str(key): line_of(keys, key) for key in keys}


def line_of(data: Data, key: str) -> str:
    """Read a text of one line that must be there; raises UsageError where it is not."""
    value = words_of(data, key)
    if value is None:
        raise UsageError(f'"{key}" must be a text')
    return value
