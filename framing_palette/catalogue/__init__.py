"""What can I use?

A shop's samples flow in from a catalogue folder, an instrument's export, a spreadsheet or a
photographed swatch; frozen :class:`Sample` values flow out, and, for a whole catalogue at once,
arrays that the ranking reads. Empty means unknown, and whoever needs an unknown says so. Files are
touched only in ``*_files`` modules and ``store``. ``ranking`` and everything after it may import
this folder.
"""

from framing_palette.catalogue.catalogue_files import read_catalogue_folder
from framing_palette.catalogue.column_files import open_catalogue_folder
from framing_palette.catalogue.conditions import Conditions
from framing_palette.catalogue.exchange_files import (
    export_catalogue,
    read_measurement_file,
    samples_from_file,
    write_cgats_file,
    write_cxf_file,
    write_palette_file,
)
from framing_palette.catalogue.folder_writing_files import write_catalogue_folder
from framing_palette.catalogue.light import (
    HOME_LIGHTS,
    LIGHT_WORDS,
    Drift,
    MatchUnderLights,
    colour_under,
    compare_under_lights,
    is_estimated,
    lab_under,
    nearest_colour,
    sample_under,
)
from framing_palette.catalogue.merging import merged_samples
from framing_palette.catalogue.problems import CellProblem
from framing_palette.catalogue.samples import (
    Catalogue,
    ClaimScope,
    ConservationFact,
    Finish,
    Kind,
    PriceBasis,
    Profile,
    Sample,
    SampleColour,
    Surface,
)
from framing_palette.catalogue.swatch import (
    Swatch,
    guess_surface,
    measure_swatch,
    swatch_report,
)

__all__ = [
    "HOME_LIGHTS",
    "LIGHT_WORDS",
    "Catalogue",
    "CellProblem",
    "ClaimScope",
    "Conditions",
    "ConservationFact",
    "Drift",
    "Finish",
    "Kind",
    "MatchUnderLights",
    "PriceBasis",
    "Profile",
    "Sample",
    "SampleColour",
    "Surface",
    "Swatch",
    "colour_under",
    "compare_under_lights",
    "export_catalogue",
    "guess_surface",
    "is_estimated",
    "lab_under",
    "measure_swatch",
    "merged_samples",
    "nearest_colour",
    "open_catalogue_folder",
    "read_catalogue_folder",
    "read_measurement_file",
    "sample_under",
    "samples_from_file",
    "swatch_report",
    "write_catalogue_folder",
    "write_cgats_file",
    "write_cxf_file",
    "write_palette_file",
]
