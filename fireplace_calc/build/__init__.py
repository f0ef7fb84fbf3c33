"""The order of work: steps from footing to cap found from what rests on what, with mortar, lifts, staging, days and waits.

``build(geometry)`` is the plan. Curing and first fires are site practice and no code; cautions defer to local code and
licensed practice.
"""

from fireplace_calc.build.lifting.lift_list import Lift
from fireplace_calc.build.plan import Plan, Stage, build
from fireplace_calc.build.steps import Step

__all__ = ["Lift", "Plan", "Stage", "Step", "build"]
