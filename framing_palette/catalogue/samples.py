"""Samples: one catalogue item each, with its colours, surface, cross-section and price."""

from abc import abstractmethod
from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date
from decimal import Decimal
from difflib import get_close_matches
from enum import StrEnum
from functools import cached_property

from framing_palette.errors import UnknownSampleError
from framing_palette.picture import Texture
from framing_palette.units import Length

Lab = tuple[float, float, float]


class Kind(StrEnum):
    """What a sample is."""

    MAT = "mat"
    WRAPPED_FILLET = "wrapped_fillet"  # a board strip with a wide bevel, covered
    WOOD_FILLET = "wood_fillet"
    LINER = "liner"
    MOULDING = "moulding"


class Surface(StrEnum):
    """The look of the surface, by what it is made of."""

    SMOOTH = "smooth"
    LINEN = "linen"
    SUEDE = "suede"
    SILK = "silk"
    MOTTLED = "mottled"
    LEAF = "leaf"
    BRUSHED_METAL = "brushed_metal"
    PLAIN_WOOD = "plain_wood"
    DISTRESSED_WOOD = "distressed_wood"


class Finish(StrEnum):
    """How the surface returns light."""

    MATT = "matt"
    SATIN = "satin"
    GLOSS = "gloss"
    METALLIC = "metallic"


class PriceBasis(StrEnum):
    """What one price buys."""

    SHEET = "sheet"
    METRE = "metre"
    FOOT = "foot"
    STICK = "stick"
    PIECE = "piece"


class ClaimScope(StrEnum):
    """What a claim about a sample holds for."""

    COLOUR = "colour"  # this colour, as tested
    RANGE = "range"  # every colour of the range, by the maker's word
    FACING = "facing"
    CORE = "core"


@dataclass(frozen=True, slots=True)
class ConservationFact:
    """A claim about a sample's safety for art: what, for what, since when, by whom."""

    claim: str
    scope: ClaimScope | None = None
    when: date | None = None
    source: str = ""


@dataclass(frozen=True, slots=True)
class SampleColour:
    """One colour of a sample: Lab D50, share 0..1, and its reflectance (36 values) if known."""

    lab: Lab
    share: float
    spectrum: tuple[float, ...] | None = None


@dataclass(frozen=True, slots=True)
class Profile:
    """The front surface across the face, a polyline of (x, height) in millimetres.

    x runs from the sight edge (0) outward to the face's width; height is measured from the back
    plane (mouldings: the wall side; fillets: what they lie on).
    """

    points: tuple[tuple[float, float], ...]


@dataclass(frozen=True, slots=True)
class Sample:
    """One catalogue item; None means unknown.

    Parameters
    ----------
    code, name, kind
        The shop's code, a plain name, and what it is.
    colours
        Largest share first, shares summing to one.
    face
        Width seen from the front (mouldings, fillets, liners).
    thickness, bevel
        Board or strip thickness; width of the bevel in plan (a 45 degree bevel shows the
        thickness when None).
    rabbet_width, rabbet_depth
        The moulding's or liner's step that holds the stack.
    stick, sheet_w, sheet_h
        What is bought: the length of a stick, the size of a sheet.
    surface, finish, material
        How it looks, how it returns light, what it is made of.
    density_kg_m3
        Mass per volume.
    texture_file, texture_mm_per_px
        The photographed surface in the catalogue's textures folder, and its scale.
    texture
        Its measured descriptor, when measured.
    price, price_per
        In the shop's currency.
    in_stock
        None when not told.
    profile
        Cross-section of the front.
    join
        "mitre" or "butt", for fillets.
    conservation, collection, tags
        The maker's facts in words, the family, the shop's own tags.
    conservation_facts
        The same facts one by one, each with its scope and date.
    colour_origin
        Where the colours come from, in words, when that is not plain: what was stated of figures
        that told no light, or how far a photograph's may be off.
    """

    code: str
    name: str
    kind: Kind
    colours: tuple[SampleColour, ...]
    face: Length | None = None
    thickness: Length | None = None
    bevel: Length | None = None
    rabbet_width: Length | None = None
    rabbet_depth: Length | None = None
    stick: Length | None = None
    sheet_w: Length | None = None
    sheet_h: Length | None = None
    surface: Surface | None = None
    finish: Finish | None = None
    material: str = ""
    density_kg_m3: float | None = None
    texture_file: str = ""
    texture_mm_per_px: float | None = None
    texture: Texture | None = None
    price: Decimal | None = None
    price_per: PriceBasis | None = None
    in_stock: bool | None = None
    profile: Profile | None = None
    join: str = ""
    conservation: str = ""
    collection: str = ""
    tags: tuple[str, ...] = ()
    conservation_facts: tuple[ConservationFact, ...] = ()
    colour_origin: str = ""

    @property
    def mean_lab(self) -> Lab:
        """Mean of the colours weighted by share, Lab D50."""
        total = sum(colour.share for colour in self.colours) or 1.0
        sums = [
            sum(colour.lab[axis] * colour.share for colour in self.colours) / total
            for axis in range(3)
        ]
        return (sums[0], sums[1], sums[2])


class SampleSequence(Sequence[Sample]):
    """Samples that know their codes without being made one by one."""

    @property
    @abstractmethod
    def codes(self) -> Sequence[str]:
        """All codes in order."""


@dataclass(frozen=True)
class Catalogue:
    """Samples in the order of their file, found by code.

    ``samples`` is a tuple, or for a large catalogue a sequence that makes each sample when it is
    looked at: go through it once, or take what is needed by place or code.

    ``textures_dir`` is the folder that ``Sample.texture_file`` is relative to, as text; empty when
    the catalogue has no textures.
    """

    samples: Sequence[Sample]
    textures_dir: str = ""
    name: str = field(default="")

    @cached_property
    def _place_of(self) -> dict[str, int]:
        if isinstance(self.samples, SampleSequence):
            codes = self.samples.codes
        else:
            codes = [sample.code for sample in self.samples]
        return {code: place for place, code in enumerate(codes)}

    def __getitem__(self, code: str) -> Sample:
        """Return the sample of that code.

        Raises
        ------
        UnknownSampleError
            When there is none; the message names the nearest codes.
        """
        try:
            return self.samples[self._place_of[code]]
        except KeyError:
            near = get_close_matches(code, self._place_of, n=3)
            raise UnknownSampleError(code, near=near) from None

    def __contains__(self, code: object) -> bool:
        """Tell whether a code is in the catalogue."""
        return code in self._place_of

    def __len__(self) -> int:
        """Return the number of samples."""
        return len(self.samples)

    def of_kind(self, *kinds: Kind) -> tuple[Sample, ...]:
        """Return the samples of the given kinds in order."""
        return tuple(sample for sample in self.samples if sample.kind in kinds)
