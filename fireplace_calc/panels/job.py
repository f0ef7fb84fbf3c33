"""Work that takes a while: done step by step, with a bar that shows how far it is and a button that
stops it.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Generator

import ipywidgets as w

from fireplace_calc.base.units import InputError
from fireplace_calc.panels import html

Steps = Generator[tuple[int, int, str], None, None]
"""How many are done, of how many, and the name of the next."""

BREATH = 0.002
"""Between two steps: what a page has sent takes several turns of the kernel's loop to be heard. [s]
"""


class Job:
    """One thing at a time, between whose steps controls answer and Stop is heard.

    Parameters
    ----------
    unit : str
        What is counted, in the plural.
    writes : bool
        Whether it ends in something that is written; else it only looks for something.
    """

    def __init__(self, unit: str, writes: bool = True) -> None:
        self.unit = unit
        self.left = "nothing was written" if writes else "the search was not finished"
        self.task: asyncio.Task[None] | None = None
        self.bar = w.IntProgress(
            description=unit.capitalize(), layout=w.Layout(visibility="hidden")
        )
        self.stop = w.Button(description="Stop", disabled=True, layout=w.Layout(width="auto"))
        self.stop.on_click(lambda _: self.task.cancel() if self.task else None)
        self.status = w.HTML()
        self.under_way = w.HBox([self.bar, self.stop], layout=w.Layout(display="none"))
        self.widget = w.VBox([self.under_way, self.status])

    def run(self, steps: Callable[[], Steps], finished: Callable[[], str]) -> None:
        """Begin, unless something is under way already.

        Parameters
        ----------
        steps : callable
            Gives the work as a generator; closing it half way leaves nothing behind.
        finished : callable
            Called when all is done; gives the sentence to say.
        """
        if self.task is not None and not self.task.done():
            return
        try:
            self.task = asyncio.get_running_loop().create_task(self._work(steps, finished))
        except RuntimeError:  # no loop: a script or a test
            asyncio.run(self._work(steps, finished))

    async def _work(self, steps: Callable[[], Steps], finished: Callable[[], str]) -> None:
        self.stop.disabled, self.bar.layout.visibility = False, "visible"
        self.under_way.layout.display = ""
        try:
            for done, of, name in (work := steps()):
                self.bar.max, self.bar.value = max(of, 1), done
                self.status.value = html.remark(f"{done} of {of} {self.unit}. {name}")
                try:
                    await asyncio.sleep(BREATH)
                except asyncio.CancelledError:
                    work.close()
                    raise
            self.status.value = html.heard(finished())
        except asyncio.CancelledError:
            self.status.value = html.heard(f"Stopped; {self.left}.")
        except InputError as wrong:
            self.status.value = html.trouble(str(wrong))
        except Exception as fault:  # a task's fault is heard by nobody else
            self.status.value = html.trouble(
                f"{self.left[:1].upper()}{self.left[1:]}: {type(fault).__name__}, {fault}."
                " Your design is unchanged."
            )
            raise
        finally:
            self.stop.disabled, self.bar.layout.visibility = True, "hidden"
            self.under_way.layout.display = "none"
