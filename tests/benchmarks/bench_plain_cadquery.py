"""By hand: `python tests/benchmarks/bench_plain_cadquery.py [PAIRS]`. Against a plain CadQuery script.

Both make the sheets and members of the sample from the same layout and save STEP and GLB, each in a
fresh process, timed after its imports. The script makes piece by piece; then once more with a cache,
so that equal pieces are made once: what is left is not owed to sharing.
"""

from __future__ import annotations

import json
import subprocess
import sys
import tempfile
from pathlib import Path

from timing import in_turn, medians, told

OURS = ("by_ribwright.py",)
ONE_BY_ONE = ("plain_cadquery.py",)
ONCE = ("plain_cadquery.py", "once")
HERE = Path(__file__).parent


def made(way: tuple[str, ...], folder: Path) -> dict[str, float]:
    """What one way takes in a process of its own."""
    script, *options = way
    command = [sys.executable, str(HERE / script), str(folder), *options]
    done = json.loads(subprocess.run(command, stdout=subprocess.PIPE, check=True).stdout)
    return {str(key): float(value) for key, value in done.items()}


def compare(way: tuple[str, ...], what: str, wanted: tuple[str, str], count: int, folder: Path) -> None:
    pairs = in_turn(count, lambda: made(OURS, folder), lambda: made(way, folder))
    times = [(ours["build"] + ours["save"], other["build"] + other["save"]) for ours, other in pairs]
    told(f"{what} / ribwright", [other / ours for ours, other in times], wanted[0], medians(times))
    ours, other = pairs[-1]
    assert abs(other["mm3"] / ours["mm3"] - 1) < 1e-9, "they made different pieces"
    for name, done in (("ribwright", ours), (what, other)):
        print(f"  {name}:", ", ".join(f"{key} {value:.4g}" for key, value in done.items()))
    print(f"  STEP {other['step'] / ours['step']:.1f} times as large, wanted {wanted[1]};", end=" ")
    print(f"GLB {other['glb'] / ours['glb']:.1f} times", flush=True)


if __name__ == "__main__":
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    with tempfile.TemporaryDirectory() as room:
        compare(ONE_BY_ONE, "plain script", ("6 at least", "5 at least"), count, Path(room))
        compare(ONCE, "equal pieces once", ("nothing stated", "nothing stated"), count, Path(room))
