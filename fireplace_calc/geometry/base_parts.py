"""Parts from the footing to the hearth."""

from __future__ import annotations

from collections.abc import Iterable
from functools import cached_property

from fireplace_calc.geometry.outlines import (
    Outlines,
    centered,
)
from fireplace_calc.geometry.parts import Part, part
from fireplace_calc.geometry.solids import (
    Loft,
    prism,
)


class BaseParts(Outlines):
    """Footing, base, slab, hearth and its extension."""

    def foundation(self) -> Iterable[Part]:
        """Footing, base walls, what fills them, and the slab under the hearth."""
        d, f = self.design, self.frame
        out, w = d.base.footing_projection, d.base.block_width
        yield part(
            "footing",
            "concrete",
            [
                prism(
                    f.footing_bottom,
                    f.footing_top,
                    centered(f.block_half + out, -out, f.block_back + out),
                )
            ],
        )
        whole = prism(f.footing_top, f.slab_bottom, self.block)
        roomy = f.block_half > w and f.block_back > 2 * w
        core = (
            [prism(f.footing_top, f.slab_bottom, centered(f.block_half - w, w, f.block_back - w))]
            if roomy
            else []
        )
        yield part("base walls", "block", [whole], core)
        if core and d.base.core == "grouted":
            yield part("base core", "grout", core)
        yield part("hearth slab", "concrete", [prism(f.slab_bottom, f.slab_top, self.block)])

    def hearth(self) -> Iterable[Part]:
        """Firebox floor, and the hearth extension on its bed and base."""
        d, f = self.design, self.frame
        yield part(
            "firebox floor", "firebrick" if d.method == "laid" else "refractory", [self.floor]
        )
        if d.hearth.front <= 0:
            return
        plan = centered(f.half_width + d.hearth.side, -d.hearth.front, 0.0)
        under, bottom = (
            f.extension_top - d.hearth.thickness,
            f.extension_top - d.hearth.thickness - d.hearth.bed,
        )
        finish = d.hearth.material or "stone"
        material = "brick" if finish == "masonry" else finish
        yield part("hearth extension", material, [prism(under, f.extension_top, plan)])
        yield part("hearth extension bed", "concrete", [prism(bottom, under, plan)])
        if bottom > 0:
            yield part("hearth extension base", "block", [prism(0.0, bottom, plan)])

    @cached_property
    def floor(self) -> Loft:
        """Firebrick paving between the splayed sides, as a solid."""
        return prism(self.frame.slab_top, self.frame.hearth, self.trapezoid(0.0, self.frame.depth))
