"""Qt ends at the view-models: everything below runs without it, and the commands never load it."""

import json
import os
import subprocess
import sys

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

# Runs one command after the other and tells, on the last line, how each ended and what was loaded by then.
COMMANDS = """
import json, sys
from rigbuilder.cli import main

told = []
for arguments in json.loads(sys.argv[1]):
    try:
        code = main(arguments)
    except SystemExit as end:
        code = end.code or 0
    told.append([code, sorted({name.split(".")[0] for name in sys.modules})])
print()
print(json.dumps(told))
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


def test_commands_do_not_load_qt() -> None:
    demo = str(PROJECT / "resources" / "demo" / "pad-frog.rigcard")
    commands = {
        "--version": ["--version"],
        "--help": ["--help"],
        "techniques": ["techniques"],
        "rules": ["rules"],
        "schema": ["schema"],
        "label": ["label", "rod", "7'3\" H F 14-25 lb"],
        "review": ["review", demo],
        "plan": ["plan", demo],
    }
    told = json.loads(_python(COMMANDS, json.dumps(list(commands.values()))).splitlines()[-1])
    ended = dict(zip(commands, (code for code, _ in told), strict=True))
    assert ended == dict.fromkeys(commands, 0) | {"review": 1}  # the demo's rig has faults
    for name, (_, loaded) in zip(commands, told, strict=True):
        assert not {"PySide6", "shiboken6"} & set(loaded), name
        assert "scipy" not in loaded or name in ("review", "plan"), name
        assert "numpy" not in loaded or name != "--version", name
