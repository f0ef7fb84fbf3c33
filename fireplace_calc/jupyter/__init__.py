"""What runs in the notebook server and on its page, and the command ``fireplace-workbook``.

Nothing here is loaded by the package itself. The server is told of the extension by a file of its
own in ``etc/jupyter/jupyter_server_config.d``; take the file or the package away, and every server
starts as before.
"""

from __future__ import annotations


def _jupyter_server_extension_points() -> list[dict[str, str]]:
    """Where a Jupyter server finds the extension."""
    return [{"module": "fireplace_calc.jupyter.extension"}]
