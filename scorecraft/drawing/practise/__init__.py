"""The practice sheets: strokes to trace, to follow by fading guides, and to do freehand."""
