"""Where ``resources/`` lies: the only module that knows.

Three places are possible and tried in this order: inside the installed
package (a wheel puts the folder there), beside the package (a checkout), and
the unpacking folder of a frozen build.
"""

import sys
from functools import cache
from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def _candidates() -> list[Path]:
    places = [_PACKAGE / "resources", _PACKAGE.parent / "resources"]
    frozen = getattr(sys, "_MEIPASS", None)
    if frozen is not None:
        places.insert(0, Path(frozen) / "resources")
    return places


@cache
def root() -> Path:
    """Return the folder that holds the shipped data, drawings and cards.

    Raises:
        FileNotFoundError: if no place holds it; the message lists them.
    """
    places = _candidates()
    for place in places:
        if (place / "techniques.toml").is_file():
            return place
    looked = ", ".join(str(place) for place in places)
    raise FileNotFoundError(
        f"Rigbuilder's resources folder is missing (looked in {looked}). Install the program again."
    )


def path(*parts: str) -> Path:
    """Return the path of one shipped file or folder, as ``path("usual", "frog.rigcard")``."""
    return root().joinpath(*parts)


def read_text(*parts: str) -> str:
    """Return the text of one shipped UTF-8 file."""
    return path(*parts).read_text(encoding="utf-8")
