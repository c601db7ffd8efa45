"""Builds the wheel as it is released: the same bytes from the same source and compiler, in whatever folder it is built.

A compiler writes the names of the builder's folders into what it makes, and the list of parts in the wheel (its SBOM)
says when and where it was made. The folders are replaced by fixed names, the time is that of the commit, and the wheel
is packed again with what changed. ``make wheel`` builds it; ``make wheel-twice`` builds it in two folders and compares.
"""

import argparse
import base64
import hashlib
import os
import subprocess
import sys
import tempfile
import zipfile
from collections.abc import Iterator
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
# The earliest time that an archive can hold.
EARLIEST = (1980, 1, 1, 0, 0, 0)


def folders(source: Path, target: Path) -> dict[str, str]:
    """The folders whose names would get into the wheel, and what stands for each."""
    home = Path(os.environ.get("CARGO_HOME", Path.home() / ".cargo"))
    rustup = Path(os.environ.get("RUSTUP_HOME", Path.home() / ".rustup"))
    return {str(target): "target", str(source): "foilwork", str(home): "cargo", str(rustup): "rustup"}


def committed() -> str:
    """Seconds of the commit that is built, for all that asks for a time; the earliest there is without a history."""
    asked = subprocess.run(
        ["git", "-C", str(ROOT), "log", "-1", "--format=%ct"], capture_output=True, text=True, check=False
    )
    return asked.stdout.strip() or "315532800"


def build(source: Path, target: Path, out: Path) -> Path:
    """The wheel as maturin builds it from an unpacked source distribution, with the folders renamed by the compiler."""
    flags = [f"--remap-path-prefix={folder}={name}" for folder, name in folders(source, target).items()]
    env = os.environ | {
        "SOURCE_DATE_EPOCH": committed(),
        "CARGO_ENCODED_RUSTFLAGS": "\x1f".join(flags),
        "CARGO_TARGET_DIR": str(target),
    }
    command = [sys.executable, "-m", "maturin", "build", "--quiet", "--release", "--locked", "--out", str(out)]
    subprocess.run(command, cwd=source, env=env, check=True)
    (wheel,) = out.glob("*.whl")
    return wheel


def renamed(entries: Iterator[tuple[str, bytes]], names: dict[str, str]) -> Iterator[tuple[str, bytes]]:
    """The entries, without the builder's folders in the list of parts."""
    for name, content in entries:
        if name.endswith(".cyclonedx.json"):
            for folder, stands in names.items():
                content = content.replace(folder.encode(), stands.encode())
        yield name, content


def line_of_record(name: str, content: bytes) -> str:
    """The line that says what a file of the wheel holds."""
    digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
    return f"{name},sha256={digest},{len(content)}\n"


def repack(wheel: Path, names: dict[str, str]) -> None:
    """Packs the wheel again, the record last, and refuses one that still names a folder of the builder."""
    with zipfile.ZipFile(wheel) as old:
        record = next(name for name in old.namelist() if name.endswith(".dist-info/RECORD"))
        modes = {info.filename: info.external_attr for info in old.infolist()}
        entries = dict(renamed(((n, old.read(n)) for n in old.namelist() if n != record), names))
    left = [
        f"{name} names {folder}" for name, content in entries.items() for folder in names if folder.encode() in content
    ]
    if left:
        sys.exit("\n".join(left))
    entries[record] = ("".join(line_of_record(n, c) for n, c in entries.items()) + f"{record},,\n").encode()
    made = wheel.with_suffix(".part")
    with zipfile.ZipFile(made, "w", zipfile.ZIP_DEFLATED, compresslevel=9) as new:
        for name, content in entries.items():
            info = zipfile.ZipInfo(name, EARLIEST)
            info.external_attr, info.compress_type = modes[name], zipfile.ZIP_DEFLATED
            new.writestr(info, content)
    made.replace(wheel)


def wheel_of(folder: Path, target: Path, out: Path) -> Path:
    """Packs the source distribution, unpacks it in the folder, builds there and packs the wheel again."""
    subprocess.run([sys.executable, "-m", "maturin", "sdist", "--out", str(folder)], cwd=ROOT, check=True)
    (archive,) = folder.glob("*.tar.gz")
    subprocess.run(["tar", "--extract", "--gzip", "--directory", str(folder), "--file", str(archive)], check=True)
    archive.unlink()
    (source,) = folder.glob("foilwork-*")
    wheel = build(source, target, out)
    repack(wheel, folders(source, target))
    return wheel


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--out", type=Path, default=ROOT / "target" / "wheel", help="where the wheel goes")
    parser.add_argument("--twice", action="store_true", help="build in two folders, each from nothing, and compare")
    arguments = parser.parse_args()
    digests = set()
    for _ in range(2 if arguments.twice else 1):
        with tempfile.TemporaryDirectory() as folder:
            target = Path(folder) / "target" if arguments.twice else ROOT / "target"
            out = Path(folder) / "out"
            built = wheel_of(Path(folder), target, out)
            digests.add(digest := hashlib.sha256(built.read_bytes()).hexdigest())
            arguments.out.mkdir(parents=True, exist_ok=True)
            kept = arguments.out / built.name
            kept.write_bytes(built.read_bytes())
        print(f"{digest}  {kept}")
    if len(digests) > 1:
        sys.exit("the two wheels differ")


if __name__ == "__main__":
    main()
