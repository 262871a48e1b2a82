"""Strings of the folders below the window that the phrasebook need not hold as they stand."""

NOT_SHOWN: dict[str, tuple[str, ...]] = {
    # the command line alone says what decided a verdict, part by part
    "ranking/explaining.py": (
        "{0}; merit {1} = {2}",
        "clash, by {0} (limit {1})",
        "(limit {0})",
        "blend, ΔE00 {0} to what it touches {1}",
        "relation {0} (limit {1})",
        "{0}, by {1}; worst fault {2} {3}",
        "rest {0}",
    ),
    # facts in sentences of errors that the design's folder raises
    "ranking/strips.py": ("face width", "showing it at scale"),
    # shapes of arrays, for developers
    "colour/difference.py": ("(n, 3)",),
    "picture/texture_comparison.py": ("texture rows",),
    # forms and names of files
    "picture/label_files.py": ("Framing Palette label",),
    "picture/regions_files.py": ('{"regions": [{0}]}',),
    "catalogue/cells.py": (r"[+-]?\d+,\d+( ?[a-z]+)?\Z",),
    "catalogue/column_files.py": ("columns 6",),
    "catalogue/conservation_rows.py": ("photographic activity", "iso 18916"),
    "catalogue/cxf.py": ("Framing Palette", "Framing samples"),
    "catalogue/exchange_files.py": (
        "Framing samples",
        "Framing Palette",
        "ILLUMINANT, D50; OBSERVER, 2 degree",
    ),
    "catalogue/folder_writing_files.py": (
        "Framing samples",
        "Framing samples; an empty cell is unknown.",
    ),
    "catalogue/library_schema.py": (
        "SELECT version_num FROM {0}",
        "SELECT value FROM library_facts WHERE name = 'version'",
        "BEGIN IMMEDIATE",
    ),
    "catalogue/library_tables.py": (
        "PRAGMA busy_timeout = {0}",
        "PRAGMA journal_mode = WAL",
        "PRAGMA synchronous = NORMAL",
    ),
    "catalogue/palette_text.py": ("GIMP Palette", "Name: {0}", "Columns: {0}"),
}
"""Strings with a blank that no window shows, module by module."""

NEVER_SHOWN_MODULES = (
    "catalogue/column_matching.py",  # how other people head their columns
    "catalogue/package_description.py",  # written into a catalogue folder's description
)

IN_OTHER_WORDS: dict[str, dict[str, tuple[str, ...]]] = {
    "ranking/differences.py": {
        "{0}{1} than {2}{3}.": ("Much lighter, warmer than X1.", "Cooler than X1."),
        "; {0} instead of {1}": ("Wider than X1; plain wood instead of leaf.",),
        "much {0}": tuple(
            f"much {w}" for w in ("lighter", "darker", "stronger", "quieter", "warmer", "cooler")
        ),
    },
    "ranking/look_differences.py": {
        "Without the {0} {1}.": tuple(
            f"Without the {kind} X1."
            for kind in ("mat", "wrapped fillet", "wood fillet", "liner", "moulding")
        ),
    },
    "ranking/nearest.py": {
        "{0} keeps {1} of the one you like{2}, {3}.": (
            "X1 keeps the spirit of the one you like, so that no hue is foreign to the picture.",
        ),
        " and is {0}": (
            (
                "X1 keeps the hue and the depth of the one you like and is darker and quieter, and it "
                "agrees with the whites of the picture."
            ),
        ),
        "{0} and {1}": ("the hue, the surface and the pattern",),
    },
    "ranking/reasons.py": {
        "A {0} version of": ("A lighter and quieter version of the red of the picture.",),
        "Near to": ("Near to the red accent.",),
        ", which is only {0} of the picture": (
            "Repeats the red accent, which is only less than 0.1 % of the picture.",
            "A darker version of the red accent, which is only 1 % of the picture.",
            "Near to the red accent, which is only 1 % of the picture.",
        ),
        "Its {0}, {1} of it, {2} {3}.": (
            "Its red, 30 % of it, repeats the blue of the picture's edge.",
            "Its red, 30 % of it, repeats the blue accent, which is only 1 % of the picture.",
        ),
        "is near to": (
            "Its red, 30 % of it, is near to the blue of the picture.",
            "Its red, 30 % of it, is near to the blue accent, which is only 1 % of the picture.",
            "All of it repeats the picture: its red is near to the blue accent.",
            (
                "All of it repeats the picture: its red is near to the blue accent, which is only 2 % "
                "of the picture."
            ),
        ),
        "is a {0} version of": (
            "Its red, 30 % of it, is a darker version of the blue of the picture.",
            (
                "Its red, 30 % of it, is a darker and quieter version of the blue accent, which is "
                "only 1 % of the picture."
            ),
            "All of it repeats the picture: its red is a lighter version of the blue accent.",
            (
                "All of it repeats the picture: its red is a lighter version of the blue accent, which "
                "is only 2 % of the picture."
            ),
        ),
        "All of it repeats the picture: its {0} {1} {2}.": (
            "All of it repeats the picture: its red repeats the blue accent.",
            (
                "All of it repeats the picture: its red repeats the blue accent, which is only 1 % of "
                "the picture."
            ),
        ),
        "Stands out from the picture {0} than {1} does.": (
            "Stands out from the picture more than the place where the eye seems to rest does.",
            "Stands out from the picture less than the picture does.",
        ),
    },
    "ranking/taste.py": {
        "From {0} on {1}": (
            "From 1 choice on 1 picture: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0} {1}s": (
            "From 40 choices on 8 pictures: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0}: foretells {1} of held-back ones, the house rule {2}.": (
            "From 40 choices on 8 pictures: foretells 60 % of held-back ones, the house rule 50 %.",
        ),
        "{0}: own weights foretell {1} of held-back ones, the house rule {2}; that may be chance, "
        "so the house rule stays in use.": (
            (
                "From 40 choices on 8 pictures: own weights foretell 60 % of held-back ones, the house "
                "rule 50 %; that may be chance, so the house rule stays in use."
            ),
        ),
    },
    "ranking/taste_effect.py": {
        "is held against a sample": (
            "The wrong white is held against a sample 20\u00a0% more.",
            "Drawing the eye is held against a sample 20\u00a0% less.",
            "Strong colour counts 20\u00a0% less.",
        ),
    },
    "ranking/taste_files.py": {
        "{0}, {1} It was left out.": (
            (
                "/x/a.json, choices, number 3, worse_codes is x; give two different looks. "
                "It was left out."
            ),
        ),
    },
    "picture/correction.py": {
        "glare or shadow": ("white 9.5 (glare or shadow)", "black 2 (clipped)"),
        "not even": ("the picked grey is not even", "the picked grey is black"),
    },
    "picture/evening.py": {
        "the plain sheet did not reach under all of the {0}": (
            "The plain sheet did not reach under all of the art.",
            "The plain sheet did not reach under all of the chart.",
        ),
    },
    "picture/pictures.py": {
        "the art's {0}": ("the art's width", "the art's height"),
        "The typed size is {0} {1} than the picture's proportions: check the size, and that the "
        "picture shows all of the art.": (
            (
                "The typed size is 5% wider than the picture's proportions: check the size, and that "
                "the picture shows all of the art."
            ),
            (
                "The typed size is 5% narrower than the picture's proportions: check the size, and "
                "that the picture shows all of the art."
            ),
        ),
    },
    "picture/regions_files.py": {
        " (line {0})": ("/x/a.json is not JSON (line 3): rename one of them.",),
        "is not JSON{0}": ("/x/a.json is not JSON: rename one of them.",),
    },
    "picture/scaling.py": {
        "The typed size is {0} {1} than the chart's own size says: measure the art again, and lay "
        "the chart level with it.": (
            (
                "The typed size is 5% larger than the chart's own size says: measure the art again, "
                "and lay the chart level with it."
            ),
            (
                "The typed size is 5% smaller than the chart's own size says: measure the art again, "
                "and lay the chart level with it."
            ),
        ),
    },
    "picture/texture_words.py": {
        "{0}{1} {2}, about {3} mm": ("faint middling mottle, about 2 mm", "fine grain, about 1 mm"),
        "level {0}": ("level weave", "level grain"),
        "upright {0}": ("upright weave", "upright grain"),
        "slanting {0}": ("slanting weave", "slanting grain"),
    },
    "picture/tiff_files.py": {"colour stored as YCbCr": ("colour stored as YCbCr",)},
    "catalogue/cells.py": {
        '"{0}" is not one of {1}{2}': ('"x1" is not one of mat, liner; this row is left out',),
    },
    "catalogue/conditions.py": {
        "holds {0} figures but does not tell their {1}": (
            "holds Lab figures but does not tell their illuminant",
            "holds XYZ figures but does not tell their observer",
        ),
    },
    "catalogue/folder_files.py": {
        " and no column ": ("has no column x1 and no column y1",),
        "the column is not known and is not read{0}": (
            (
                "samples.csv column fase_mm: the column is not known and is not read; is face_mm "
                "meant."
            ),
        ),
    },
    "catalogue/joining.py": {
        "{0}; it can be built with but not ranked": (
            (
                "samples.csv row 3, column code: X1 has no row in colours.csv; it can be built with "
                "but not ranked."
            ),
        ),
    },
    "catalogue/light.py": {},  # all of its sentences are made and told below
    "catalogue/matched_pairs.py": {
        "{0} and {1}: {2}.": (
            "X1 and the picture's red: matches here.",
            "X1 and X2: matches here and stays so in every light tried: ΔE00 0.4 at most.",
        ),
    },
    "catalogue/matched_table_files.py": {
        "{0} stands in row {1} already{2}": (
            "t.csv row 9, column code: X1 stands in row 3 already; this row is left out.",
        ),
        "{0}; {1}; the colours are left out": (
            (
                "t.csv column L: holds Lab figures for illuminant C; export reflectances, or figures "
                "for one of D50; the colours are left out."
            ),
        ),
    },
    "catalogue/measurements.py": {"A set": ("A set is left out: the code was measured before.",)},
    "catalogue/problems.py": {
        " row {0}": ("samples.csv row 3: the cell is empty.",),
        ", column {0}": ("samples.csv row 3, column a: the cell is empty.",),
        " column {0}": ("samples.csv column a: the cell is empty.",),
    },
    "catalogue/sample_rows.py": {
        "the kind is missing; write one of {0}{1}": (
            "the kind is missing; write one of mat, liner; this row is left out",
        ),
    },
    "catalogue/table_files.py": {
        "columns are separated by {0} instead of commas; read that way": (
            "columns are separated by semicolons instead of commas; read that way",
            "columns are separated by tabs instead of commas; read that way",
        ),
        "{0}; quote cells with commas": (
            (
                "samples.csv row 3: has 3 cells but the header names 5 columns; quote cells with "
                "commas."
            ),
        ),
    },
}
"""Patterns that stand in the phrasebook in other forms, each with what it can become."""
