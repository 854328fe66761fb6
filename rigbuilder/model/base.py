"""The frozen base of everything that a rig is made of."""

from typing import Annotated, Any, Self

from pydantic import BaseModel, ConfigDict, Field

Positive = Annotated[float, Field(gt=0)]
NotNegative = Annotated[float, Field(ge=0)]


class Frozen(BaseModel):
    """A value: immutable, closed, and finite in every number."""

    model_config = ConfigDict(frozen=True, extra="forbid", allow_inf_nan=False, arbitrary_types_allowed=True)

    def with_(self, **changes: Any) -> Self:
        """Return a new value with the changes made, checked like any other.

        Raises:
            pydantic.ValidationError: if the result breaks an invariant.
        """
        return type(self)(**{**{name: getattr(self, name) for name in type(self).model_fields}, **changes})
