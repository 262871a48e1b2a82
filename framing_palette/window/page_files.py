"""Pages of a finished PDF as images, exactly as they will be printed."""

from threading import Lock

from PySide6.QtGui import QImage

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
        pixels = bitmap.to_numpy()
        rows, columns, channels = pixels.shape
        forms = {3: QImage.Format.Format_RGB888, 4: QImage.Format.Format_RGBX8888}
        stride = pixels.strides[0]
        return QImage(pixels.data, columns, rows, stride, forms[channels]).copy()
    finally:
        bitmap.close()
        page.close()  # type: ignore[attr-defined]
