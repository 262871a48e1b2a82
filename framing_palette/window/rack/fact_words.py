"""What the facts of a sample are called in the window."""

from PySide6.QtCore import QObject


def fact_words(owner: QObject, target: str) -> str:
    """Return a column of a catalogue folder in words; an unknown one as it is."""
    tr = owner.tr
    return {
        "code": tr("Code"),
        "name": tr("Name"),
        "kind": tr("Kind"),
        "surface": tr("Surface"),
        "material": tr("Material"),
        "finish": tr("Finish"),
        "face_mm": tr("Width"),
        "thickness_mm": tr("Thickness or height"),
        "bevel_mm": tr("Bevel"),
        "rabbet_width_mm": tr("Rabbet width"),
        "rabbet_depth_mm": tr("Rabbet depth"),
        "stick_mm": tr("Stick length"),
        "sheet_w_mm": tr("Sheet width"),
        "sheet_h_mm": tr("Sheet height"),
        "density_kg_m3": tr("Density, kg/m³"),
        "join": tr("Corner"),
        "texture": tr("Picture of the surface"),
        "texture_mm_per_px": tr("Its mm per pixel"),
        "price": tr("Price"),
        "price_per": tr("Price for"),
        "in_stock": tr("In stock"),
        "conservation": tr("Conservation"),
        "collection": tr("Family"),
        "tags": tr("Tags"),
        "L": tr("Colour L*"),
        "a": tr("Colour a*"),
        "b": tr("Colour b*"),
    }.get(target, target)
