"""Easels: renderings that remember, so that a change redraws only what it touches."""

from collections.abc import Hashable, Iterator
from dataclasses import dataclass
from functools import partial
from threading import Lock

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.errors import CatalogueError, FieldError
from framing_palette.picture import Picture
from framing_palette.preview.art import (
    ArtImage,
    fitted,
    placed,
    placed_picture,
    scaled,
    working_picture,
)
from framing_palette.preview.encoding import clipped_pixels, srgb_u8
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.hands import shared_out
from framing_palette.preview.painting import Coat, Sight, Supplies, View, coats
from framing_palette.preview.pieces import Piece, lay, lay_onto
from framing_palette.preview.plans import Rect
from framing_palette.preview.recent import Recent
from framing_palette.preview.skins import REFERENCE_LIGHT, Skin
from framing_palette.preview.surfaces import Surface, surface_of
from framing_palette.preview.texture_files import TextureImage, read_texture
from framing_palette.preview.tiling import Extent

_MEGABYTE = 1_000_000
_LARGE_PX = 4_000_000  # a larger picture is kept reduced, so that moving it stays quick
_STRETCH_ROWS = 64  # put together at a time, within the cache


@dataclass(frozen=True, slots=True, eq=False)
class Show:
    """What is drawn: frames on a wall, and for each the pictures behind its windows in turn.

    ``under`` is the client's light, in which the pictures are seen as the frames are.
    """

    frames: tuple[Hung, ...]
    pictures: tuple[tuple[Picture, ...], ...]
    under: str = REFERENCE_LIGHT

    def __post_init__(self) -> None:
        for picture in (picture for behind in self.pictures for picture in behind):
            if not picture.lab_d50.size:
                got = f"{picture.columns} x {picture.rows} pixels"
                raise FieldError("picture", got=got, wanted="give one with something on it")


@dataclass(frozen=True, slots=True, eq=False)
class _Layer:
    """One coat as it was drawn: its key, its pieces and how many of its pixels are clipped."""

    key: Hashable
    pieces: tuple[Piece, ...]
    clipped: int

    @property
    def size_bytes(self) -> int:
        return sum(piece.size_bytes for piece in self.pieces)


@dataclass(frozen=True, slots=True, eq=False)
class Drawn:
    """A drawn block.

    Parameters
    ----------
    srgb
        Shape (rows, columns, 3), 8-bit sRGB, read-only.
    clipped_share
        Share of the drawn pixels whose colour a screen cannot show, 0..1.
    notices
        Sentences about textures that could not be read.
    """

    srgb: UInt8Array
    clipped_share: float
    notices: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True, eq=False)
class _Whole:
    """A picture in linear light; holding the picture keeps its identity from being reused."""

    picture: Picture
    linear: Float32Array


class Easel:
    """Remembers drawn layers, textures and the picture between renderings.

    One easel serves one thread at a time; a second caller waits. Forgetting is safe at any time:
    what is missing is drawn again, and the result is the same to the last digit.
    """

    def __init__(self) -> None:
        self._lock = Lock()
        self._textures: Recent[TextureImage] = Recent(
            32 * _MEGABYTE, lambda texture: texture.linear.nbytes
        )
        self._unreadable: dict[str, str] = {}
        self._surfaces: Recent[Surface] = Recent(
            48 * _MEGABYTE, lambda surface: 0 if surface.tile is None else surface.tile.nbytes
        )
        self._pictures: Recent[_Whole] = Recent(
            72 * _MEGABYTE, lambda whole: whole.linear.nbytes + whole.picture.lab_d50.nbytes
        )
        self._images: Recent[ArtImage] = Recent(48 * _MEGABYTE, lambda image: image.linear.nbytes)
        self._layers: Recent[_Layer] = Recent(80 * _MEGABYTE, lambda layer: layer.size_bytes)
        # What is needed for every block of the picture that is being drawn block by block.
        self._in_hand: tuple[object, list[Coat]] = (None, [])
        self._last: tuple[View, list[_Layer], UInt8Array] | None = None

    def draw(self, show: Show, view: View, sight: Sight) -> Drawn:
        """Return a block in 8-bit sRGB, redrawing what changed since the last time."""
        with self._lock:
            layers = self._layers_of(list(self._coats(show, view, sight)), view.box)
            srgb = self._composed(layers, view)
            self._last = (view, layers, srgb)
            clipped = sum(layer.clipped for layer in layers)
            share = clipped / max(view.box.rows * view.box.columns, 1)
            return Drawn(srgb, share, self._unread(show))

    def draw_linear(self, show: Show, view: View, sight: Sight) -> Float32Array:
        """Return a block in linear sRGB, not clipped, shape (rows, columns, 3).

        Nothing of it is kept but what its neighbours need as well, until it is put down, so that a
        large picture can be drawn block by block, several of them at once.
        """
        with self._lock:
            key = (show, view.grid, view.whole, sight)
            if self._in_hand[0] != key:
                self._in_hand = (key, list(self._coats(show, view, sight)))
                list(shared_out(lambda coat: coat.ready(), self._in_hand[1], ahead=99))
            coats_in_hand = self._in_hand[1]
        canvas = np.zeros((view.box.rows, view.box.columns, 3), np.float32)
        for coat in coats_in_hand:
            lay_onto(canvas, coat.draw(view.box), view.box)
        return canvas

    def put_down(self) -> None:
        """Let go of what was kept in hand for the next block of a picture."""
        with self._lock:
            self._in_hand = (None, [])

    def unread_textures(self, show: Show) -> tuple[str, ...]:
        """Return a sentence for each texture of the shown frames that could not be read."""
        with self._lock:
            return self._unread(show)

    def _coats(self, show: Show, view: View, sight: Sight) -> Iterator[Coat]:
        def surface(skin: Skin, extent: Extent) -> Surface:
            return self._surface(skin, view.grid.px_per_mm, extent)

        def picture(place: int, window: int) -> Hashable:
            return (show.pictures[place][window % len(show.pictures[place])], show.under)

        def image(place: int, window: int) -> ArtImage:
            pictures, hung = show.pictures[place], show.frames[place]
            art = hung.plan.arts[window]
            shown = pictures[window % len(pictures)]
            return self._image(shown, art, hung.on(view.grid), show.under)

        return coats(show.frames, view, sight, Supplies(surface, picture, image))

    def _layers_of(self, all_coats: list[Coat], box: Box) -> list[_Layer]:
        """Return the coats as they were drawn before, and draw the others, the art first."""
        keys = [(coat.key, box) for coat in all_coats]
        missing = [place for place, key in enumerate(keys) if key not in self._layers]

        def drawn(place: int) -> _Layer:
            pieces = tuple(all_coats[place].draw(box))
            clipped = sum(clipped_pixels(piece.linear) for piece in pieces)
            return _Layer(keys[place], pieces, clipped)

        if len(missing) < 2:  # not worth a second thread
            fresh = {place: drawn(place) for place in missing}
        else:
            work = missing[::-1]
            fresh = dict(zip(work, shared_out(drawn, work, ahead=len(work)), strict=True))

        def made(place: int) -> _Layer:
            # One that was there may have been forgotten since, to make room for the others.
            return fresh[place] if place in fresh else drawn(place)

        return [self._layers.get(key, partial(made, place)) for place, key in enumerate(keys)]

    def _composed(self, layers: list[_Layer], view: View) -> UInt8Array:
        pieces = [piece for layer in layers for piece in layer.pieces]
        if self._last is None or self._last[0] != view:
            return _frozen(_encoded(pieces, view.box))
        _, before, image = self._last
        touched = _changes(before, layers)
        if not touched:
            return image
        fresh = image.copy()
        for box in touched:
            part = box.meet(view.box)
            if not part.empty:
                fresh[part.within(view.box)] = srgb_u8(lay(pieces, part))
        return _frozen(fresh)

    def _surface(self, skin: Skin, px_per_mm: float, extent: Extent) -> Surface:
        return self._surfaces.get(
            (skin, px_per_mm, extent),
            lambda: surface_of(skin, self._texture(skin), px_per_mm, extent),
        )

    def _texture(self, skin: Skin) -> TextureImage | None:
        """Return a skin's texture; one that cannot be read is remembered by its problem."""
        name = skin.texture_file
        if not name or name in self._unreadable:
            return None
        try:
            return self._textures.get(name, lambda: read_texture(name))
        except CatalogueError as error:
            self._unreadable[name] = str(error)
            return None

    def _unread(self, show: Show) -> tuple[str, ...]:
        layers = [layer for hung in show.frames for layer in hung.plan.layers]
        problems = (self._unreadable.get(layer.skin.texture_file) for layer in layers)
        told = dict.fromkeys(problem for problem in problems if problem)
        return tuple(f"Drawn without its texture: {problem}" for problem in told)

    def _image(self, picture: Picture, art: Rect, grid: Grid, under: str) -> ArtImage:
        box = placed(art, grid)

        def make() -> ArtImage:
            if picture.rows * picture.columns > _LARGE_PX:
                whole = self._pictures.get(
                    (picture, under),
                    lambda: _Whole(picture, working_picture(picture, under=under)),
                )
                shown = fitted(whole.linear, art)
                if shown.shape[0] >= box.rows and shown.shape[1] >= box.columns:
                    return ArtImage(picture, scaled(shown, box))
            return ArtImage(picture, placed_picture(picture, art, box, under=under))

        return self._images.get((picture, under, art, box), make)


def _encoded(pieces: list[Piece], box: Box) -> UInt8Array:
    """Return a block in 8-bit sRGB, put together a stretch of rows at a time."""
    srgb = np.empty((box.rows, box.columns, 3), np.uint8)

    def fill(first: int) -> None:
        part = box._replace(row_0=first, row_1=min(first + _STRETCH_ROWS, box.row_1))
        srgb_u8(lay(pieces, part), out=srgb[part.within(box)])

    firsts = range(box.row_0, box.row_1, _STRETCH_ROWS)
    for _ in shared_out(fill, firsts, ahead=len(firsts)):
        pass
    return srgb


def _changes(before: list[_Layer], after: list[_Layer]) -> list[Box]:
    """Return the blocks that some layer newly covers or no longer covers."""
    old = {layer.key: layer for layer in before}
    new = {layer.key: layer for layer in after}
    changed = [layer for key, layer in new.items() if key not in old]
    changed += [layer for key, layer in old.items() if key not in new]
    return list(dict.fromkeys(piece.box for layer in changed for piece in layer.pieces))


def _frozen(srgb: UInt8Array) -> UInt8Array:
    srgb.flags.writeable = False
    return srgb
