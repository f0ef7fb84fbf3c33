"""The lit scene where the other panels have their drawings."""

from __future__ import annotations

from fireplace_calc.assessment import Assessment
from fireplace_calc.design.records import Design
from fireplace_calc.panels.picture.view_pane import ViewPane
from fireplace_calc.panels.scene.scene_view import SceneView


class ScenePane(ViewPane):
    """The scene as a panel's picture.

    Parameters
    ----------
    scene : SceneView
    """

    def __init__(self, scene: SceneView) -> None:
        self.scene = scene
        super().__init__("room")

    def make_screen(self) -> None:
        """The scene is there already."""

    def set_theme(self, theme: str) -> None:
        """A room has no paper."""

    def lead(self, design: Design, pack: str, units: str) -> bool:
        """Nothing is shown before the design has been worked out."""
        return False

    def follow(self, result: Assessment, units: str) -> str:
        """Show the design as it stands; its words come when the hand rests."""
        self.scene.put(result, moving=True)
        self.scene.units = units
        return ""

    def on_idle(self, result: Assessment, units: str) -> None:
        """The words of the scene."""
        self.scene.say()
