"""Easels: renderings that remember, so that a change redraws only what it touches."""

from collections import OrderedDict
from collections.abc import Hashable, Iterator
from dataclasses import dataclass, field
from threading import Lock
from typing import TypeVar

import numpy as np

from framing_palette.arrays import Float32Array, UInt8Array
from framing_palette.errors import CatalogueError
from framing_palette.picture import Picture
from framing_palette.preview.art import ArtImage, fitted, linear_picture, placed, scaled
from framing_palette.preview.encoding import clipped_pixels, srgb_u8
from framing_palette.preview.grids import Box, Grid, Hung
from framing_palette.preview.painting import Coat, Sight, Supplies, View, coats
from framing_palette.preview.pieces import Piece, lay, lay_onto
from framing_palette.preview.plans import Rect
from framing_palette.preview.skins import REFERENCE_LIGHT, Skin
from framing_palette.preview.surfaces import Surface, surface_of
from framing_palette.preview.texture_files import TextureImage, read_texture
from framing_palette.preview.tiling import Extent

MOST_BYTES = 160_000_000  # of drawn layers kept for a switch back

_Key = TypeVar("_Key", bound=Hashable)
_Value = TypeVar("_Value")


@dataclass(frozen=True, slots=True, eq=False)
class Show:
    """What is drawn: frames on a wall, and for each the pictures behind its windows in turn.

    ``under`` is the client's light, in which the pictures are seen as the frames are.
    """

    frames: tuple[Hung, ...]
    pictures: tuple[tuple[Picture, ...], ...]
    under: str = REFERENCE_LIGHT


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


@dataclass(slots=True)
class Easel:
    """Remembers drawn layers, textures and the picture between renderings.

    One easel serves one thread at a time; a second caller waits. Forgetting is safe at any time:
    what is missing is drawn again, and the result is the same to the last digit.
    """

    _textures: OrderedDict[str, TextureImage | str] = field(default_factory=OrderedDict)
    _surfaces: OrderedDict[Hashable, Surface] = field(default_factory=OrderedDict)
    _pictures: OrderedDict[Hashable, tuple[Picture, Float32Array]] = field(
        default_factory=OrderedDict
    )
    _images: OrderedDict[Hashable, ArtImage] = field(default_factory=OrderedDict)
    _layers: OrderedDict[Hashable, _Layer] = field(default_factory=OrderedDict)
    _last: tuple[View, list[_Layer], UInt8Array] | None = None
    _lock: Lock = field(default_factory=Lock)

    def draw(self, show: Show, view: View, sight: Sight) -> Drawn:
        """Return a block in 8-bit sRGB, redrawing what changed since the last time."""
        with self._lock:
            layers = [self._kept(coat) for coat in self._coats(show, view, sight)]
            self._forget_oldest(keep=len(layers))
            srgb = self._composed(layers, view)
            self._last = (view, layers, srgb)
            clipped = sum(layer.clipped for layer in layers)
            share = clipped / max(view.box.rows * view.box.columns, 1)
            return Drawn(srgb, share, self._unread(show))

    def draw_linear(self, show: Show, view: View, sight: Sight) -> Float32Array:
        """Return a block in linear sRGB, not clipped, shape (rows, columns, 3).

        Nothing of it is kept but textures and the picture, so that a large picture can be drawn
        block by block.
        """
        canvas = np.zeros((view.box.rows, view.box.columns, 3), np.float32)
        with self._lock:
            for coat in self._coats(show, view, sight):
                lay_onto(canvas, coat.draw(), view.box)
        return canvas

    def unread_textures(self, show: Show) -> tuple[str, ...]:
        """Return a sentence for each texture of the shown frames that could not be read."""
        with self._lock:
            return self._unread(show)

    def _coats(self, show: Show, view: View, sight: Sight) -> Iterator[Coat]:
        def surface(skin: Skin, extent: Extent) -> Surface:
            return self._surface(skin, view.grid.px_per_mm, extent)

        def image(place: int, window: int) -> ArtImage:
            pictures, hung = show.pictures[place], show.frames[place]
            art = hung.plan.arts[window]
            picture = pictures[window % len(pictures)]
            return self._image(picture, art, hung.on(view.grid), show.under)

        return coats(show.frames, view, sight, Supplies(surface, image))

    def _kept(self, coat: Coat) -> _Layer:
        if coat.key not in self._layers:
            pieces = tuple(coat.draw())
            clipped = sum(clipped_pixels(piece.linear) for piece in pieces)
            self._layers[coat.key] = _Layer(coat.key, pieces, clipped)
        self._layers.move_to_end(coat.key)
        return self._layers[coat.key]

    def _forget_oldest(self, keep: int) -> None:
        held = sum(layer.size_bytes for layer in self._layers.values())
        while held > MOST_BYTES and len(self._layers) > keep:
            held -= self._layers.popitem(last=False)[1].size_bytes

    def _composed(self, layers: list[_Layer], view: View) -> UInt8Array:
        pieces = [piece for layer in layers for piece in layer.pieces]
        if self._last is None or self._last[0] != view:
            return _frozen(srgb_u8(lay(pieces, view.box)))
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
        key = (skin, px_per_mm, extent)
        if key not in self._surfaces:
            self._surfaces[key] = surface_of(skin, self._texture(skin), px_per_mm, extent)
        return _recent(self._surfaces, key, most=16)

    def _texture(self, skin: Skin) -> TextureImage | None:
        """Return a skin's texture; one that cannot be read is remembered as its problem."""
        name = skin.texture_file
        if not name:
            return None
        if name not in self._textures:
            try:
                self._textures[name] = read_texture(name)
            except CatalogueError as error:
                self._textures[name] = str(error)
        found = _recent(self._textures, name, most=24)
        return None if isinstance(found, str) else found

    def _unread(self, show: Show) -> tuple[str, ...]:
        layers = [layer for hung in show.frames for layer in hung.plan.layers]
        problems = (self._textures.get(layer.skin.texture_file) for layer in layers)
        told = dict.fromkeys(problem for problem in problems if isinstance(problem, str))
        return tuple(f"Drawn without its texture: {problem}" for problem in told)

    def _image(self, picture: Picture, art: Rect, grid: Grid, under: str) -> ArtImage:
        box = placed(art, grid)
        key = (id(picture), under, art, box)
        if key not in self._images:
            whole = (id(picture), under)
            if whole not in self._pictures:
                self._pictures[whole] = (picture, linear_picture(picture, under=under))
            _, linear = _recent(self._pictures, whole, most=4)
            self._images[key] = ArtImage(picture, scaled(fitted(linear, art), box))
        return _recent(self._images, key, most=8)


def _recent(store: OrderedDict[_Key, _Value], key: _Key, *, most: int) -> _Value:
    """Return an entry as the newest one, and drop the oldest beyond a number."""
    store.move_to_end(key)
    while len(store) > most:
        store.popitem(last=False)
    return store[key]


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
