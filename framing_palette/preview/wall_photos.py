"""Wall photos: a design on the client's own wall, in the photograph's perspective.

A flat thing on the wall whose four corners and one length are known (a sheet of paper, a door, a
picture that hangs there) fixes the wall's plane. When only its width is known, its height follows
from the perspective itself, with the photograph's middle taken as the lens's axis.

References
----------
Z. Zhang, A flexible new technique for camera calibration, IEEE PAMI 22 (11), 2000: the two
constraints that a plane's homography puts on the camera, here solved for the focal length.
"""

from dataclasses import dataclass

import numpy as np

from framing_palette.arrays import Float32Array, Float64Array, UInt8Array
from framing_palette.catalogue import Catalogue
from framing_palette.design import Design
from framing_palette.errors import FieldError
from framing_palette.picture import Picture
from framing_palette.preview.art import linear_picture
from framing_palette.preview.easels import Easel, Show
from framing_palette.preview.encoding import clipped_pixels, srgb_u8
from framing_palette.preview.grids import Grid, Hung
from framing_palette.preview.looks import Options
from framing_palette.preview.painting import Sight, View
from framing_palette.preview.planning import plan_of
from framing_palette.preview.plans import Rect
from framing_palette.preview.rendering import proportion_notices
from framing_palette.preview.walls import frame_shadow, shadow_reach_mm

Corners = tuple[tuple[float, float], ...]

_USUAL_FOCAL = 1.1  # of the longer side, where the perspective does not tell; a phone's main lens
_MOST_PX = 24_000_000
_TOO_SQUARE = (
    "The photograph's perspective does not tell the height of the known thing; a usual lens is "
    "assumed, so give the height as well to be sure."
)


@dataclass(frozen=True, slots=True, eq=False)
class WallPhoto:
    """A photograph of a wall with something of known size on it.

    Parameters
    ----------
    photo
        Upright; its colours are shown as they are.
    corners
        Four corners of the known thing, (x, y) from 0 to 1 across the photograph, clockwise from
        its top left one.
    width_mm
        Its true width, above zero.
    height_mm
        Its true height, None when not known.
    exposure
        What multiplies the frame's light so that its whites agree with the photograph's.
    """

    photo: Picture
    corners: Corners
    width_mm: float
    height_mm: float | None = None
    exposure: float = 1.0

    def __post_init__(self) -> None:
        if len(self.corners) != 4 or not _is_convex(np.asarray(self.corners, np.float64)):
            wanted = "name the four corners in turn, clockwise from the top left, none inside"
            raise FieldError("corners", got=str(self.corners), wanted=wanted)
        sizes = {"width_mm": self.width_mm, "height_mm": self.height_mm, "exposure": self.exposure}
        for name, size in sizes.items():
            if size is not None and not 0 < size < 1e5:
                raise FieldError(name, got=size, wanted="give a number above zero")


@dataclass(frozen=True, slots=True, eq=False)
class OnWall:
    """A design on a photographed wall.

    Parameters
    ----------
    srgb
        Shape of the photograph, 8-bit sRGB, read-only.
    outline
        The frame's four corners (x, y) in pixels, clockwise from the top left.
    thing_height_mm
        Height of the known thing, as given or as found from the perspective.
    clipped_share, notices
        As of a rendering.
    """

    srgb: UInt8Array
    outline: Corners
    thing_height_mm: float
    clipped_share: float
    notices: tuple[str, ...]


def render_on_wall(
    design: Design,
    picture: Picture,
    catalogue: Catalogue,
    wall: WallPhoto,
    *,
    middle_mm: tuple[float, float],
    options: Options | None = None,
    easel: Easel | None = None,
) -> OnWall:
    """Return the wall's photograph with the framed picture hanging on it.

    Parameters
    ----------
    middle_mm
        Where the frame's middle hangs: to the right of and below the known thing's top left
        corner, on the wall.

    Raises
    ------
    FieldError
        When the design cannot be built or the frame would hang outside the photograph.
    UnknownSampleError
        When a code is not in the catalogue.
    """
    options, easel = options or Options(), easel or Easel()
    plan = plan_of(design, catalogue, under=options.under)
    to_photo, height_mm, told = wall_homography(wall)
    x, y = plan.extent.middle
    hung = Hung(plan, middle_mm[0] - x, middle_mm[1] - y)
    outline = _projected(to_photo, hung.extent)
    _check_place(outline, wall.photo)
    show = Show((hung,), ((picture,),), options.under)
    linear = _composed(show, wall, to_photo, options, easel)
    srgb = srgb_u8(linear)
    srgb.flags.writeable = False
    notices = (
        *told, *plan.notices, *easel.unread_textures(show), *proportion_notices(plan, picture)
    )  # fmt: skip
    share = clipped_pixels(linear) / (linear.shape[0] * linear.shape[1])
    corners = tuple((float(px), float(py)) for px, py in outline)
    return OnWall(srgb, corners, height_mm, share, notices)


def wall_homography(wall: WallPhoto) -> tuple[Float64Array, float, tuple[str, ...]]:
    """Return the map from wall millimetres to photograph pixels, the thing's height, and notices.

    The origin on the wall is the known thing's top left corner.
    """
    rows, columns = wall.photo.rows, wall.photo.columns
    corners = np.asarray(wall.corners, np.float64) * (columns, rows)
    unit = _from_unit_square(corners)
    told: tuple[str, ...] = ()
    height = wall.height_mm
    if height is None:
        ratio, seen = _height_per_width(unit, columns, rows)
        height = wall.width_mm * ratio
        if not seen:
            told = (_TOO_SQUARE,)
    return unit @ np.diag([1.0 / wall.width_mm, 1.0 / height, 1.0]), height, told


def _from_unit_square(corners: Float64Array) -> Float64Array:
    import cv2

    square = np.array([[0, 0], [1, 0], [1, 1], [0, 1]], np.float32)
    return np.asarray(
        cv2.getPerspectiveTransform(square, corners.astype(np.float32)), dtype=np.float64
    )


def _height_per_width(unit: Float64Array, columns: int, rows: int) -> tuple[float, bool]:
    """Return the ratio of a rectangle's sides, and whether the perspective alone told it.

    With the lens's axis in the photograph's middle, h1 and h2 being the first columns of the
    homography, h1' w h2 = 0 gives the focal length and |K^-1 h2| / |K^-1 h1| the ratio.
    """
    centre = np.array([[1, 0, -columns / 2], [0, 1, -rows / 2], [0, 0, 1.0]])
    h1, h2 = (centre @ unit)[:, 0], (centre @ unit)[:, 1]
    usual = _USUAL_FOCAL * max(columns, rows)
    told = h1[2] * h2[2]
    squared = -(h1[0] * h2[0] + h1[1] * h2[1]) / told if abs(told) > 1e-12 else -1.0
    seen = (0.2 * usual) ** 2 < squared < (8.0 * usual) ** 2
    focal = float(np.sqrt(squared)) if seen else usual
    lengths = [float(np.linalg.norm([h[0] / focal, h[1] / focal, h[2]])) for h in (h1, h2)]
    flat = max(abs(h1[2]), abs(h2[2])) * focal < 0.02 * float(np.hypot(h1[0], h1[1]))
    return lengths[1] / lengths[0], seen or flat


def _is_convex(points: Float64Array) -> bool:
    if not np.isfinite(points).all():
        return False
    ahead = np.roll(points, -1, axis=0) - points
    after = np.roll(ahead, -1, axis=0)
    turns = ahead[:, 0] * after[:, 1] - ahead[:, 1] * after[:, 0]
    return bool((turns > 1e-6).all())


def _projected(to_photo: Float64Array, rect: Rect) -> Float64Array:
    corners = [
        (rect.left, rect.top), (rect.right, rect.top),
        (rect.right, rect.bottom), (rect.left, rect.bottom),
    ]  # fmt: skip
    points = np.column_stack([np.asarray(corners), np.ones(4)]) @ to_photo.T
    if (points[:, 2] <= 1e-9).any():
        raise FieldError(
            "place", got="behind the camera", wanted="hang the frame nearer to the known thing"
        )
    return np.asarray(points[:, :2] / points[:, 2:])


def _check_place(outline: Float64Array, photo: Picture) -> None:
    low, high = outline.min(axis=0), outline.max(axis=0)
    if high[0] <= 0 or high[1] <= 0 or low[0] >= photo.columns or low[1] >= photo.rows:
        got = f"{low[0]:.0f}, {low[1]:.0f} pixels"
        wanted = "it lies outside the photograph; choose a place on it"
        raise FieldError("the frame's place", got=got, wanted=wanted)


def _scale(to_photo: Float64Array, rect: Rect) -> float:
    """Return the finest scale at which the photograph shows the frame, in pixels per mm."""
    outline = _projected(to_photo, rect)
    sides = np.linalg.norm(np.roll(outline, -1, axis=0) - outline, axis=1)
    finest = max(
        sides[0] / rect.width, sides[2] / rect.width,
        sides[1] / rect.height, sides[3] / rect.height,
    )  # fmt: skip
    most = (_MOST_PX / (rect.width * rect.height)) ** 0.5
    return float(np.clip(finest, 0.02, most))


def _composed(
    show: Show, wall: WallPhoto, to_photo: Float64Array, options: Options, easel: Easel
) -> Float32Array:
    """Return the photograph in linear light with shadow and frame laid into it."""
    hung = show.frames[0]
    shown = hung.extent.grown(1.8 * shadow_reach_mm(hung.plan, options.light))
    grid = Grid(shown.left, shown.top, _scale(to_photo, hung.extent))
    whole = grid.around(shown)
    warp = _Warp(to_photo @ _to_mm(grid), (wall.photo.columns, wall.photo.rows))
    shadow = warp.laid(frame_shadow(hung, grid, whole, whole, options.light), outside=1.0)
    frame, cover = _frame_alone(show, View(grid, whole, whole), options, easel)
    frame *= np.float32(wall.exposure)
    photo = linear_picture(wall.photo) * shadow[..., None]
    left = 1.0 - warp.laid(cover, outside=0.0)
    linear: Float32Array = photo * left[..., None] + warp.laid(frame, outside=0.0)
    return linear


def _to_mm(grid: Grid) -> Float64Array:
    """Return the map from a grid's pixel coordinates to wall millimetres."""
    step = 1.0 / grid.px_per_mm
    return np.array([[step, 0.0, grid.left_mm], [0.0, step, grid.top_mm], [0.0, 0.0, 1.0]])


def _frame_alone(
    show: Show, view: View, options: Options, easel: Easel
) -> tuple[Float32Array, Float32Array]:
    """Return the frame without a wall, its light already weighted by how much it covers."""
    sight = Sight(options.light, None, options.pane, options.sight.largest_sheet_px)
    linear = easel.draw_linear(show, view, sight)
    easel.put_down()
    cover = np.multiply.outer(*view.grid.cover(show.frames[0].extent, view.box))
    return linear, cover


@dataclass(frozen=True, slots=True)
class _Warp:
    """From the frame's own pixels to the photograph's, both reaching from k to k + 1."""

    matrix: Float64Array
    size: tuple[int, int]

    def laid(self, image: Float32Array, *, outside: float) -> Float32Array:
        import cv2

        # The warp takes k as a pixel's middle, hence the half steps.
        to_edge = np.array([[1.0, 0.0, 0.5], [0.0, 1.0, 0.5], [0.0, 0.0, 1.0]])
        warped = cv2.warpPerspective(
            image,
            np.linalg.inv(to_edge) @ self.matrix @ to_edge,
            self.size,
            flags=cv2.INTER_LINEAR,
            borderMode=cv2.BORDER_CONSTANT,
            borderValue=(outside,) * 3,
        )
        return np.asarray(warped, np.float32)
