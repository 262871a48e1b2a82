"""Small catalogue folders, written for one test each."""

from pathlib import Path

from framing_palette.catalogue import CellProblem

SAMPLES = "code,name,kind,face_mm,thickness_mm\nA1,Chalk,mat,,1.4\nB2,Oak,moulding,25.4,22\n"
COLOURS = "code,share,L,a,b\nA1,1,95,0,3\nB2,0.7,60,8,22\nB2,0.3,45,9,18\n"


def write_folder(folder: Path, **tables: str | bytes) -> Path:
    """Write tables (samples=..., colours=...) as files of a new folder; the rest as in SAMPLES."""
    content: dict[str, str | bytes] = {"samples": SAMPLES, "colours": COLOURS, **tables}
    folder.mkdir(exist_ok=True)
    for name, text in content.items():
        data = text.encode() if isinstance(text, str) else text
        (folder / f"{name}.csv").write_bytes(data)
    return folder


def errors(problems: tuple[CellProblem, ...]) -> list[str]:
    """Return the sentences of the problems that left something out."""
    return [str(problem) for problem in problems if not problem.is_notice]


def notices(problems: tuple[CellProblem, ...]) -> list[str]:
    """Return the sentences of the remarks."""
    return [str(problem) for problem in problems if problem.is_notice]
