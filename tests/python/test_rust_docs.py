"""What the Rust documentation promises: an example for every function and method, a source that is in the register."""

import re
import tomllib
from pathlib import Path

import pytest
import rust_sources

ROOT = Path(__file__).resolve().parents[2]
_FUNCTION = re.compile(r"^(?P<docs>(?:///[^\n]*\n|#\[[^\n]*\]\n)*)pub (?:const )?fn (?P<name>\w+)", re.MULTILINE)
_METHOD = re.compile(r"^    pub (?:const )?fn (?P<name>\w+)", re.MULTILINE)
_IMPL = re.compile(r"^impl(?:<[^\n]*?>)? (?:[\w:<>, ]+ for )?(?P<type>\w+)", re.MULTILINE)
_EXAMPLE = re.compile(r"^ *//[/!] ```\n(?P<code>(?: *//[/!][^\n]*\n)+?) *//[/!] ```$", re.MULTILINE)
_SOURCE = re.compile(r"^[ \t]*//[/!] # Source\n(?P<text>(?:[ \t]*//[/!][^\n]*\n)+)", re.MULTILINE)
_CITED = re.compile(r"^    (?P<name>[A-Z][A-Z0-9_]*) = \"(?P<id>[^\"]+)\"", re.MULTILINE)

CITATIONS = sorted((ROOT / "src" / "source" / "citations").glob("*.rs"))


def sources() -> list[Path]:
    return [module.file for module in rust_sources.modules().values()]


def public_functions() -> list[tuple[str, str]]:
    """Each free function that users of the crate can call, with its documentation."""
    found = []
    for room in rust_sources.rooms():
        names = rust_sources.public_names(room)
        for module in rust_sources.modules().values():
            if module.room == room:
                text = module.file.read_text(encoding="utf-8")
                found += [
                    ("::".join((*module.path, match["name"])), match["docs"])
                    for match in _FUNCTION.finditer(text)
                    if match["name"] in names
                ]
    return found


def test_public_functions_are_found() -> None:
    names = {name for name, _ in public_functions()}
    assert {"peroxide::dilute::dilute", "mix::applied::as_applied"} <= names
    assert len(names) > 80


def test_every_public_function_has_an_example() -> None:
    without = [name for name, docs in public_functions() if "```" not in docs]
    assert not without, "add an `# Example` that runs"


def test_examples_compile_as_one_crate() -> None:
    """One example that reads a file beside its own cannot stand in the crate of all, and then each is built alone."""
    apart = [
        path.name for path in sources() if re.search(r"//[/!].*\binclude(?:_str|_bytes)?!", path.read_text("utf-8"))
    ]
    assert not apart, 'read the file with `std::fs::read_to_string("examples/...")?`'


def without_an_example(text: str, public: set[str]) -> list[str]:
    """The public methods of a file that no example of the same file calls: its own, its type's, or a neighbour's."""
    examples = "\n".join(match["code"] for match in _EXAMPLE.finditer(text))
    owners = [(match.start(), match["type"]) for match in _IMPL.finditer(text)]
    found = []
    for method in _METHOD.finditer(text):
        owner = next((name for at, name in reversed(owners) if at < method.start()), "")
        if owner in public and not re.search(rf"(?:\.|::){method['name']}\b", examples):
            found.append(f"{owner}::{method['name']}")
    return found


@pytest.mark.parametrize("room", rust_sources.rooms())
def test_every_public_method_is_called_in_an_example(room: str) -> None:
    public = set(rust_sources.public_names(room))
    files = [module.file for module in rust_sources.modules().values() if module.room == room]
    without = [name for file in files for name in without_an_example(file.read_text(encoding="utf-8"), public)]
    assert not without, "add an `# Example` that runs, to the method or to its type"


def test_a_method_without_an_example_is_found() -> None:
    file = """
/// ```
/// Bowl::new().mixed();
/// ```
impl Bowl {
    pub fn new() -> Self {}
    pub const fn mixed(&self) -> Mass {}
    pub fn leftover(&self) -> Mass {}
}
"""
    assert without_an_example(file, {"Bowl"}) == ["Bowl::leftover"]
    assert without_an_example(file, set()) == []


HEADED = [room for room in rust_sources.rooms() if len(rust_sources.public_names(room)) > 12 and room != "cli"]


@pytest.mark.parametrize("room", HEADED)
def test_the_page_of_a_large_room_is_in_headed_groups(room: str) -> None:
    page = (ROOT / "src" / room / "mod.rs").read_text(encoding="utf-8")
    headings = re.findall(r"^//! # (.+)$", page, re.MULTILINE)
    assert len(headings) >= 2, "say under headings what a caller may want, and where to begin"


def register(file: Path) -> dict[str, str]:
    """The constant of each citation of a room, and its id."""
    return {match["name"]: match["id"] for match in _CITED.finditer(file.read_text(encoding="utf-8"))}


@pytest.mark.parametrize("file", CITATIONS, ids=lambda file: file.stem)
def test_a_citation_is_declared_where_the_register_lists_it(file: Path) -> None:
    if file.name != "mod.rs":
        text = file.read_text(encoding="utf-8")
        assert "cite! {" in text, "declare citations with `cite!`, which lists them"
        assert "Citation {" not in text, "a citation beside the list would not be in the register"


@pytest.mark.parametrize("file", CITATIONS, ids=lambda file: file.stem)
def test_every_citation_of_the_register_is_used(file: Path) -> None:
    files = [source for source in sources() if source not in CITATIONS] + list((ROOT / "src").rglob("*.csv"))
    text = "\n".join(source.read_text(encoding="utf-8") for source in files)
    cited = register(file)
    unused = [name for name, key in cited.items() if not re.search(rf"\b{name}\b", text) and key not in text]
    assert not unused, "name the constant where its number is used, or link it in the `# Source` there"


def test_every_id_that_a_source_names_is_in_the_register() -> None:
    known = {key for file in CITATIONS for key in register(file).values()}
    libraries = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["dependency-groups"]["test"]
    loose = [
        (str(file.relative_to(ROOT)), name)
        for file in sources()
        for source in _SOURCE.finditer(file.read_text(encoding="utf-8"))
        for name in re.findall(r"(?<!\[)`([a-z][a-z0-9]*(?:-[a-z0-9]+)+)`", source["text"])
        if name not in known and name not in libraries
    ]
    assert not loose, "cited under an id that no register holds"


CRATE_PAGE = (ROOT / "src" / "lib.rs").read_text(encoding="utf-8")


@pytest.mark.parametrize("room", [room for room in rust_sources.rooms() if room != "cli"])
def test_room_is_on_the_crate_page(room: str) -> None:
    rooms = CRATE_PAGE.split("# The rooms")[1]
    assert re.search(rf"^//! \|.*\[`(?:mod@)?{room}`\]", rooms, re.MULTILINE)


def test_the_prelude_stays_small() -> None:
    prelude = rust_sources.modules()["prelude",]
    assert 20 <= len(prelude.exported) <= 30, "most programs need few names; the others are one room away"
