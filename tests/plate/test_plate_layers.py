"""Layers of dusting, as they are written."""

import pytest

from scorecraft.errors import UsageError
from scorecraft.plate.layers import layer_of, layers_of


def test_layers_name_their_cuts():
    found = layers_of("flour=leaf outline, star; cocoa = slash")
    assert found == {"flour": ("leaf outline", "star"), "cocoa": ("slash",)}
    assert layer_of(found, "cocoa") == ("slash",)
    with pytest.raises(UsageError, match='no layer "sugar"') as caught:
        layer_of(found, "sugar")
    assert caught.value.hint == "there are: flour, cocoa"


@pytest.mark.parametrize("text", ["", "flour", "flour=", "=leaf", "a=leaf; a=star", "a=b;" * 9])
def test_what_is_no_layer_is_told(text):
    with pytest.raises(UsageError, match="tells no layers"):
        layers_of(text)
