"""What to say of something that went wrong."""

from framing_palette.errors import FramingPaletteError


def plain_fault(error: Exception) -> str:
    """Return the sentence of an error of ours, and of any other that the program is at fault."""
    if isinstance(error, FramingPaletteError):
        return str(error)
    kind = type(error).__name__
    return f"This is a defect of the program, not of your input ({kind}: {error})."
