# foilwork: `make demo` runs the main job, `make test` runs every check. Each sets up what it needs.

.PHONY: demo test test-workbook test-engines python stubs schema docs bench fuzz fuzz-coverage mutants mutants-sample semver wheel wheel-twice format

# The command line, built from this checkout, plans the first example.
demo:
	@.ci/need-cargo
	@.ci/find-python >/dev/null
	@$(or $(FOILWORK),cargo run --quiet --features cli --) plan examples/soft-gradient.toml

# Everything that continuous integration runs, in the same order.
test:
	@.ci/need-cargo
	@.ci/find-python >/dev/null
	@.ci/checks

# The Python module, built from this checkout into .venv, for daily work.
python:
	@.ci/need-cargo
	@.ci/environment .venv
	@VIRTUAL_ENV=$(CURDIR)/.venv .venv/bin/maturin develop --quiet

# Copies names and docstrings of the compiled modules into their stubs, and the plan's schema into its types.
stubs: python
	@.venv/bin/python python/tools/sync_stubs.py
	@.venv/bin/python python/tools/plan_types.py

# The JSON Schemas of a service file and of a plan, as the command line prints them.
schema:
	@.ci/need-cargo
	@cargo run --quiet --features cli -- schema --output examples/service.schema.json
	@cargo run --quiet --features cli -- schema --plan --output examples/plan.schema.json

# The book, into target/book: the guides, the commands as the program prints them, the Python reference from the stubs.
docs: python
	@.venv/bin/python -m mkdocs build --strict --quiet --config-file docs/mkdocs.yml
	@echo target/book/index.html

# The formulas of the workbooks once more by LibreOffice (Debian: libreoffice-calc-nogui), which takes a minute.
test-workbook: python
	FOILWORK_OFFICE=$(or $(FOILWORK_OFFICE),soffice) .venv/bin/python -m pytest --quiet tests/python/test_workbook.py

# The history of a chain inside Spark, which needs Java and half a gigabyte of packages; two minutes.
test-engines:
	@.ci/need-cargo
	@.ci/engines target/engines-venv

# Ratios to compare are those of one run: `make bench ROOM=peroxide` measures one room, `make bench` all.
bench: python
	$(if $(ROOM),$(if $(wildcard benches/$(ROOM).rs),cargo bench --all-features --bench $(ROOM)),cargo bench --all-features --benches)
	@VIRTUAL_ENV=$(CURDIR)/.venv .venv/bin/maturin develop --quiet --release
	@set -e; for script in benches/python/$(or $(ROOM),*).py; do if [ -e "$$script" ]; then .venv/bin/python "$$script"; fi; done

# Hostile texts for every reader and for all that is made of a plan, and commands killed while they write: `make fuzz TRIALS=2000`.
fuzz:
	FOILWORK_TRIALS=$(or $(TRIALS),2000) cargo test --release --features cli --test integration -- hostile faults:: --nocapture

# Fuzzing that follows coverage, so many seconds for each target; a nightly toolchain and cargo-fuzz are needed for it alone.
fuzz-coverage:
	@fuzz/run $(or $(TIME),60) $(TARGET)

# Faults put into the rules one at a time: does a test notice? Needs cargo-mutants (cargo install cargo-mutants).
# `make mutants ROOM=mix SHARD=0/8`: of one room, with the tests that bear its name; `make mutants SINCE=main`: of what
# differs from a commit, with all tests. Takes a minute or two a fault.
mutants:
	@command -v cargo-mutants >/dev/null || { echo "cargo-mutants is missing (cargo install cargo-mutants)" >&2; exit 1; }
	@mkdir -p target
	$(if $(SINCE),@git diff $(SINCE) -- src >target/since.diff)
	cargo mutants --package foilwork --shuffle --output target $(if $(SHARD),--shard $(SHARD)) \
		$(if $(SINCE),--in-diff target/since.diff) $(if $(ROOM),--file 'src/$(ROOM)/**') \
		-- --features cli $(if $(ROOM),--lib --test integration -- $(ROOM))

# A drawn share of all faults of the core in one build, each tried against the tests that enter its function: a second or two a
# fault, after a build of some minutes. `make mutants-sample SHARE=0.05 ROOM=mix SEED=1`, with LEAST=160 so many of a room
# at least; the same with AGAIN=1 tries those that were not noticed against the tests that are new since.
mutants-sample:
	@command -v cargo-mutants >/dev/null || { echo "cargo-mutants is missing (cargo install cargo-mutants)" >&2; exit 1; }
	PYTHONPATH=python/tools "$$(.ci/find-python)" -m mutation --share $(or $(SHARE),0.05) --seed $(or $(SEED),1) \
		$(if $(LEAST),--least $(LEAST)) $(foreach room,$(ROOM),--room $(room)) $(if $(AGAIN),--again)

# What of the public names in Rust changed since a commit or tag, and whether the version says so: `make semver SINCE=v0.1.0`.
semver:
	@command -v cargo-semver-checks >/dev/null || \
		{ echo "cargo-semver-checks is missing (cargo install cargo-semver-checks)" >&2; exit 1; }
	$(if $(SINCE),,@echo "SINCE= is missing: the tag of the last release, or a commit" >&2; exit 2)
	cargo semver-checks --package foilwork --all-features --baseline-rev $(SINCE)

# The wheel as it is released, and whether two builds of it, in two folders and each from nothing, are the same bytes.
wheel wheel-twice:
	@.ci/need-cargo
	@.ci/environment .venv
	@.venv/bin/python python/tools/release_wheel.py $(if $(filter wheel-twice,$@),--twice)

format:
	@.ci/environment .venv
	@cargo fmt --all
	@.venv/bin/ruff check --quiet --fix-only .
	@.venv/bin/ruff format --quiet .
