"""Pages and pictures against published rules: HTML by a validator of its standard, SVG by what its editions name."""

import json
import os
import shutil
import subprocess
from functools import cache
from pathlib import Path
from typing import Any

import pytest
from lxml import etree
from test_pages import NAMES, PAGES, PICTURES, renamed

ROOT = Path(__file__).resolve().parents[2]
MODULES = ROOT / "target" / "checks" / "npm" / "node_modules"
NODE = shutil.which("node")
# The standards of HTML and ARIA. Which of two right elements to take is a matter of taste.
STANDARD = {
    "root": True,
    "extends": ["html-validate:standard", "html-validate:document", "html-validate:a11y"],
    "rules": {"prefer-native-element": "off"},
}


def missing(what: str) -> Any:
    """A test that cannot be made here: skipped, unless everything has to be there."""
    if os.environ.get("FOILWORK_BROWSER") == "required":
        pytest.fail(what)
    pytest.skip(what)


def complaints(pages: dict[str, str], folder: Path) -> dict[str, list[str]]:
    """What the validator says of each page; all of them in one run."""
    validator = MODULES / "html-validate" / "bin" / "html-validate.mjs"
    if not NODE or not validator.is_file():
        missing("NO HTML-VALIDATE: pages were not validated (npm install, as .ci/page-rules does)")
    config = folder / "rules.json"
    config.write_text(json.dumps(STANDARD), encoding="utf-8")
    names = {}
    for number, (name, text) in enumerate(pages.items()):
        path = folder / f"{number}.html"
        path.write_text(text, encoding="utf-8")
        names[str(path)] = name
    run = [str(NODE), str(validator), "--config", str(config), "--formatter", "json", *names]
    # Into a file: the validator ends before a pipe has taken a long report.
    report_of = folder / "report.json"
    with report_of.open("wb") as report_file:
        done = subprocess.run(run, stdout=report_file, stderr=subprocess.PIPE, text=True, check=False, cwd=folder)
    assert done.returncode in (0, 1), done.stderr
    told: dict[str, list[str]] = {name: [] for name in pages}
    for report in json.loads(report_of.read_text(encoding="utf-8")):
        for one in report["messages"]:
            told[names[report["filePath"]]].append(f"{one['line']}: {one['ruleId']}: {one['message']}")
    return told


def test_pages_are_html_as_the_standard_has_it(tmp_path: Path) -> None:
    seen = PAGES | {"right to left": renamed(NAMES[0]).html(), "quoted": renamed(NAMES[3]).html()}
    told = complaints(seen, tmp_path)
    assert {name: found[:5] for name, found in told.items() if found} == {}


def test_the_validator_finds_what_is_wrong(tmp_path: Path) -> None:
    wrong = "<!doctype html><html lang='en'><title>t</title><p><div id='a' colour='x'></div></p><p id='a'></html>"
    told = complaints({"wrong": wrong}, tmp_path)["wrong"]
    assert any("no-dup-id" in one for one in told) and len(told) >= 2, told


@cache
def allowed() -> dict[str, set[str]]:
    """The attributes of each element of SVG 1.1, Tiny 1.2 and 2, as the package takes them from the specifications."""
    package = MODULES / "svg-element-attributes" / "index.js"
    if not NODE or not package.is_file():
        missing("NO LIST OF SVG: pictures were not validated (npm install, as .ci/page-rules does)")
    script = "import(process.argv[1]).then(m => console.log(JSON.stringify(m.svgElementAttributes)))"
    done = subprocess.run([str(NODE), "-e", script, package.as_uri()], capture_output=True, text=True, check=True)
    return {element: set(names) for element, names in json.loads(done.stdout).items()}


def beyond_svg(text: str) -> set[tuple[str, str]]:
    """Elements and attributes that SVG does not have; what ARIA adds to every element is left out."""
    known = allowed()
    found = set()
    for element in etree.fromstring(text.encode()).iter():
        name = etree.QName(element)
        if name.namespace != "http://www.w3.org/2000/svg" or name.localname not in known:
            found.add((name.localname, ""))
            continue
        of_it = known["*"] | known[name.localname]
        extra = {one for one in map(str, element.attrib) if one not in of_it and one != "role" and one[:5] != "aria-"}
        found |= {(name.localname, one) for one in extra}
    return found


def test_pictures_hold_what_svg_knows() -> None:
    assert {name: beyond_svg(text) for name, text in PICTURES.items() if beyond_svg(text)} == {}


def test_what_svg_does_not_know_is_found() -> None:
    text = '<svg xmlns="http://www.w3.org/2000/svg"><rect colour="red" x="1"/><box/><circle x="1"/></svg>'
    assert beyond_svg(text) == {("rect", "colour"), ("box", ""), ("circle", "x")}
