"""How much of a sheet bears ink: squares of 20 mm with a line, a hatch or a letter in them."""

import numpy as np

SQUARE = 20.0


def inked(sheet) -> float:
    """Share of the squares of a sheet that bear ink. [-]"""
    lines = [line for polylines in sheet.lines.values() for line in polylines]
    starts = np.concatenate([line[:-1] for line in lines] + [sheet.fine_lines()[:, 0]])
    ends = np.concatenate([line[1:] for line in lines] + [sheet.fine_lines()[:, 1]])
    steps = np.linspace(0.0, 1.0, 200)[:, None, None]
    points = (starts + (ends - starts) * steps).reshape(-1, 2)
    boxes = np.array([label.extent for label in sheet.labels]).reshape(-1, 4)
    points = np.concatenate([points, boxes[:, :2], boxes[:, 2:], (boxes[:, :2] + boxes[:, 2:]) / 2])
    wide, high = (int(np.ceil(size / SQUARE)) for size in (sheet.width, sheet.height))
    cells = np.unique((points // SQUARE).astype(int), axis=0)
    good = (cells >= 0).all(axis=1) & (cells[:, 0] < wide) & (cells[:, 1] < high)
    return float(good.sum()) / (wide * high)
