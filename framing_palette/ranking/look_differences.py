"""Look differences: how two looks differ, a single sample or a whole design, in words."""

from collections.abc import Sequence

from framing_palette.catalogue import Kind, Sample
from framing_palette.ranking.differences import difference_words

KIND_WORDS = {
    Kind.MAT: "mat",
    Kind.WRAPPED_FILLET: "wrapped fillet",
    Kind.WOOD_FILLET: "wood fillet",
    Kind.LINER: "liner",
    Kind.MOULDING: "moulding",
}


def look_difference_words(look: Sequence[Sample], other: Sequence[Sample]) -> tuple[str, ...]:
    """Return how a look differs from another one, a sentence for each thing that does.

    Parts of one kind are compared in their order from the art outward.

    Parameters
    ----------
    look
        What the sentences are about, from the art outward.
    other
        What it is compared with.
    """
    if len(look) == len(other) == 1:
        return (difference_words(look[0], other[0]),)
    told: list[str] = []
    for kind in Kind:
        mine = [sample for sample in look if sample.kind is kind]
        theirs = [sample for sample in other if sample.kind is kind]
        named = KIND_WORDS[kind]
        for here, there in zip(mine, theirs, strict=False):
            if here.code != there.code:
                told.append(
                    f"{named[0].upper()}{named[1:]}: {_lower(difference_words(here, there))}"
                )
        told += [f"With {sample.name} as {named}." for sample in mine[len(theirs) :]]
        told += [f"Without the {named} {sample.name}." for sample in theirs[len(mine) :]]
    return tuple(told) or ("The same samples.",)


def _lower(sentence: str) -> str:
    return sentence[0].lower() + sentence[1:]
