"""Strings of designs, jobs, previews, papers and measures that are in no phrasebook as they stand."""

# Printed papers stay English, and so do the log, files for other programs and reports of problems.
NEVER_SHOWN_MODULES = (
    "design/design_writing.py",
    "design/price_book_notes.py",
    "jobs/anonymous.py",
    "jobs/handing_over_ticket.py",
    "jobs/log_files.py",
    "jobs/problem_files.py",
    "jobs/store_schema.py",
    "papers/assembly.py",
    "papers/care.py",
    "papers/cutting_plan.py",
    "papers/drawing_set.py",
    "papers/drawing_svg.py",
    "papers/paper_pdf.py",
    "papers/proposal.py",
    "papers/proposal_parts.py",
    "papers/setting.py",
    "papers/sheet_drawing.py",
    "papers/stick_drawing.py",
    "papers/ticket.py",
    "papers/ticket_facts.py",
    "papers/ticket_parts.py",
    "preview/preview_files.py",
    "units/length_text.py",
)

# Names of woods, settings of a database, patterns, lines of printed papers, the example shop.
NOT_SHOWN: dict[str, tuple[str, ...]] = {
    "design/densities.py": (
        "red alder",
        "white ash",
        "red oak",
        "white oak",
    ),
    "design/price_book_files.py": (
        "{ up_to = {0}, rate = {1} }",
        "breaks = [{0}]",
    ),
    "design/toml_files.py": ("Value error, ",),
    "jobs/backup_files.py": ("PRAGMA journal_mode = DELETE",),
    "jobs/database_files.py": (
        "busy_timeout = {0}",
        "synchronous = FULL",
        "foreign_keys = ON",
        "secure_delete = ON",
        "PRAGMA integrity_check(1)",
        "PRAGMA foreign_key_check",
        "PRAGMA {0}",
        "PRAGMA journal_mode = WAL",
        "BEGIN IMMEDIATE",
    ),
    "jobs/handing_over.py": (
        "The Corner Framer",
        "1 Example Street, Anytown",
    ),
    "jobs/personal_files.py": (
        "foreign_keys = ON",
        "secure_delete = ON",
        "synchronous = FULL",
        "PRAGMA {0}",
        "DELETE FROM jobs WHERE client_key = ?",
    ),
    "jobs/restoring_files.py": ("SELECT version, document FROM jobs ORDER BY rowid {0}",),
    "jobs/store.py": ("PRAGMA wal_checkpoint(TRUNCATE)",),
    "papers/contents.py": (
        "1/{0} in",
        "0.1 mm",
        "0.01 cm",
        "Lengths in {0}; ≈ means rounded to the nearest {1}, all others are exact.",
        "One of {0} pieces was measured for all: measure each of the other {1} twice before anything is cut.",
    ),
    "papers/vocabulary.py": ("(>=|<=) ?(-?\\d+(?:\\.\\d+)?)",),
}

# What these parts become once they are put together stands in the phrasebook.
PUT_TOGETHER: dict[str, tuple[str, ...]] = {
    "design/cautions.py": (
        "{0} is usual",
        "Only {0} of the art is held on each side; {1}.",
        "up to {0} is usual",
        "{0} of the art is hidden on each side; {1}.",
    ),
    "design/day_plans.py": (
        "{0} has no known {1}: its pieces are not planned.",
        "{0}, opening {1}, {2} strip",
        "{0}, {1} rail",
    ),
    "design/depth.py": (
        "{0}, liner",
        "{0}, liner's lip",
    ),
    "design/depth_words.py": (
        "{0}: the stack stands out of the rabbet by {1}.",
        "{0}: {1} is to stay free behind the stack.",
    ),
    "design/figures.py": ("{0} x {1}",),
    "design/found_designs.py": ("{0} has no {1}, so the depth is not fully checked.",),
    "design/frames.py": (
        "outer {0}",
        "{0} rail",
    ),
    "design/holds.py": ("layer {0} rabbet_width",),
    "design/measuring.py": (
        "{0} measurement, width",
        "{0} measurement, height",
        " of {0}",
        "Both measurements{0} name the same hand and time: let the second be independent.",
        "{0} diagonal{1}",
    ),
    "design/order.py": (
        "layer {0} kind",
        "it must be less than half the art's {0}, {1}",
    ),
    "design/price.py": (
        "{0} at {1}",
        "{0}, at least {1}",
        "{0} each",
        "{0} a {1}",
        "{0} x",
        "{0} an hour",
        "{0} a {1} times {2}",
        "{0} m",
        "{0} ft",
        "catalogue price",
        "{0} x {1}",
        " and {0} % waste",
    ),
    "design/sample_parts.py": ("a {0}",),
    "design/stacks.py": (
        "reveal of layer {0}",
        "liner rabbet width",
        "opening of layer {0}",
    ),
    "design/table_reading.py": (
        "holds {0}",
        "holds its code",
        "write it, or name the catalogue that {0}",
    ),
    "jobs/health.py": ("{0}; {1} after it are not",),
    "jobs/measured.py": (
        "Measurement {0} of 2{1} taken by {2}.",
        " of {0}",
    ),
    "preview/planning.py": ("Layer {0}",),
    "preview/skins.py": (
        "{0} has no measured reflectance, so its colour under ",
        "{0}{1} is an estimate.",
    ),
    "papers/cut_list.py": (
        "Mount board",
        "strips joined with a {0}",
        " of opening {0}",
        "from the left edge",
        "from the top edge",
        "{0} begins",
        "2 strips{0}, top and bottom",
        "2 strips{0}, left and right",
        "joined{0}, outside",
        "trimmed{0} to",
        "round an ellipse",
        "one piece{0}, outside",
        "along it{0}",
        "2 rails, {0}",
        "top and bottom",
        "left and right",
    ),
    "papers/words.py": (
        "The {0}{1}",
        "{0} is {1}: {2}.",
        "Try {0}, {1}{2}.",
        "a little ",
        "{0}{1} (by {2})",
        ", so that the eye goes to {0} first",
        ", so that it no longer looks like a missed match with the {0}",
        ", so that it stays among the picture's own hues",
        ", so that it agrees with the whites of the picture",
        ", so that it comes nearer to the {0} of the picture",
        "{0} and {1}",
    ),
    "errors.py": (
        '{0}"{1}" is not a length; write it like 16 3/8, 16-3/8, 16.375, 16 3/8", 1\' 4 3/8", 41.6 cm or 416 mm.',
        "; the nearest codes are {0}",
        "There is no sample {0} in the catalogue{1}.",
        "take a moulding that fits ({0})",
        "The stack is {0} deep and needs {1} behind it, but the rabbet is {2}: {3} are missing; {4}, build up the back of the frame by {5}, or fix the stack with offset clips and allow for it standing out behind the frame.",
        "take a deeper moulding",
        "each of the {0} pieces of art",
        "There are {0} measurements where {1} are needed: measure {2} twice, independently, before a ticket is printed.",
        "The design is not for {0} as it was measured: put the measured size into the design before a ticket is printed.",
    ),
}

# The same, put together.
EXAMPLES = (
    "Only 2 mm of the art is held on each side; 3 mm is usual.",
    "9 mm of the art is hidden on each side; up to 7 mm is usual.",
    "M-1 has no known stick length: its pieces are not planned.",
    "QX 7, layer 2, opening 1, top strip",
    "QX 7, bottom rail",
    "M-1 has no thickness, so the depth is not fully checked.",
    "5 in outer width, plus 1/8 in allowance, less 2 x 1/4 in rabbet width",
    "8 in top rail, plus 9 in right rail, plus 8 in bottom rail, plus 9 in left rail",
    "layer 2 rabbet_width is 2 mm; it must hide more than half the play of 4 mm.",
    "second measurement, height is 0; give a length above zero.",
    "Both measurements of art 2 name the same hand and time: let the second be independent.",
    (
        "The first diagonal of art 2 was measured as 9 in and as 8 in, 1 in apart where at most 1/32 in "
        "is allowed: measure the first diagonal of art 2 again before anything is cut."
    ),
    "art overlap is 9 in; it must be less than half the art's height, 5 in.",
    "layer 2 kind is liner; a liner must be the last of the 3 layers, next to the moulding.",
    "2 x about 20.5 united inches at 0.50 each, at least EUR 12.00",
    "about 3.21 m and 15 % waste at 12.00 a m",
    "0.12 of a sheet and 10 % waste at 20 a sheet times 2.5",
    "3.5 ft at 2 a foot times 2",
    "20 minutes at 40.00 an hour",
    "4 x at 2.00 each",
    "glazing has no catalogue price; charge it otherwise, or name the catalogue and its code.",
    "sample M-1 is a mat; choose a moulding for the frame.",
    "moulding face is missing; write it, or name the catalogue that holds its code.",
    "4 in opening of layer 2, plus 2 x 1/4 in liner rabbet width, less 1/8 in play",
    "4 in opening 1, plus 2 in gap, plus 3 in opening 2",
    "12, the newest whole one is QX; 2 after it are not",
    "Measurement 2 of 2 of art 3 taken by QX.",
    "Layer 2 has no thickness and is drawn 2 mm thick.",
    "M-1 has no measured reflectance, so its colour under north daylight is an estimate.",
    "strips joined with a mitre",
    "strips joined with a butt; one bent piece round an oval",
    "2 strips of opening 1, top and bottom",
    "joined of opening 2, outside",
    "trimmed of opening 2 to",
    "one piece of opening 2, outside",
    "along it of opening 2",
    "opening 2 begins",
    "4 in round an ellipse",
    "3 in from the left edge",
    "3 in from the top edge",
    "2 rails, left and right",
    "The liner, QX, is weathered: its surface varies by 5.2 steps of lightness and hardly shines.",
    "Keep the hue, the depth and the linen surface of QX.",
    (
        "Try QX, a little darker (by 8) and nearer to brick red, so that the eye goes to the picture "
        "first."
    ),
    "Try QX, quieter in colour (by 20), so that it stays among the picture's own hues.",
    "Try QX, lighter (by 13), so that it agrees with the whites of the picture.",
    "Try QX, lighter (by 13), so that it comes nearer to the brick red of the picture.",
    "Try QX, lighter (by 13), so that it no longer looks like a missed match with the brick red.",
    (
        'art width: "x" is not a length; write it like 16 3/8, 16-3/8, 16.375, 16 3/8", 1\' 4 3/8", '
        "41.6 cm or 416 mm."
    ),
    "There is no sample QX in the catalogue; the nearest codes are Q-1, Q-2.",
    (
        "There are 1 measurements where 2 are needed: measure the art twice, independently, before a "
        "ticket is printed."
    ),
    (
        "The design is not for window 2 as it was measured: put the measured size into the design "
        "before a ticket is printed."
    ),
)
