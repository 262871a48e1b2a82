"""Make the invented catalogue again: `python catalog/generate.py`, or `--measure` its textures.

Needs numpy, scipy, pillow and colour-science. The same tables give the same files; nothing here is
read by the program itself.
"""

import csv
import sys
from pathlib import Path

import numpy as np
from PIL import Image

sys.path.insert(0, str(Path(__file__).parent))
sys.path.insert(0, str(Path(__file__).parent.parent))

from generator import package, painting, profiles, rows, spectra, tiles

from framing_palette.catalogue.catalogue_files import read_catalogue_folder
from framing_palette.catalogue.conservation_rows import CONSERVATION_COLUMNS
from framing_palette.catalogue.sample_rows import SAMPLE_COLUMNS
from framing_palette.catalogue.surface_files import measure_surfaces, write_surface_table

HERE = Path(__file__).parent


def write_csv(name: str, header: tuple[str, ...], lines: list[list[object]]) -> None:
    """One table, comma separated, UTF-8, lines ended by a newline."""
    with (HERE / name).open("w", encoding="utf-8", newline="") as file:
        writer = csv.writer(file, lineterminator="\n")
        writer.writerow(header)
        writer.writerows(lines)


def write_tile(name: str, tile: painting.Bytes) -> None:
    """One picture, packed as small as PNG allows."""
    Image.fromarray(tile).save(HERE / "textures" / name, optimize=True)


def colours_and_texture(
    line: rows.Line, face_mm: float
) -> tuple[list[tuple[float, np.ndarray]], str, float]:
    """Shares with Lab, texture name and scale of a sample; draws its own picture if it has one."""
    if len(line.colours) == 1:
        lab = painting.within_gamut(painting.lch_to_lab(np.array(line.colours[0][:3])))
        name = tiles.relief_name(line)
        return [(1.0, lab)], f"{name}.png", tiles.RELIEF_TILES[name].mm_per_px
    tile = tiles.draw_own(line)
    write_tile(f"{line.code}.png", tile)
    seeds = painting.lch_to_lab(np.array([colour[:3] for colour in line.colours]))
    centres, shares = painting.measured_palette(tile, seeds)
    found = sorted(zip(shares, centres, strict=True), key=lambda pair: -pair[0])
    return (
        [(share, lab) for share, lab in found if share > 0],
        "",
        tiles.own_mm_per_px(line, face_mm),
    )


def front(line: rows.Line, row: dict[str, object]) -> profiles.Points:
    """The cross-section of a sample; also fills in the rabbet of a moulding."""
    if line.kind == "wrapped_fillet":
        return profiles.wrapped_fillet(
            *(float(row[k]) for k in ("face_mm", "thickness_mm", "bevel_mm"))
        )
    if line.kind == "wood_fillet":
        return profiles.wood_fillet(line, float(row["face_mm"]), float(row["thickness_mm"]))
    points = profiles.moulding(line)
    row["thickness_mm"] = max(height for _, height in points)
    row["rabbet_width_mm"], row["rabbet_depth_mm"] = profiles.rabbet(line, points)
    return points


def whole_shares(shares: list[float]) -> list[float]:
    """Shares to three decimals that add up to exactly 1."""
    rounded = [round(share, 3) for share in shares]
    rounded[0] = round(rounded[0] + 1 - sum(rounded), 3)
    return rounded


def measure() -> None:
    """Measure the texture pictures that lie in the folder."""
    catalogue, problems = read_catalogue_folder(HERE)
    surfaces, unmeasured = measure_surfaces(catalogue)
    write_surface_table(HERE / "textures.csv", surfaces)
    for problem in (*problems, *unmeasured):
        print(problem, file=sys.stderr)


def main() -> None:
    """Draw everything and write the folder."""
    (HERE / "textures").mkdir(exist_ok=True)
    for old in (HERE / "textures").glob("*.png"):
        old.unlink()
    observer = spectra.observer_matrix()
    samples, colours, reflectances, sections, claims = [], [], [], [], []
    for line in rows.read_lines():
        row = dict(rows.sample_row(line))
        parts, row["texture"], row["texture_mm_per_px"] = colours_and_texture(
            line, float(row.get("face_mm", 0))
        )
        shares = whole_shares([float(share) for share, _ in parts])
        for number, (share, (_, lab)) in enumerate(zip(shares, parts, strict=True), 1):
            kept = np.round(lab, 2)
            colours.append([line.code, f"{share:.3f}", *(f"{v:.2f}" for v in kept)])
            curve = spectra.reflectance(kept, line.code, observer)
            reflectances.append([line.code, number, *(f"{v:.4f}" for v in curve)])
        if line.kind != "mat":
            points = front(line, row)
            sections += [[line.code, i, f"{x:g}", f"{h:g}"] for i, (x, h) in enumerate(points, 1)]
        claims += [[line.code, *claim] for claim in rows.claims(line)]
        samples.append([package.cell(row.get(name, "")) for name in SAMPLE_COLUMNS])
    for name in tiles.RELIEF_TILES:
        write_tile(f"{name}.png", tiles.draw_relief(name))
    write_csv("samples.csv", SAMPLE_COLUMNS, samples)
    write_csv("colours.csv", ("code", "share", "L", "a", "b"), colours)
    nanometres = tuple(f"nm{nm}" for nm in spectra.WAVELENGTHS_NM)
    write_csv("spectra.csv", ("code", "colour", *nanometres), reflectances)
    write_csv("profiles.csv", ("code", "order", "x_mm", "height_mm"), sections)
    write_csv("conservation.csv", CONSERVATION_COLUMNS, claims)
    package.write(HERE / "datapackage.json")
    measure()
    total = sum(path.stat().st_size for path in (HERE / "textures").glob("*.png"))
    print(
        f"{len(samples)} samples, {len(colours)} colours, textures {total / 1e6:.2f} MB",
        file=sys.stderr,
    )


if __name__ == "__main__":
    measure() if "--measure" in sys.argv else main()
