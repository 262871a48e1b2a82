"""Pages of a finished PDF as images, exactly as they will be printed."""

from threading import Lock

import numpy as np
from PySide6.QtGui import QImage

from framing_palette.window.images import image_of

POINTS_PER_INCH = 72.0
SCREEN_DPI = 144.0

# PDFium may be used by one thread at a time.
_lock = Lock()


def page_images(pdf: bytes, dpi: float = SCREEN_DPI) -> tuple[QImage, ...]:
    """Return every page of a PDF as an image; call it off the interface thread."""
    import pypdfium2

    with _lock:
        document = pypdfium2.PdfDocument(pdf)
        try:
            return tuple(_image(document[number], dpi) for number in range(len(document)))
        finally:
            document.close()


def _image(page: object, dpi: float) -> QImage:
    bitmap = page.render(scale=dpi / POINTS_PER_INCH, rev_byteorder=True)  # type: ignore[attr-defined]
    try:
        # Copied before the bitmap goes: its rows may be padded, and its memory is PDFium's own.
        return image_of(np.array(bitmap.to_numpy()[..., :3], dtype=np.uint8))
    finally:
        bitmap.close()
        page.close()  # type: ignore[attr-defined]
