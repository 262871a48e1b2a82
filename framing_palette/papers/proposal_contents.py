"""What goes on the proposal, as plain frozen values; nothing private can be in them."""

from dataclasses import dataclass
from datetime import datetime

from framing_palette.arrays import UInt8Array
from framing_palette.papers.contents import Shop


@dataclass(frozen=True, slots=True)
class PublicPrice:
    """What the client may see of a price: lines of title, how it came about and amount."""

    lines: tuple[tuple[str, str, str], ...]
    total: str
    tax_words: str = ""


@dataclass(frozen=True, slots=True, eq=False)
class ProposalOption:
    """One design as it is shown to the client.

    Parameters
    ----------
    name
        What it is called.
    srgb
        The framed picture, shape (rows, columns, 3).
    reasons
        In plain words, the most telling first.
    parts
        What it is made of: the part, and what it is.
    outside
        The finished outside size, in words.
    price
        None when no price is to be shown.
    """

    name: str
    srgb: UInt8Array
    reasons: tuple[str, ...] = ()
    parts: tuple[tuple[str, str], ...] = ()
    outside: str = ""
    price: PublicPrice | None = None


@dataclass(frozen=True, slots=True, eq=False)
class ProposalContents:
    """Everything that the client reads.

    Parameters
    ----------
    options
        One to three, in the order in which they are shown.
    lead
        Position of the one that is shown large.
    is_agreed
        Whether the lead has been agreed on.
    art
        What is framed: the art with its size, or how many pieces, in words.
    care
        Sentences on care and conservation.
    validity
        How long it holds, in words.
    light
        The client's light that the pictures show the designs in, in words; empty for the light
        that samples are measured in.
    notices
        What had to be assumed for the pictures; for the designer, not printed.
    """

    number: str
    title: str
    client: str
    shop: Shop
    at: datetime
    options: tuple[ProposalOption, ...]
    lead: int = 0
    is_agreed: bool = False
    art: str = ""
    care: tuple[str, ...] = ()
    validity: str = ""
    light: str = ""
    notices: tuple[str, ...] = ()
