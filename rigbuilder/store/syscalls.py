"""The file calls of the write path, by name.

Only :mod:`rigbuilder.store.atomic` and :mod:`rigbuilder.store.reading` call
them, always through this module, so that a test can let any one of them fail,
or kill the program just before it.
"""

import os

access = os.access
chmod_open = os.fchmod
chown_open = os.fchown
close = os.close
flush = os.fsync
link = os.link
open_file = os.open
read = os.read
replace = os.replace
stat = os.stat
stat_open = os.fstat
unlink = os.unlink
write = os.write
