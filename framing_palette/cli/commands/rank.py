"""``framing-palette rank``: the samples of a catalogue against a picture, best first."""

import argparse
from pathlib import Path
from typing import TYPE_CHECKING, Any

from framing_palette.cli.inputs import (
    KINDS,
    add_catalogue,
    add_json,
    add_picture,
    read_catalogue,
    read_length,
    read_picture,
)
from framing_palette.cli.printing import measures_in_words, print_json, progress, tell

if TYPE_CHECKING:
    from framing_palette.ranking import RankedSample, Rule

SUMMARY = "rank a catalogue against a picture, best first, with reasons"
EXPLANATION = """\
Read the picture, compare every sample of the catalogue with it, and list them best first under a
verdict: complement, blend or clash. A clash never stands above the other two.

example: framing-palette rank picture.jpg --regions regions.json --catalog catalog --kind mat"""


def add_arguments(parser: argparse.ArgumentParser) -> None:
    """Add the words of this command."""
    add_picture(parser)
    add_catalogue(parser)
    parser.add_argument(
        "--kind",
        action="append",
        choices=KINDS,
        help="only samples of this kind; may be given several times",
    )
    parser.add_argument("--top", type=int, metavar="N", help="only the best N (default: all)")
    parser.add_argument("--width", metavar="LENGTH", help="how wide the sample will be seen")
    parser.add_argument(
        "--explain", action="store_true", help="add to each line its measures and what decided"
    )
    parser.add_argument(
        "--taste",
        type=Path,
        metavar="FILE",
        help="rank by a shop's own taste, a file exported from the window; it moves samples within "
        "their verdict and changes no verdict",
    )
    add_json(parser)


def run(arguments: argparse.Namespace) -> None:
    """Rank and print.

    Raises
    ------
    FramingPaletteError
        When the picture, the regions, the catalogue or a length cannot be used.
    """
    from framing_palette.catalogue import Kind
    from framing_palette.errors import FieldError
    from framing_palette.picture import picture_report, regions_report
    from framing_palette.ranking import rank, rank_report

    if arguments.top is not None and arguments.top < 1:
        raise FieldError("--top", got=arguments.top, wanted="give 1 or more")
    width = read_length(arguments.width, field="--width")
    rule, told = _rule_of(arguments.taste)
    picture, findings = read_picture(arguments)
    catalogue = read_catalogue(arguments.catalog)
    kinds = tuple(Kind(kind) for kind in arguments.kind) if arguments.kind else None
    with progress("Ranking the samples"):
        ranked = rank(findings, catalogue, kinds=kinds, width=width, rule=rule)[: arguments.top]
    if arguments.json:
        seen = {"picture": picture_report(picture), "regions": regions_report(findings), **told}
        print_json(rank_report(seen, ranked))
    else:
        for place, line in enumerate(ranked, start=1):
            _print_line(place, line, explain=arguments.explain)


def _rule_of(path: Path | None) -> "tuple[Rule, dict[str, Any]]":
    """Return the rule to judge by, and what there is to say of it in the JSON.

    Raises
    ------
    TasteFileError
        When the file cannot be used.
    """
    from framing_palette.ranking import HOUSE_RULE, fit_taste, learned_report, read_taste_file

    if path is None:
        return HOUSE_RULE, {}
    found = read_taste_file(path)
    for fault in found.faults:
        tell(fault)
    learned = found.taste.learned or fit_taste(found.taste)
    tell(learned.words)
    return learned.rule, {"taste": learned_report(learned)}


def _print_line(place: int, line: "RankedSample", *, explain: bool) -> None:
    from framing_palette.ranking.explaining import decided_in_words

    sample = line.sample
    print(f"{place:4d}  {line.verdict.value:<10}  {line.score:.3f}  {sample.code}  {sample.name}")
    for reason in line.reasons:
        print(f"      {reason}")
    if explain:
        print(f"      {measures_in_words(line)}")
        print(f"      {decided_in_words(line)}")
