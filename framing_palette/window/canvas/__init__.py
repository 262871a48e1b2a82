"""What lies before designer and client?

The picture on its surround, with whatever is laid on and around it. A canvas shows a session and
keeps nothing but where it looks; its layers each draw one thing and answer the pointer for it. It
works at any zoom from a pyramid of the picture, and repaints only what moved. Only the steps of
the window use this folder.
"""

from framing_palette.window.canvas.canvas import Canvas
from framing_palette.window.canvas.layer import Layer
from framing_palette.window.canvas.outlook import Look, Outlook
from framing_palette.window.canvas.place import Place

__all__ = ["Canvas", "Layer", "Look", "Outlook", "Place"]
