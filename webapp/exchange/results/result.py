"""What every result of the API is: a value of the engine as JSON."""

from __future__ import annotations

from typing import Any, Self

from pydantic import BaseModel, ConfigDict

Runs = list[tuple[str, int]]


class Result(BaseModel):
    """A value of the engine as JSON."""

    model_config = ConfigDict(from_attributes=True)

    @classmethod
    def of(cls, value: object) -> Self:
        """The result of a value with those attributes."""
        return cls.model_validate(value)

    def json_value(self) -> dict[str, Any]:
        """What is sent; a follow-up that was not asked is left out."""
        return self.model_dump(exclude_none=True)
