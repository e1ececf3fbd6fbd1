"""What was found about a building that can be raised: faults to mend, and things done that must be said."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Finding:
    """One finding.

    code: short and stable ("screw-misses-steel"). where: the piece or opening it is about. text: one
    sentence for a person. fault: False for what was merely decided on the way and is worth knowing.
    """

    code: str
    where: str
    text: str
    fault: bool = True

    def __str__(self) -> str:
        return f"{self.where}: {self.text} [{self.code}]"
