"""Skins as bytes for the page: corners, faces, normals, owners and edges in one run each."""

from __future__ import annotations

from collections.abc import Mapping

from fireplace_calc.geometry.mesh import Mesh, Plane


def packed_skins(
    skins: tuple[Mesh, ...], number: Mapping[str, int], plane: Plane | None = None
) -> dict[str, bytes]:
    """Several skins as one run of numbers: corners, faces, normals, whose a face is, which were
    cut, and edges with their faces.

    Parameters
    ----------
    skins : tuple of Mesh
        One at least.
    number : mapping of str to int
        Of each skin's owner, by its name. [-]
    plane : tuple or None
        That cut them: its normal into what is kept [-], and how far along it [m].

    Returns
    -------
    dict of str to bytes
        Corners and normals as single precision, the rest as whole numbers.
    """
    import numpy as np

    corners = np.cumsum([0, *(len(skin.points) for skin in skins)])
    faces = np.cumsum([0, *(len(skin.faces) for skin in skins)])
    edges = [skin.edges + [c, c, f, f] for skin, c, f in zip(skins, corners, faces, strict=False)]
    cap = np.zeros(faces[-1], bool)
    if plane is not None:
        normal, at = plane
        first = np.concatenate([skin.points[skin.faces[:, 0]] for skin in skins])
        turned = np.concatenate([skin.normals for skin in skins])
        cap = (turned @ normal < -0.9999) & (np.abs(first @ normal - at) < 1e-6)
    return {
        "points": np.concatenate([skin.points for skin in skins]).astype("<f4").tobytes(),
        "faces": (
            np.concatenate([skin.faces + c for skin, c in zip(skins, corners, strict=False)])
            .astype("<u4")
            .tobytes()
        ),
        "normals": np.concatenate([skin.normals for skin in skins]).astype("<f4").tobytes(),
        "owner": (
            np.repeat([number[skin.name] for skin in skins], np.diff(faces)).astype("<u2").tobytes()
        ),
        "cap": cap.astype("u1").tobytes(),
        "edges": np.concatenate(edges).astype("<u4").tobytes(),
        "sharp": np.concatenate([skin.sharp for skin in skins]).astype("u1").tobytes(),
    }
