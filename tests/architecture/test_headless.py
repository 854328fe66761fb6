"""Qt ends at the view-models: everything below runs without it, and the commands never load it."""

import json
import os
import subprocess
import sys

import pytest

from tests.architecture.code import PROJECT, modules
from tests.architecture.layers import QT_LAYERS, layer_of

BELOW = [m.name for m in modules() if layer_of(m.name) not in (*QT_LAYERS, "__main__")]

WITHOUT_QT = """
import importlib, sys

class Blocked:
    def find_spec(self, name, path=None, target=None):
        if name.split(".")[0] in ("PySide6", "shiboken6"):
            raise ImportError(f"{name} is out of reach here")

sys.meta_path.insert(0, Blocked())
for name in sys.argv[1:]:
    importlib.import_module(name)
print(len(sys.argv) - 1)
"""

# Runs one command and tells, on the last line, how it ended and which heavy packages it loaded.
COMMAND = """
import json, sys
from rigbuilder.cli import main

try:
    code = main()
except SystemExit as end:
    code = end.code or 0
heavy = {name.split(".")[0] for name in sys.modules} & {"PySide6", "shiboken6", "scipy"}
print()
print(json.dumps({"code": code, "heavy": sorted(heavy)}))
"""


def _python(source: str, *arguments: str) -> str:
    result = subprocess.run(
        [sys.executable, "-P", "-c", source, *arguments],
        capture_output=True,
        text=True,
        timeout=60,
        env={**os.environ, "PYTHONPATH": str(PROJECT)},
    )
    assert result.returncode == 0, result.stderr
    return result.stdout


def test_everything_below_the_view_models_imports_without_qt() -> None:
    assert int(_python(WITHOUT_QT, *BELOW)) == len(BELOW) > 10


@pytest.mark.parametrize(
    ("arguments", "codes"),
    [
        (["--version"], {0}),
        (["--help"], {0}),
        (["techniques"], {0}),
        (["rules"], {0}),
        (["schema"], {0}),
        (["label", "rod", "7'3\" H F 14-25 lb"], {0}),
        (["review", str(PROJECT / "resources" / "demo" / "pad-frog.rigcard")], {0, 1}),
    ],
    ids=lambda value: value[0] if isinstance(value, list) else "",
)
def test_commands_do_not_load_qt(arguments: list[str], codes: set[int]) -> None:
    told = json.loads(_python(COMMAND, *arguments).splitlines()[-1])
    assert told["code"] in codes
    assert not {"PySide6", "shiboken6"} & set(told["heavy"])
    assert "scipy" not in told["heavy"] or arguments[0] == "review"
