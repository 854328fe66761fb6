"""What a command's exit code says."""

#: No fault was found.
NO_FAULT = 0

#: At least one fault was found.
FAULT = 1

#: A card, or the call itself, could not be read.
UNREADABLE = 2
