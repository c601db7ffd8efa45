# foilwork: `make demo` runs the main job, `make test` runs every check. Both set up what they need.

PYTHON ?= python3.11
VENV   := .venv
BIN    := $(VENV)/bin

.PHONY: demo test python stubs

$(BIN)/python:
	$(PYTHON) -m venv $(VENV)
	$(BIN)/python -m pip install --quiet --upgrade pip

# The Python module, built from this checkout into .venv.
python: $(BIN)/python
	$(BIN)/python -m pip install --quiet 'maturin>=1.16,<2' --group test
	. $(BIN)/activate; $(BIN)/maturin develop --quiet
