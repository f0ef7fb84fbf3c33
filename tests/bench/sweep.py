"""A million fires settled, and a catalogue of designs swept through all stations of a country: one
core, then a cluster of two.

Run: ``.venv/bin/python tests/bench/sweep.py``. Weather that is not of a station is drawn from a
seed.
"""

from __future__ import annotations

import os
import time
from dataclasses import replace
from pathlib import Path

import numpy as np
from distributed import Client, LocalCluster

from fireplace_calc import change, load
from fireplace_calc.base.places import inside
from fireplace_calc.draft import fire, settle, surroundings, trace_flow_path
from fireplace_calc.draft.physics.air import pressure_at
from fireplace_calc.explore import sketch, stations, sweep

ROOT = Path(__file__).resolve().parents[2]
COUNT, BLOCK = 1_000_000, 4096


def timed(name: str, count: int, act, here: bool = True) -> None:
    """One line: how long it took by the clock, and on the processor where all of it was done here.
    [s]
    """
    clock, work = time.perf_counter(), time.process_time()
    act()
    clock, work = time.perf_counter() - clock, time.process_time() - work
    spent = f"{work:.2f} | {work / count * 1e6:.2f}" if here else "in the workers |"
    print(f"| {name} | {count:,} | {clock:.2f} | {spent} |", flush=True)


def million(design) -> None:
    """A million evenings of one design, operating mode, by ``settle`` alone in blocks."""
    way, one, still, rng = (
        trace_flow_path(sketch(design)),
        fire(design),
        surroundings(design),
        np.random.default_rng(1),
    )
    outdoor, pressure = (
        rng.uniform(233.0, 303.0, COUNT),
        pressure_at(rng.uniform(0.0, 3000.0, COUNT)),
    )
    for k in range(0, COUNT, BLOCK):
        settle(
            way,
            one,
            replace(still, outdoor=outdoor[k : k + BLOCK], pressure=pressure[k : k + BLOCK]),
        )


def main() -> None:
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {min(os.sched_getaffinity(0))})
    boathouse = load(ROOT / "data" / "designs" / "boathouse-laid.toml")
    closed = change(boathouse, {"house.air_inlet": "0 in2"})
    print(
        "| | fires | clock [s] | processor [s] | processor, a million [s] |\n|---|---|---|---|---|"
    )
    timed("`settle`, no air inlet", COUNT, lambda: million(closed))
    timed("`settle`, air inlet", COUNT, lambda: million(boathouse))
    weathers = stations(inside("CAN"), mild=boathouse.site.mild)
    moves = [
        {"opening.width": f"{30 + k / 2:g} in", "flue.sections": 12 + k % 20} for k in range(60)
    ]
    catalogue = {f"no. {k}": change(boathouse, move) for k, move in enumerate(moves)}
    fires = len(catalogue) * weathers.outdoor.size * 5
    rates = np.array([1.0, 2.0, 3.5, 5.0, 8.0]) / 3600
    kept = []
    timed(
        "`sweep`: designs by stations by evenings by 5 rates, air inlet",
        fires,
        lambda: kept.append(sweep(catalogue, weathers, rates)),
    )
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, range(os.cpu_count()))
    with (
        LocalCluster(
            n_workers=2, threads_per_worker=1, dashboard_address=None, host="127.0.0.1"
        ) as cluster,
        Client(cluster) as client,
    ):
        sweep(dict(list(catalogue.items())[:1]), weathers, client=client)
        timed(
            "the same, `LocalCluster` of two",
            fires,
            lambda: kept.append(sweep(catalogue, weathers, rates, client)),
            False,
        )
    print("\nThe same to the last bit:", kept[0].identical(kept[1]))


if __name__ == "__main__":
    main()
