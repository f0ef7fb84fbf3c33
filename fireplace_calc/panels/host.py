"""What a fold needs of the panel it stands in; the panel itself is one of these."""

from __future__ import annotations

from typing import TYPE_CHECKING, Protocol

from fireplace_calc.panels.changer import Changer

if TYPE_CHECKING:
    from fireplace_calc.assessment import Assessment
    from fireplace_calc.design.records import Design
    from fireplace_calc.panels.controls.everything import Everything
    from fireplace_calc.panels.picture.view_pane import ViewPane
    from fireplace_calc.panels.session import Session


class Host(Changer, Protocol):
    """All that folds ask for."""

    session: Session
    view_pane: ViewPane
    everything: Everything

    @property
    def named(self) -> tuple[str, ...]:
        """Folds that there are, by their names."""
        ...

    @property
    def pack(self) -> str:
        """Book the design is checked against."""
        ...

    @property
    def result(self) -> Assessment:
        """Everything about the design as it stands."""
        ...

    def put(self, design: Design) -> None:
        """Show another design."""

    def keep(self) -> None:
        """Write the work to its folder."""

    def set_view(self, view: str) -> None:
        """Draw another view."""

    def show_inputs(self, every: bool = False) -> None:
        """Bring the controls up to the design."""

    def redraw(self) -> None:
        """Draw the picture again."""

    def open(self, name: str) -> None:
        """Unfold one fold."""

    def catch_up(self) -> None:
        """Keep and show what the session has on the table."""

    def show_job(self) -> None:
        """Show all of another job that the session has on the table."""
