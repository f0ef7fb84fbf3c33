"""The order of work: steps from footing to cap found from what rests on what, with mortar, lifts,
staging, days and waits.

``plan_work(geometry)`` is the plan. Curing and first fires are site practice and no code; cautions
defer to local code and licensed practice.
"""

from fireplace_calc.build.lifting.lift_list import Lift
from fireplace_calc.build.plan import Plan, Stage, plan_work
from fireplace_calc.build.steps import WorkStep

__all__ = ["Lift", "Plan", "Stage", "WorkStep", "plan_work"]
