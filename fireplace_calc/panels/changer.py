"""What controls need of whom they change."""

from __future__ import annotations

from collections.abc import Callable, Collection
from typing import TYPE_CHECKING, Any, Protocol

if TYPE_CHECKING:
    from fireplace_calc.design.records import Design


class Changer(Protocol):
    """Takes inputs for one design; a refusal is said and changes nothing."""

    @property
    def design(self) -> Design:
        """As it stands now."""
        ...

    @property
    def units(self) -> str:
        """The reader's units."""
        ...

    @property
    def leads(self) -> Collection[str]:
        """Dotted keys of the controls in front."""
        ...

    @property
    def kept(self) -> Collection[str]:
        """Dotted keys of what the customer wants to keep as it is."""
        ...

    def set_input(self, key: str, value: Any) -> None:
        """Take one new input."""

    def set_inputs(self, changes: dict[str, Any]) -> bool:
        """Take several together, or none of them."""
        ...

    def attempt(self, act: Callable[[], Any]) -> bool:
        """Do something that may be refused."""
        ...
