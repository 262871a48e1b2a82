"""From a job to the desk and back: how things lie there is kept with the job."""

from dataclasses import replace

from framing_palette.catalogue import Catalogue
from framing_palette.jobs import DeskState, Job, OnRail
from framing_palette.window.desk import MOST_KEPT, Desk


def desk_of(job: Job, rack: Catalogue) -> Desk:
    """Return the desk as a job was left; what the rack does not have stays with the job unseen."""
    left = job.desk
    if left == DeskState():  # of a job that was never on a desk: what was kept and agreed
        agreed = job.agreed
        left = DeskState(
            laid=agreed.design.codes if agreed else (),
            rail=tuple(OnRail((code,)) for code in job.kept),
        )
    kept = [
        replace(thing, title=thing.title or rack[thing.codes[0]].name)
        for thing in left.rail
        if _is_seen(thing, rack)
    ]
    return Desk(
        job=job,
        regions=job.regions,
        laid=tuple(code for code in left.laid if code in rack),
        strips=tuple(strip for strip in left.strips if strip.code in rack),
        kept=tuple(kept[:MOST_KEPT]),
        set_aside=left.away,
    )


def job_of(desk: Desk, rack: Catalogue) -> Job | None:
    """Return the job with everything as it lies on the desk; None when the desk is empty."""
    job = desk.job
    if job is None:
        return None
    unseen = tuple(thing for thing in job.desk.rail if not _is_seen(thing, rack))
    unseen += tuple(
        OnRail((code,)) for code in job.kept if code not in rack and OnRail((code,)) not in unseen
    )
    rail = (*desk.kept, *unseen)
    return replace(
        job,
        regions=desk.regions,
        kept=tuple(thing.codes[0] for thing in rail if len(thing.codes) == 1),
        desk=DeskState(laid=desk.laid, strips=desk.strips, rail=rail, away=desk.set_aside),
    )


def _is_seen(thing: OnRail, rack: Catalogue) -> bool:
    return bool(thing.codes) and all(code in rack for code in thing.codes)
