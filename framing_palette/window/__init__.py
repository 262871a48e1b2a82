"""How do designer and client work with it?

The window draws and listens; every calculation it shows was made in a folder above. One session
holds frozen values; views read it, edits go through it by name and can be undone, and whatever
takes longer than a blink runs off the interface thread. Only this folder knows Qt, and importing
it does not load Qt yet. Nothing may import it but the program's entrance.
"""

from framing_palette.window.opening import run

__all__ = ["run"]
