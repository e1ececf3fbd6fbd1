"""By hand: `python tests/benchmarks/bench_raise.py [PAIRS]`. What `raise` costs, as whole processes.

Against a bare `import cadquery`; 400 ft of building against 40 ft; peak memory; GLB of the sample;
reading back the STEP of the 400 ft building, whole process less its imports.
"""

from __future__ import annotations

import statistics
import subprocess
import sys
import tempfile
from pathlib import Path

from ribwright.intake import sample_text
from timing import Ran, in_turn, medians, ran, told

CADQUERY = (sys.executable, "-c", "import cadquery")
RIBWRIGHT = (sys.executable, "-c", "from ribwright.cli.start import main; main()")
READ_BACK = """
import sys, time
from pathlib import Path
from ribwright.exchange.step import read_step
start = time.perf_counter()
model = read_step(Path(sys.argv[1]))
print(time.perf_counter() - start, sum(piece.count for piece in model.pieces))
"""
SHORT, LONG = "40 ft", "400 ft"
MEGABYTE = 1e6


def described(folder: Path, length: str) -> str:
    """The sample at another length: the name of its file in a folder."""
    text = sample_text().replace(f'length = "{SHORT}"', f'length = "{length}"')
    assert text.count(f'length = "{length}"') == 1
    name = f"{length.split(maxsplit=1)[0]}.toml"
    (folder / name).write_text(text, encoding="utf-8")
    return name


def raised(folder: Path, file: str | None = None) -> Ran:
    """`ribwright raise`, over the files of the run before."""
    stem = Path(file).stem if file else "sample"
    return ran([*RIBWRIGHT, "raise", *([file] if file else []), "--out", stem], folder)


def read_back(step: Path) -> tuple[float, int]:
    """Seconds to read a STEP file as a model, and the bodies in it."""
    done = subprocess.run(
        [sys.executable, "-c", READ_BACK, str(step)], capture_output=True, text=True, check=True
    )
    took, bodies = done.stdout.split()
    return float(took), int(bodies)


def compare(what: str, wanted: str, pairs: list[tuple[Ran, Ran]]) -> None:
    """Wall time, which is what is wanted, and processor time, which a busy machine does not stretch."""
    times = [(one.seconds, other.seconds) for one, other in pairs]
    told(what, [one / other for one, other in times], wanted, medians(times))
    times = [(one.processor, other.processor) for one, other in pairs]
    told("  of processors", [one / other for one, other in times], "nothing stated", medians(times))


def main(count: int, folder: Path) -> None:
    short, long = described(folder, SHORT), described(folder, LONG)
    raised(folder), ran(CADQUERY, folder)  # once each, so that files are in memory

    compare("raise / import cadquery", "2.5 at most",
            in_turn(count, lambda: raised(folder), lambda: ran(CADQUERY, folder)))  # fmt: skip
    compare(f"{LONG} / {SHORT}", "2 at most",
            in_turn(count, lambda: raised(folder, long), lambda: raised(folder, short)))  # fmt: skip
    for what, file in (("sample", None), (LONG, long)):
        print(
            f"peak memory, {what}: {raised(folder, file).mebibytes:.0f} MiB (wanted of the sample: under 700)"
        )
    for what in ("sample", "400"):
        sizes = [f"{(folder / what / f'model.{kind}').stat().st_size / MEGABYTE:.2f} MB of {kind.upper()}"
                 for kind in ("glb", "step", "stl")]  # fmt: skip
        print(f"files, {what}:", ", ".join(sizes), "(wanted of the sample: GLB under 4)")
    reads = [read_back(folder / "400" / "model.step") for _ in range(count)]
    print(f"STEP of {LONG} read back: {statistics.median(took for took, _ in reads):.2f} s,", end=" ")
    print(f"{reads[0][1]} bodies, wanted under 5 s; median of {count}")


if __name__ == "__main__":
    with tempfile.TemporaryDirectory() as room:
        main(int(sys.argv[1]) if len(sys.argv) > 1 else 7, Path(room))
