"""``python -m rigbuilder``."""

import sys

from rigbuilder.cli import main

sys.exit(main())
