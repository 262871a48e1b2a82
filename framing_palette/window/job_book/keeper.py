"""The usual way to the shop's jobs; heavy, so it is made on one of the book's threads."""

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from framing_palette.jobs.keeper_files import Keeper


def usual_keeper() -> "Keeper":
    """Return the way to the jobs of this shop, wherever they are kept."""
    from framing_palette.jobs.keeper_files import Keeper
    from framing_palette.jobs.place_files import shop_place

    return Keeper(shop_place())
