"""How the invented catalogue is made: tables of names and colours, and drawn surfaces.

`tables/` holds one line a sample, written by hand.  `rows` turns the lines into samples with
sizes and prices, `profiles` into cross-sections, `spectra` into reflectances, and the surface
modules (`weaves`, `naps`, `mottles`, `woods`, `gilding`, `metals`) into seamless tiles.
Every random step is seeded by the code of the sample, so that a run gives the same files again.
"""
