"""Joining: what the tables of a folder say about one sample, put together."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from framing_palette.catalogue.figure_rows import FigureRows
from framing_palette.catalogue.palette_rows import colours_of, profile_of
from framing_palette.catalogue.problems import CellProblem, ProblemList
from framing_palette.catalogue.samples import ConservationFact, Sample
from framing_palette.catalogue.surfaces import MeasuredSurface, wear


@dataclass(frozen=True, slots=True)
class FactsBySample:
    """What the other tables of a folder say about the samples, by code.

    Parameters
    ----------
    colours
        L, a, b and share in the order of colours.csv; nan for a bad colour or an unknown share.
    spectra
        The place of the colour among the sample's colours, from 1, and its reflectance.
    points
        Order, x, height and row number in profiles.csv; nan for a bad point.
    claims
        Facts of conservation.csv.
    textures
        Names in the folder textures by their lower-case form.
    surfaces
        Measures of the textures by their lower-case name and scale.
    problems
        Where remarks are told.
    """

    colours: FigureRows
    spectra: FigureRows
    points: FigureRows
    claims: dict[str, list[ConservationFact]]
    textures: dict[str, str]
    surfaces: Mapping[tuple[str, float | None], MeasuredSurface]
    problems: ProblemList

    def complete(self, sample: Sample, number: int) -> Sample:
        """Return a sample with its colours, cross-section and texture.

        What it takes is taken out, so that a large folder is not in the memory twice.
        """
        code = sample.code
        spectra = {int(place): tuple(values) for place, *values in self.spectra.take(code)}
        colours, remark = colours_of(self.colours.take(code), spectra)
        if not colours:
            remark = f"{remark or 'has no row in colours.csv'}; it can be built with but not ranked"
        if remark:
            self._notice("samples.csv", number, "code", f"{code} {remark}")
        profile = None
        points = self.points.take(code)
        if points:
            profile, reason = profile_of(points)
            if reason:
                first = int(points[0][3])
                self.problems.add(CellProblem("profiles.csv", first, "x_mm", f"{code}: {reason}"))
        texture = self._texture(sample, number)
        whole = replace(
            sample,
            colours=colours,
            profile=profile,
            texture_file=texture,
            conservation_facts=tuple(self.claims.pop(code, ())),
        )
        surface = self.surfaces.get((texture.lower(), sample.texture_mm_per_px))
        return wear(whole, surface) if surface and texture else whole

    def _texture(self, sample: Sample, number: int) -> str:
        wanted = sample.texture_file or f"{sample.code}.png"
        found = self.textures.get(wanted.lower(), "")
        if found and found != wanted:
            reason = f"the picture is called {found}, not {wanted}; used all the same"
            self._notice("samples.csv", number, "texture", reason)
        if not found and sample.texture_file:
            reason = f"textures/{wanted} is not there; the surface stays unknown"
            self._notice("samples.csv", number, "texture", reason)
        return found

    def _notice(self, file: str, row: int, column: str, reason: str) -> None:
        self.problems.add(CellProblem(file, row, column, reason, is_notice=True))
