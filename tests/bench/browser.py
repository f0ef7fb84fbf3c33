"""A real JupyterLab or Voila, and a headless Chromium looking at it."""

from __future__ import annotations

import contextlib
import re
import shutil
import socket
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FLAGS = [
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
]


def chromium() -> str | None:
    """Where the system's Chromium is."""
    return next(
        (
            found
            for name in ("chromium", "chromium-browser", "google-chrome")
            if (found := shutil.which(name))
        ),
        None,
    )


def free_port() -> int:
    """A port on loopback that nobody listens on now."""
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return probe.getsockname()[1]


@contextlib.contextmanager
def server(kind: str, notebook: Path, root: Path):
    """Start JupyterLab or Voila on loopback, give the address of the notebook, and stop it
    afterwards.
    """
    port = free_port()
    if kind == "lab":
        command = [
            sys.executable,
            "-m",
            "jupyterlab",
            "--no-browser",
            f"--port={port}",
            f"--ServerApp.root_dir={root}",
        ]
    else:
        command = [sys.executable, "-m", "voila", "--no-browser", f"--port={port}", str(notebook)]
    process = subprocess.Popen(
        command, stderr=subprocess.PIPE, stdout=subprocess.DEVNULL, text=True, cwd=root
    )
    try:
        pattern = r"(http://(?:127\.0\.0\.1|localhost):\d+)/(?:lab)?\S*?(?:token=(\w+))?\s"
        for line in process.stderr:
            if found := re.search(pattern, line.rstrip() + " "):
                break
        else:
            raise RuntimeError(f"{kind} did not start")
        threading.Thread(target=lambda: [None for _ in process.stderr], daemon=True).start()
        if kind == "lab":
            yield f"{found[1]}/lab/tree/{notebook.relative_to(root)}?token={found[2]}&reset"
        else:
            yield found[1] + "/"
    finally:
        process.terminate()
        process.wait(20)


@contextlib.contextmanager
def page(width: int = 1280, height: int = 1000, **how):
    """One page of a headless Chromium."""
    from playwright.sync_api import sync_playwright

    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=chromium(), args=FLAGS)
        try:
            yield browser.new_page(viewport={"width": width, "height": height}, **how)
        finally:
            browser.close()


class Alone:
    """A headless Chromium that can be left alone: while nobody looks in, no debugger takes time off
    the page.
    """

    def __init__(self, width: int = 1280, height: int = 1000):
        from playwright.sync_api import sync_playwright

        self.port, self.folder, self.play = (
            free_port(),
            tempfile.TemporaryDirectory(),
            sync_playwright().start(),
        )
        size = f"--window-size={width},{height}"
        command = [
            chromium(),
            "--headless=new",
            f"--remote-debugging-port={self.port}",
            f"--user-data-dir={self.folder.name}",
            size,
        ]
        self.process = subprocess.Popen(
            [*command, *FLAGS, "about:blank"], stderr=subprocess.DEVNULL, stdout=subprocess.DEVNULL
        )
        self.browser = None

    def look_in(self):
        """The page, for whoever wants to touch or read it."""
        for _ in range(100):
            with contextlib.suppress(Exception):
                self.browser = self.play.chromium.connect_over_cdp(f"http://127.0.0.1:{self.port}")
                return self.browser.contexts[0].pages[0]
            time.sleep(0.1)
        raise RuntimeError("Chromium does not answer")

    def leave(self, seconds: float) -> None:
        """Go away for a while."""
        self.browser.close()
        time.sleep(seconds)

    def __enter__(self) -> Alone:
        return self

    def __exit__(self, *_) -> None:
        self.process.terminate()
        self.process.wait(20)
        self.play.stop()
        self.folder.cleanup()
