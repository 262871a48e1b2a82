"""What is wrong with a page as a picture: text over text, text off the page."""

from itertools import combinations

from framing_palette.papers.shapes import Drawing
from framing_palette.papers.type_runs import Box, box_of

TOUCHING_MM = 0.25


def overlaps(page: Drawing) -> list[tuple[str, str]]:
    """Return the pairs of lines of text that lie over each other."""
    boxes = [(text.words, box_of(text)) for text in page.texts if text.words.strip()]
    return [(one, two) for (one, a), (two, b) in combinations(boxes, 2) if a.meets(b, TOUCHING_MM)]


def outside(page: Drawing, margin: float = 8.0) -> list[str]:
    """Return the lines of text that reach into the margin or off the page."""
    frame = Box(margin, margin, page.width - margin, page.height - margin)
    return [
        text.words
        for text in page.texts
        for box in [box_of(text)]
        if box.left < frame.left
        or box.right > frame.right
        or box.top < frame.top
        or box.bottom > frame.bottom
    ]
