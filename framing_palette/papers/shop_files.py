"""The shop's own details, as a small file: what stands on every paper."""

import tomllib
from pathlib import Path

from framing_palette.errors import ShopFileError
from framing_palette.papers.contents import Shop
from framing_palette.whole_files import read_whole

LARGEST_BYTES = 1_000_000


def read_shop(path: Path) -> Shop:
    """Read a shop file, TOML with a ``name`` and ``lines`` of address and contact.

    Raises
    ------
    ShopFileError
        When it cannot be read or one of its fields cannot be used; the sentence names the field.
    """
    from pydantic import BaseModel, ConfigDict, ValidationError

    class ShopModel(BaseModel):
        model_config = ConfigDict(extra="forbid")
        name: str
        lines: tuple[str, ...] = ()
        invented: bool = False

    todo = 'write name = "…" and lines = ["…"] in it'
    try:
        shop = ShopModel.model_validate(tomllib.loads(read_whole(path, LARGEST_BYTES).decode()))
    except (OSError, UnicodeDecodeError) as error:
        raise ShopFileError(
            path, problem="cannot be read as text", todo="check its name"
        ) from error
    except tomllib.TOMLDecodeError as error:
        raise ShopFileError(path, problem=f"is not TOML ({error})", todo=todo) from error
    except ValidationError as error:
        fault = error.errors()[0]
        place = ".".join(str(step) for step in fault["loc"])
        problem = f"has a field that cannot be used ({place}: {fault['msg']})"
        raise ShopFileError(path, problem=problem, todo=todo) from error
    except (ValueError, RecursionError) as error:
        problem = "holds a number of thousands of digits or is nested hundreds of levels deep"
        raise ShopFileError(path, problem=problem, todo=todo) from error
    return Shop(shop.name, shop.lines, shop.invented)
