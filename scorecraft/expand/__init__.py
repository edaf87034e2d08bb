"""From a tree and a loaf to a layout: place, repeat, mirror, fill, clip, recurse, within limits."""

from scorecraft.expand.layout import expand as expand
