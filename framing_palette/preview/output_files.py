"""One rendering straight into a file, whose ending says the form."""

from pathlib import Path

from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.errors import OutputError
from framing_palette.picture import Picture
from framing_palette.preview.looks import Options, Quality
from framing_palette.preview.preview_files import (
    check_folder,
    write_html,
    write_png,
    write_tiff,
)
from framing_palette.preview.rendering import Rendering, Tell, render, render_linear

ENDINGS = (".png", ".tif", ".tiff", ".html")


def write_preview_file(
    path: Path,
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    *,
    width_px: int,
    options: Options | None = None,
    tell: Tell | None = None,
) -> Rendering:
    """Render a design into a PNG, a 16-bit TIFF or one HTML page, and return the rendering.

    Parameters
    ----------
    width_px
        Width of the image.
    options
        The look; full quality on a neutral wall when None.
    tell
        Told the share that is done; returns whether to go on.

    Raises
    ------
    OutputError
        When the ending is none of these, or the file cannot be written.
    FieldError
        When the design cannot be built or the width is out of range.
    UnknownSampleError
        When a code is not in the catalogue.
    RenderingStoppedError
        When ``tell`` returned False.
    """
    ending = path.suffix.lower()
    if ending not in ENDINGS:
        raise OutputError(
            path,
            problem="has no ending that says its form",
            todo=f"end it in {', '.join(ENDINGS)}",
        )
    check_folder(path)
    options = options or Options(quality=Quality.FULL)
    if ending in {".tif", ".tiff"}:
        linear, done = render_linear(
            design, picture, catalogue, width_px=width_px, options=options, tell=tell
        )
        write_tiff(path, linear, px_per_mm=done.grid.px_per_mm)
        return done
    done = render(design, picture, catalogue, width_px=width_px, options=options, tell=tell)
    if ending == ".png":
        write_png(path, done.srgb, px_per_mm=done.grid.px_per_mm)
    else:
        title = design.name or "Framed picture"
        write_html(path, [(title, done.srgb)], title=title, notes=list(done.notices))
    return done
