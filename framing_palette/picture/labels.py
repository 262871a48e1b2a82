"""The label of a written picture: its scale and the error of its colours, beside its pixels.

Like the label on the back of a frame it says what hangs here and how well it is known. The label
belongs to exactly these pixels and this profile: it holds their digest, and a picture that was
changed since is not what the label speaks of. What is read here comes from a file, so nothing in it
is believed before it is checked; a grade that its own figures do not bear out is refused.
"""

import hashlib
import json
from dataclasses import asdict, dataclass
from typing import Any, Final

import numpy as np
from numpy.typing import NDArray

from framing_palette.colour.charts import chart_names
from framing_palette.picture.pictures import ColourTrust, PatchError, Picture, TrustGrade
from framing_palette.picture.trust import grade_of

LABEL_SCHEMA: Final = "framing-palette/label@1"
MOST_LABEL_BYTES: Final = 65_536

_MOST_WORDS = 1_000
_MOST_NOTICES = 20
_LARGEST_DELTA_E = 200.0
_LARGEST_MM_PER_PX = 1_000.0
_ROUNDING = 1e-6
_METHODS: Final = ("chart", "grey", "profile", "assumed")


class LabelFault(ValueError):  # noqa: N818 - a fact for the reader to put into its sentence
    """A label cannot be used; the message says why, as the end of a sentence."""


@dataclass(frozen=True, slots=True)
class Label:
    """What a label says.

    Parameters
    ----------
    digest
        Of the pixels and the profile that it speaks of.
    mm_per_px
        Millimetres on the art per stored pixel; None when not known.
    colour_trust
        What is known about the error of the colours.
    notices
        Sentences that were told when the picture was taken in.
    """

    digest: str
    mm_per_px: float | None
    colour_trust: ColourTrust
    notices: tuple[str, ...] = ()


def digest_of(samples: NDArray[Any], profile: bytes) -> str:
    """Return the digest of stored samples and their profile, the same on every machine."""
    little = np.ascontiguousarray(samples.astype(samples.dtype.newbyteorder("<"), copy=False))
    digest = hashlib.blake2b(profile, digest_size=16)
    digest.update(repr((little.shape, little.dtype.str)).encode())
    digest.update(little.data)
    return digest.hexdigest()


def label_text(picture: Picture, digest: str) -> str:
    """Return a picture's label as JSON in plain ASCII."""
    label = Label(digest, picture.mm_per_px, picture.colour_trust, picture.notices[:_MOST_NOTICES])
    return json.dumps({"schema": LABEL_SCHEMA} | asdict(label), allow_nan=False)


def label_of(content: bytes, samples: NDArray[Any], profile: bytes) -> Label:
    """Return what a label says of the pixels that it lies with.

    Raises
    ------
    LabelFault
        When it cannot be used, or speaks of other pixels.
    """
    label = read_label(content)
    if label.digest != digest_of(samples, profile):
        raise LabelFault("speaks of other pixels, so the picture was changed since it was written")
    return label


def read_label(content: bytes) -> Label:
    """Return what a label says, after checking all of it but whose pixels it speaks of.

    Raises
    ------
    LabelFault
        When it is not of the form, or contradicts itself.
    """
    if len(content) > MOST_LABEL_BYTES:
        raise LabelFault(f"has more than {MOST_LABEL_BYTES:,} bytes")
    try:
        found = json.loads(content, parse_constant=_no_number)
    except (ValueError, RecursionError) as fault:
        raise LabelFault("is not JSON") from fault
    if not isinstance(found, dict) or found.get("schema") != LABEL_SCHEMA:
        raise LabelFault(f"is not of the form {LABEL_SCHEMA}")
    notices = found.get("notices", [])
    if not isinstance(notices, list) or len(notices) > _MOST_NOTICES:
        raise LabelFault("has notices that are no short list")
    return Label(
        digest=_words(found.get("digest"), "digest"),
        mm_per_px=_scale(found.get("mm_per_px")),
        colour_trust=_trust(found.get("colour_trust")),
        notices=tuple(_words(notice, "notices") for notice in notices),
    )


def _no_number(name: str) -> float:
    raise ValueError(name)


def _trust(found: object) -> ColourTrust:
    if not isinstance(found, dict):
        raise LabelFault("has no colour_trust")
    method, patches = found.get("method"), found.get("patches", [])
    if method not in _METHODS:
        raise LabelFault(f"has the unknown method {str(method)[:40]!r}")
    if not isinstance(patches, list) or len(patches) > len(chart_names()):
        raise LabelFault("has patches that are no list of a chart")
    errors = [
        _number(found.get(f"{name}_delta_e"), f"{name}_delta_e", 0.0, _LARGEST_DELTA_E)
        if method == "chart" or found.get(f"{name}_delta_e") is not None
        else None
        for name in ("mean", "p95", "max")
    ]
    trust = ColourTrust(
        method=method,
        grade=_grade(found.get("grade")),
        words=_words(found.get("words"), "words"),
        mean_delta_e=errors[0],
        p95_delta_e=errors[1],
        max_delta_e=errors[2],
        clipped_share=_number(found.get("clipped_share"), "clipped_share", 0.0, 1.0),
        patches=tuple(_patch(patch) for patch in patches),
    )
    _check_agreement(trust)
    return trust


def _check_agreement(trust: ColourTrust) -> None:
    """Refuse a grade, or a summary, that the label's own figures do not bear out."""
    mean, p95, largest = trust.mean_delta_e, trust.p95_delta_e, trust.max_delta_e
    if mean is None or p95 is None or largest is None:
        wanted = TrustGrade.FAMILIES if trust.method == "grey" else TrustGrade.UNKNOWN
        if trust.grade is not wanted or trust.patches or (mean, p95, largest) != (None,) * 3:
            raise LabelFault("claims more about its colours than a chart-less correction can know")
        return
    if trust.method != "chart" or not trust.patches:
        raise LabelFault("has an error of its colours without a chart that tells it")
    errors = np.array([patch.delta_e for patch in trust.patches])
    told = errors.mean(), np.percentile(errors, 95), errors.max()
    if not np.allclose((mean, p95, largest), told, atol=_ROUNDING):
        raise LabelFault("has a mean, p95 or max that are not those of its patches")
    if trust.grade is not grade_of(mean, p95):
        raise LabelFault(f"claims the grade {trust.grade.value}, which its figures do not bear out")


def _patch(found: object) -> PatchError:
    if not isinstance(found, dict) or found.get("name") not in chart_names():
        raise LabelFault("has a patch that the chart does not have")
    return PatchError(
        name=found["name"],
        measured_lab=_lab(found.get("measured_lab")),
        reference_lab=_lab(found.get("reference_lab")),
        delta_e=_number(found.get("delta_e"), "delta_e", 0.0, _LARGEST_DELTA_E),
    )


def _lab(found: object) -> tuple[float, float, float]:
    if not isinstance(found, list) or len(found) != 3:
        raise LabelFault("has a patch without three coordinates")
    lightness, a, b = (_number(value, "a coordinate", -500.0, 500.0) for value in found)
    return lightness, a, b


def _grade(found: object) -> TrustGrade:
    try:
        return TrustGrade(str(found))
    except ValueError as fault:
        raise LabelFault(f"has the unknown grade {str(found)[:40]!r}") from fault


def _scale(found: object) -> float | None:
    if found is None:
        return None
    scale = _number(found, "mm_per_px", 0.0, _LARGEST_MM_PER_PX)
    if scale == 0:
        raise LabelFault("has an mm_per_px of zero")
    return scale


def _number(found: object, field: str, least: float, most: float) -> float:
    is_number = isinstance(found, int | float) and not isinstance(found, bool)
    if not is_number or not least <= found <= most:  # type: ignore[operator]
        raise LabelFault(f"has {field} that is no number from {least:g} to {most:g}")
    return float(found)  # type: ignore[arg-type]


def _words(found: object, field: str) -> str:
    if not isinstance(found, str) or len(found) > _MOST_WORDS or not found.isprintable():
        raise LabelFault(f"has {field} that are no plain words")
    return found
