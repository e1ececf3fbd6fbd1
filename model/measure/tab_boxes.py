"""Where the tabs at the ends of a folded trim are, in the frame of its solid."""

from __future__ import annotations

import numpy as np

from .bends import Bends
from .end_folds import EndFold
from .faces import Vectors


def tab_box(bends: Bends, fold: EndFold, around: float, off: float) -> Vectors:
    """(8, 3) mm: corners of a box about a tab, so far around it, and so far off the leg on which it hangs."""
    (low, _, high, reach), t, bench = fold.shape.bounds, bends.thickness, bends.bench
    corners = [
        (*(fold.start + np.array([u, v]) @ fold.axes), y)
        for u in (low - around, high + around)
        for v in (off, reach + around)
        for y in (fold.at + fold.end * around, fold.at - fold.end * (t + around))
    ]
    return np.array([bench.point((x, y, z)) for x, z, y in corners])
