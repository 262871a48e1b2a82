"""Writing renderings: PNG for screens, TIFF for print, one HTML page to send."""

from base64 import b64encode
from html import escape
from io import BytesIO
from pathlib import Path

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.colour import linear_to_srgb
from framing_palette.errors import OutputError
from framing_palette.whole_files import write_whole

MM_PER_INCH = 25.4


def write_png(path: Path | str, srgb: UInt8Array, *, px_per_mm: float | None = None) -> Path:
    """Write an 8-bit PNG that says it is sRGB, and return its path.

    Parameters
    ----------
    px_per_mm
        Written as the resolution, so that it prints at that size; left out when None.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    return write_whole(Path(path), png_bytes(srgb, px_per_mm=px_per_mm))


def png_bytes(srgb: UInt8Array, *, px_per_mm: float | None = None) -> bytes:
    """Return a PNG file's bytes, with sRGB, cHRM and gAMA chunks."""
    from PIL import Image
    from PIL.PngImagePlugin import PngInfo

    told = PngInfo()
    told.add(b"sRGB", b"\x00")  # perceptual; cHRM and gAMA as the PNG specification advises
    told.add(b"gAMA", (45455).to_bytes(4, "big"))
    primaries = (31270, 32900, 64000, 33000, 30000, 60000, 15000, 6000)
    told.add(b"cHRM", b"".join(value.to_bytes(4, "big") for value in primaries))
    dots = {"dpi": (px_per_mm * MM_PER_INCH,) * 2} if px_per_mm else {}
    stream = BytesIO()
    image = Image.fromarray(np.ascontiguousarray(srgb))
    image.save(stream, "PNG", pnginfo=told, compress_level=4, **dots)
    return stream.getvalue()


def write_tiff(path: Path | str, linear_srgb: Float32Array, *, px_per_mm: float) -> Path:
    """Write a 16-bit TIFF with an embedded sRGB profile at true resolution.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    import tifffile

    encoded = linear_to_srgb(np.clip(linear_srgb, 0.0, 1.0))
    levels = np.rint(encoded * 65535.0).astype(np.uint16)
    stream = BytesIO()
    tifffile.imwrite(
        stream,
        levels,
        photometric="rgb",
        compression="zlib",
        predictor=True,
        resolution=(px_per_mm * 10.0, px_per_mm * 10.0),
        resolutionunit="CENTIMETER",
        iccprofile=srgb_profile(),
        metadata=None,
    )
    return write_whole(Path(path), stream.getvalue())


def srgb_profile() -> bytes:
    """Return the bytes of an sRGB colour profile."""
    from PIL import ImageCms

    return bytes(ImageCms.ImageCmsProfile(ImageCms.createProfile("sRGB")).tobytes())


def write_html(
    path: Path | str,
    images: list[tuple[str, UInt8Array]],
    *,
    title: str,
    notes: list[str] | None = None,
) -> Path:
    """Write one page with captioned images inside it and nothing fetched from elsewhere.

    Raises
    ------
    OutputError
        When the file cannot be written.
    """
    figures = "\n".join(_figure(caption, srgb) for caption, srgb in images)
    told = "".join(f"<li>{escape(note)}</li>" for note in notes or [])
    page = _PAGE.format(
        title=escape(title), figures=figures, notes=f"<ul>{told}</ul>" if told else ""
    )
    return write_whole(Path(path), page.encode())


_PAGE = """<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>{title}</title>
<style>
body {{ margin: 0; background: #919191; color: #111; font: 16px/1.5 system-ui, sans-serif; }}
main {{ max-width: 1600px; margin: 0 auto; padding: 24px; }}
h1 {{ font-size: 20px; font-weight: 600; margin: 0 0 16px; }}
figure {{ margin: 0 0 24px; }}
img {{ display: block; width: 100%; height: auto; }}
figcaption {{ padding: 8px 0; }}
@media print {{ body {{ background: #fff; }} }}
</style>
</head>
<body>
<main>
<h1>{title}</h1>
{figures}
{notes}
</main>
</body>
</html>
"""


def _figure(caption: str, srgb: UInt8Array) -> str:
    data = b64encode(png_bytes(srgb)).decode()
    rows, columns = srgb.shape[:2]
    return (
        f'<figure><img width="{columns}" height="{rows}" alt="{escape(caption)}" '
        f'src="data:image/png;base64,{data}"><figcaption>{escape(caption)}</figcaption></figure>'
    )


def check_folder(path: Path) -> None:
    """Refuse a path whose folder is not there, before time is spent on what goes into it.

    Raises
    ------
    OutputError
        Naming the folder.
    """
    if not path.parent.is_dir():
        raise OutputError(
            path.parent, problem="is not a folder", todo="make it first or choose another"
        )
