"""Say what colour it is, how different, how harmonious, and under which light.

Colours are CIELAB, D50, 2 degree observer, arrays of shape (..., 3); screen values (sRGB) and
reflectance spectra (380 to 730 nm by 10) enter and leave at the edge. Everything here is a pure
function of arrays. `difference` is the one CIEDE2000 of the whole program; `spaces` and `spectra`
convert; `hue`, `harmony`, `emotion` and `names` say what a colour is like; `metamerism` says
whether a match survives another light. Imports only `arrays` and `errors`; every folder from
`picture` on may import it.
"""

from framing_palette.colour.adaptation import WHITE_D50_XYZ, WHITE_D65_XYZ, adapt
from framing_palette.colour.difference import delta_e_2000, delta_e_2000_matrix
from framing_palette.colour.emotion import activity, heat, weight
from framing_palette.colour.harmony import harmony
from framing_palette.colour.hue import chroma, hue_deg, metric_hue_difference
from framing_palette.colour.metamerism import metamerism_index
from framing_palette.colour.names import iscc_nbs_names, plain_name, plain_names
from framing_palette.colour.spaces import (
    lab_d50_to_linear_srgb,
    lab_d50_to_srgb,
    lab_d50_to_srgb_u8,
    lab_d50_to_xyz_d50,
    linear_srgb_to_lab_d50,
    linear_to_srgb,
    srgb_gamut_excess,
    srgb_to_lab_d50,
    srgb_to_linear,
    srgb_u8_to_lab_d50,
    xyz_d50_to_lab_d50,
)
from framing_palette.colour.spectra import (
    ILLUMINANTS,
    WAVELENGTHS_NM,
    spectrum_to_lab_d50,
    spectrum_to_xyz,
    white_under,
)
from framing_palette.colour.uncertainty import drawn_colours

__all__ = [
    "ILLUMINANTS",
    "WAVELENGTHS_NM",
    "WHITE_D50_XYZ",
    "WHITE_D65_XYZ",
    "activity",
    "adapt",
    "chroma",
    "delta_e_2000",
    "delta_e_2000_matrix",
    "drawn_colours",
    "harmony",
    "heat",
    "hue_deg",
    "iscc_nbs_names",
    "lab_d50_to_linear_srgb",
    "lab_d50_to_srgb",
    "lab_d50_to_srgb_u8",
    "lab_d50_to_xyz_d50",
    "linear_srgb_to_lab_d50",
    "linear_to_srgb",
    "metamerism_index",
    "metric_hue_difference",
    "plain_name",
    "plain_names",
    "spectrum_to_lab_d50",
    "spectrum_to_xyz",
    "srgb_gamut_excess",
    "srgb_to_lab_d50",
    "srgb_to_linear",
    "srgb_u8_to_lab_d50",
    "weight",
    "white_under",
    "xyz_d50_to_lab_d50",
]
