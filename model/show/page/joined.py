"""The page's script: ES modules of our own, joined into one, each after those it imports from."""

from __future__ import annotations

import base64
import hashlib
import re
from functools import cache
from importlib.resources import files

FIRST = "main"
IMPORT = re.compile(r'^import \{([^}]*)\} from "\./([a-z_]+)\.mjs";\n', re.MULTILINE)
EXPORT = re.compile(r"^export (?=(?:async )?(?:function|const|class) (\w+))", re.MULTILINE)
COMMENT = re.compile(r"^\s*(?:/\*\*(?:[^*]|\*(?!/))*\*/|//[^\n]*)\n", re.MULTILINE)


@cache
def script(first: str = FIRST) -> str:
    """A module and all that it needs as one, each in a scope of its own."""
    found: dict[str, str] = {}
    _add(first, found)
    return "\n".join(found.values())


def _add(name: str, found: dict[str, str]) -> None:
    if name in found:
        return
    text = module(f"{name}.mjs")
    for _, other in IMPORT.findall(text):
        _add(other, found)
    body = IMPORT.sub(lambda line: f"const {{{_renamed(line[1])}}} = {_scope(line[2])};\n", text)
    body = EXPORT.sub("", COMMENT.sub("", body)).strip()
    names = ", ".join(EXPORT.findall(text))
    found[name] = f"const {_scope(name)} = (() => {{\n{body}\nreturn {{ {names} }};\n}})();"


def _renamed(names: str) -> str:
    return names.replace(" as ", ": ")


def _scope(name: str) -> str:
    return f"module_{name}"


def module(name: str) -> str:
    """The text of a module."""
    return (files(__package__) / "script" / name).read_text(encoding="utf-8")


@cache
def style() -> str:
    """The style sheet."""
    return (files(__package__) / "page.css").read_text(encoding="utf-8").strip()


def fingerprint(text: str) -> str:
    """What a content security policy knows a script or a style by (CSP Level 3, section 2.3.1)."""
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def policy(own: str, *more: str) -> str:
    """What a page may do: run its own script, known by its hash, show its style, and `more`."""
    allowed = (
        "default-src 'none'",
        f"script-src {fingerprint(own)}",
        f"style-src {fingerprint(style())}",
        *more,
        "base-uri 'none'",
        "form-action 'none'",
    )
    return "; ".join(allowed)
