"""The notebooks run from the top in a fresh kernel; what they claim is asserted in their cells."""

from pathlib import Path

import nbformat
import pytest
from nbclient import NotebookClient

ROOT = Path(__file__).resolve().parents[2]
NOTEBOOKS = sorted((ROOT / "docs" / "notebooks").glob("*.ipynb"))


def test_there_are_four() -> None:
    assert len(NOTEBOOKS) == 4


# The kernel's own sockets and the plotting library say things that are none of ours.
@pytest.mark.filterwarnings("ignore")
@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_notebook_runs(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)  # type: ignore[no-untyped-call]
    assert not any(cell.get("outputs") for cell in notebook.cells), "what it shows is not committed"
    NotebookClient(notebook, timeout=120, resources={"metadata": {"path": str(ROOT)}}).execute()
    shown = [output for cell in notebook.cells for output in cell.get("outputs", [])]
    assert not [output for output in shown if output["output_type"] == "error"]
    assert any("image/png" in output.get("data", {}) or "text/html" in output.get("data", {}) for output in shown)
