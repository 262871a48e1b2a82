"""The independent library that the conversions are checked against."""

import warnings
from types import ModuleType

import pytest


@pytest.fixture(scope="session")
def science() -> ModuleType:
    """colour-science; its import warns that plotting is not installed, which is no matter here."""
    with warnings.catch_warnings():
        warnings.simplefilter("ignore")
        import colour
        import colour.difference
        import colour.models
    return colour


@pytest.fixture(scope="session")
def white_d50(science: ModuleType):
    return science.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]["D50"]
