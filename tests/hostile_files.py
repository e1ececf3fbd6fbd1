"""The long run over hostile files, by hand: `python tests/hostile_files.py [SHARE]`; 1 is all, 0.1 a tenth.

10,000 descriptions spoilt, 500 STEP files damaged, 1,000 price files spoilt, 100 runs ended by signals.
"""

from __future__ import annotations

import resource
import subprocess
import sys
from pathlib import Path

HERE = Path(__file__).parent
RUNS = {
    "intake/test_mutations.py": 10_000,
    "exchange/test_damaged_steps.py": 500,
    "order/test_price_files.py": 1_000,
    "exchange/test_writes_are_whole.py": 100,
}


def main(share: float) -> int:
    """Runs them all; the status is how many found something."""
    bad = 0
    for script, count in RUNS.items():
        print(f"== {script} {round(count * share)}", flush=True)
        run = [sys.executable, str(HERE / script), str(round(count * share))]
        bad += subprocess.run(run, check=False).returncode != 0
    most = resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 2**20
    print(f"{bad} of {len(RUNS)} found something; no process took over {most:.2f} GiB")
    return bad


if __name__ == "__main__":
    sys.exit(main(float(sys.argv[1]) if len(sys.argv) > 1 else 1.0))
