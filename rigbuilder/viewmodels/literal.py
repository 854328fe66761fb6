"""Tips that say what a card says, letter for letter."""

from html import escape


def literal(text: str) -> str:
    """Return a text as a tip that is shown as it stands: Qt reads as markup whatever looks like a tag."""
    if "<" not in text and "&lt;" not in text:
        return text
    return f"<qt>{escape(text).replace(chr(10), '<br>')}</qt>"
