"""What the facts of a sample are called in the window."""

from PySide6.QtCore import QCoreApplication


def fact_words(target: str) -> str:
    """Return a column of a catalogue folder in words; an unknown one as it is."""
    tell = QCoreApplication.translate
    return {
        "code": tell("SampleFacts", "Code"),
        "name": tell("SampleFacts", "Name"),
        "kind": tell("SampleFacts", "Kind"),
        "surface": tell("SampleFacts", "Surface"),
        "material": tell("SampleFacts", "Material"),
        "finish": tell("SampleFacts", "Finish"),
        "face_mm": tell("SampleFacts", "Width"),
        "thickness_mm": tell("SampleFacts", "Thickness or height"),
        "bevel_mm": tell("SampleFacts", "Bevel"),
        "rabbet_width_mm": tell("SampleFacts", "Rabbet width"),
        "rabbet_depth_mm": tell("SampleFacts", "Rabbet depth"),
        "stick_mm": tell("SampleFacts", "Stick length"),
        "sheet_w_mm": tell("SampleFacts", "Sheet width"),
        "sheet_h_mm": tell("SampleFacts", "Sheet height"),
        "density_kg_m3": tell("SampleFacts", "Density, kg/m³"),
        "join": tell("SampleFacts", "Corner"),
        "texture": tell("SampleFacts", "Picture of the surface"),
        "texture_mm_per_px": tell("SampleFacts", "Its mm per pixel"),
        "price": tell("SampleFacts", "Price"),
        "price_per": tell("SampleFacts", "Price for"),
        "in_stock": tell("SampleFacts", "In stock"),
        "conservation": tell("SampleFacts", "Conservation"),
        "collection": tell("SampleFacts", "Family"),
        "tags": tell("SampleFacts", "Tags"),
        "L": tell("SampleFacts", "Colour L*"),
        "a": tell("SampleFacts", "Colour a*"),
        "b": tell("SampleFacts", "Colour b*"),
    }.get(target, target)
