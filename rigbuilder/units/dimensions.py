"""The kinds of quantity that labels and cards state."""

from enum import StrEnum


class Dimension(StrEnum):
    """What a quantity measures; the value is the word used in messages."""

    LENGTH = "length"
    MASS = "mass"
    FORCE = "force"
    TEMPERATURE = "temperature"
    SPEED = "speed"
    SIZE = "size"


MEASURES = {
    Dimension.LENGTH: "a length",
    Dimension.MASS: "a weight",
    Dimension.FORCE: "a strength or pull",
    Dimension.TEMPERATURE: "a temperature",
    Dimension.SPEED: "a speed",
    Dimension.SIZE: "a line size number",
}

EXAMPLES = {
    Dimension.LENGTH: "a length such as 7'3\", 0.28 mm or 2.21 m",
    Dimension.MASS: "a weight such as 3/8 oz or 10 g",
    Dimension.FORCE: "a strength or pull such as 12 lb or 5.4 kg",
    Dimension.TEMPERATURE: "a temperature such as 18 C or 64 F",
    Dimension.SPEED: "a speed such as 3 m/s or 7 mph",
    Dimension.SIZE: "a line size number such as PE 1.5 or No. 3",
}
