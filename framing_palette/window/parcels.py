"""How a sample is carried from one part of the window to another."""

from PySide6.QtCore import QByteArray, QMimeData

SAMPLE_MIME = "application/x-framing-sample-code"


def parcel(code: str) -> QMimeData:
    """Return a parcel with a sample's code in it."""
    data = QMimeData()
    data.setData(SAMPLE_MIME, QByteArray(code.encode()))
    return data


def carried_code(data: QMimeData) -> str:
    """Return the code in a parcel; empty when it holds no sample."""
    return bytes(data.data(SAMPLE_MIME).data()).decode()
