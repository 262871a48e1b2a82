"""A new season's catalogue against one job: what is gone, what clashes now, what suits best now."""

from collections.abc import Collection
from dataclasses import dataclass

from framing_palette.catalogue import Catalogue, Kind
from framing_palette.jobs.job_lines import samples_used
from framing_palette.jobs.jobs import Job
from framing_palette.picture import Picture, read_findings
from framing_palette.ranking import Ranking, Verdict, columns_of, ranking

NOBODYS: frozenset[str] = frozenset()


@dataclass(frozen=True, slots=True)
class SeasonSample:
    """A sample of the new catalogue that suits a job; ``is_new`` if it was not there before."""

    code: str
    kind: Kind
    verdict: Verdict
    score: float
    is_new: bool = False


@dataclass(frozen=True, slots=True)
class SeasonLine:
    """What a new season means for one job.

    Parameters
    ----------
    number
        The job's.
    gone
        Codes that the job uses and the new catalogue lacks, sorted.
    clashing
        Codes that the job uses and that clash with its picture in the new catalogue's colours,
        sorted.
    best
        The best of each kind that the job asks for, kind by kind, best first.
    problem
        Why the job could not be looked at; empty when it could.
    """

    number: str
    gone: tuple[str, ...] = ()
    clashing: tuple[str, ...] = ()
    best: tuple[SeasonSample, ...] = ()
    problem: str = ""


def season_line(
    job: Job,
    picture: Picture,
    catalogue: Catalogue,
    *,
    top: int = 5,
    before: Collection[str] = NOBODYS,
) -> SeasonLine:
    """Return what a new catalogue means for a job.

    Parameters
    ----------
    job, picture
        The job and its picture, taken in as the job says.
    catalogue
        The new one.
    top
        How many of each kind.
    before
        Codes of the old catalogue; what is not among them is new. Empty when nobody asks.
    """
    if job.art_size is not None:
        picture = picture.with_true_size(*job.art_size)
    findings = read_findings(picture, job.regions)
    columns = columns_of(catalogue)
    used = samples_used(job)
    there = sorted(code for code in used if code in catalogue)
    whole = ranking(findings, columns)
    best = [
        _best(whole if kinds is None else ranking(findings, columns, kinds=kinds), top, before)
        for kinds in _kinds_of(job)
    ]
    return SeasonLine(
        number=job.number,
        gone=tuple(sorted(used - set(there))),
        clashing=tuple(code for code in there if _verdict(whole, code) is Verdict.CLASH),
        best=tuple(sample for group in best for sample in group),
    )


def _kinds_of(job: Job) -> tuple[tuple[Kind, ...] | None, ...]:
    """Return the kinds of the job's designs one by one, or all kinds together without a design."""
    kinds: dict[Kind, None] = {}
    for option in job.options:
        kinds |= dict.fromkeys(layer.kind for layer in option.design.layers)
        if option.design.moulding is not None:
            kinds[Kind.MOULDING] = None
    return tuple((kind,) for kind in kinds) or (None,)


def _best(ranked: Ranking, top: int, before: Collection[str]) -> tuple[SeasonSample, ...]:
    return tuple(
        SeasonSample(
            code=line.sample.code,
            kind=line.sample.kind,
            verdict=line.verdict,
            score=line.score,
            is_new=bool(before) and line.sample.code not in before,
        )
        for line in ranked[:top]
    )


def _verdict(ranked: Ranking, code: str) -> Verdict:
    return ranked.judgement.verdict(ranked.row(code))
