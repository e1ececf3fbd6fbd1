"""The walls of the house: which floor may lean on which, what is imported when, what lies where."""

from __future__ import annotations

import ast
import subprocess
import sys
import tomllib
from collections.abc import Iterator
from pathlib import Path

import hostile_files
import pytest

ROOT = Path(__file__).parents[1]
FOLDERS = {"ribwright": ROOT / "model", "ribwright.cli": ROOT / "cli"}

GROUND = {"errors", "files", "findings", "place", "printable", "units", "recipe", "pieces", "roles", "terms"}
GROUND |= {"choosing", "codes", "heading"}
STANDS_ON: dict[str, set[str]] = {
    **dict.fromkeys(GROUND, GROUND),
    "catalog": GROUND,
    "description": GROUND | {"catalog"},
    "envelope": GROUND | {"catalog", "description"},
    "intake": GROUND | {"description", "envelope"},
    "layout": GROUND | {"catalog", "description", "envelope"},
    "solids": GROUND,
    "measure": GROUND | {"catalog", "solids"},
    "audit": GROUND | {"catalog", "solids", "measure"},
    "order": GROUND | {"catalog", "measure"},
    "steps": GROUND | {"measure"},
    "drawing": GROUND,
    "exchange": GROUND | {"meanwhile", "catalog", "solids", "measure", "order", "drawing"},
    "papers": GROUND | {"solids", "measure", "order", "steps", "drawing", "exchange"},
    "show": GROUND | {"catalog", "solids", "measure", "audit", "order", "steps", "exchange"},
    "raising": GROUND | {"description", "intake", "layout", "solids", "measure"},
    "meanwhile": GROUND,
    "making": GROUND | {"audit", "order"},
    "outputs": GROUND | {"audit", "making", "meanwhile", "exchange", "order", "papers", "show"},
    "live": GROUND
    | {
        "meanwhile",
        "description",
        "intake",
        "layout",
        "order",
        "audit",
        "steps",
        "exchange",
        "show",
        "raising",
    },
    "book": GROUND
    | {"meanwhile", "description", "intake", "order", "audit", "exchange", "raising", "outputs"},
    "cli": GROUND
    | {"description", "intake", "layout", "order", "audit", "exchange", "show", "raising", "outputs", "book"}
    | {"steps", "drawing", "papers", "live"},
}
"""Floor or module of the package: what of the package it may import, besides itself."""

KERNEL = {"solids", "measure", "audit", "exchange", "show"}  # may import OCP
EVERYWHERE_LATE = {"cadquery", "vtk", "vtkmodules", "gmsh", "trimesh", "manifold3d", "scipy", "matplotlib"}
FORMATS = {"ifcopenshell", "lib3mf", "pxr", "ezdxf"}
LIVE = {"aiohttp", "multidict", "tomlkit", "watchfiles"}
ON_REQUEST = {*FORMATS, *LIVE, "distributed"}  # for a format each, for a live page, for a cluster
EVERYWHERE_LATE |= ON_REQUEST | {"reportlab"}
# Pictures, formats, a cluster, papers: modules that are themselves imported only when asked for.
MAY_LOAD = {"vtkmodules": {"show"}, "distributed": {"book"}, **{name: {"exchange"} for name in FORMATS}}
MAY_LOAD |= {"reportlab": {"drawing"}, "ezdxf": {"exchange", "drawing"}, **{name: {"live"} for name in LIVE}}


def modules() -> list[tuple[str, Path]]:
    """(floor, file) of every module of the package."""
    found = []
    for package, folder in FOLDERS.items():
        for path in sorted(folder.rglob("*.py")):
            inside = path.relative_to(folder)
            floor = "cli" if package.endswith(".cli") else inside.parts[0].removesuffix(".py")
            found.append((floor, path))
    return [(floor, path) for floor, path in found if path != ROOT / "model" / "__init__.py"]


def dotted(path: Path) -> list[str]:
    """The package a module stands in, as names."""
    if path.is_relative_to(ROOT / "cli"):
        return ["ribwright", "cli", *path.relative_to(ROOT / "cli").parts[:-1]]
    return ["ribwright", *path.relative_to(ROOT / "model").parts[:-1]]


def imported(path: Path, nodes: Iterator[ast.AST]) -> Iterator[str]:
    """Full names of what the given nodes import."""
    for node in nodes:
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = dotted(path)[: len(dotted(path)) - node.level + 1] if node.level else []
            stem = [*base, *(node.module.split(".") if node.module else [])]
            yield from (".".join([*stem, alias.name]) for alias in node.names)


def parsed(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def at_module_level(tree: ast.Module) -> Iterator[ast.AST]:
    """Nodes that run when the module is imported: not those inside functions or under TYPE_CHECKING."""
    waiting: list[ast.AST] = list(tree.body)
    while waiting:
        node = waiting.pop()
        if isinstance(node, ast.FunctionDef | ast.AsyncFunctionDef):
            continue
        if isinstance(node, ast.If) and "TYPE_CHECKING" in ast.unparse(node.test):
            continue
        yield node
        waiting.extend(ast.iter_child_nodes(node))


IDS = [str(path.relative_to(ROOT)) for _, path in modules()]


@pytest.mark.parametrize(("floor", "path"), modules(), ids=IDS)
def test_a_floor_leans_only_on_those_below(floor: str, path: Path) -> None:
    used = {
        name.split(".")[1]
        for name in imported(path, ast.walk(parsed(path)))
        if name.startswith("ribwright.") and name != "ribwright.__version__"
    }
    assert used <= STANDS_ON[floor] | {floor}


def test_every_arrow_between_floors_is_used() -> None:
    """What a floor may lean on and does not is no arrow."""
    used: dict[str, set[str]] = {floor: set() for floor in STANDS_ON}
    for floor, path in modules():
        names = (name.split(".") for name in imported(path, ast.walk(parsed(path))))
        used[floor] |= {parts[1] for parts in names if parts[0] == "ribwright" and len(parts) > 1}
    idle = {floor: allowed - GROUND - used[floor] for floor, allowed in STANDS_ON.items()}
    assert {floor: arrows for floor, arrows in idle.items() if arrows} == {}


WITNESS = {
    "ribwright.solids.properties",
    *(
        f"ribwright.measure.{name}"
        for name in (
            "bends",
            "clad_planes",
            "faces",
            "laid_sheets",
            "laps",
            "member",
            "nested",
            "sheet",
            "tab_boxes",
        )
    ),
    *(f"ribwright.{name}" for name in GROUND - {"recipe", "files", "errors"}),
}
"""The modules that the audit may see: of solids their triangles, of measure what asks solids alone."""


@pytest.mark.parametrize(
    "path", [path for floor, path in modules() if floor == "audit"], ids=lambda p: p.name
)
def test_the_witness_never_saw_the_layout(path: Path) -> None:
    """Nor a recipe, nor what realises one; the catalogue only where labels are held against it."""
    names = {name for name in imported(path, ast.walk(parsed(path))) if name.startswith("ribwright.")}
    seen = {name.rsplit(".", 1)[0] for name in names} - {"ribwright.audit"}
    seen = {name for name in seen if not name.startswith("ribwright.audit.")}
    rows = {name for name in seen if name.startswith("ribwright.catalog.")}
    assert rows == set() or path.name == "labels.py"
    assert seen - rows <= WITNESS


@pytest.mark.parametrize(
    "path", [path for floor, path in modules() if floor == "layout"], ids=lambda p: p.name
)
def test_layout_knows_what_was_asked_by_its_types_alone(path: Path) -> None:
    """What follows from them is the envelope's."""
    names = {name.rsplit(".", 1)[0] for name in imported(path, ast.walk(parsed(path)))}
    asked = {name for name in names if name.startswith("ribwright.description")}
    assert asked <= {f"ribwright.description.{name}" for name in ("building", "opening", "skin", "steel")}


@pytest.mark.parametrize(("floor", "path"), modules(), ids=IDS)
def test_the_kernel_is_imported_only_where_solids_are_handled(floor: str, path: Path) -> None:
    roots = {name.split(".")[0] for name in imported(path, at_module_level(parsed(path)))}
    if floor not in KERNEL:
        assert "OCP" not in roots
    assert {name for name in roots & EVERYWHERE_LATE if floor not in MAY_LOAD.get(name, set())} == set()


def test_packages_listed_are_the_folders_there_are() -> None:
    listed = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["setuptools"][
        "packages"
    ]
    there = {".".join(dotted(path)) for folder in FOLDERS.values() for path in folder.rglob("__init__.py")}
    assert set(listed) == there
    assert len(listed) == len(set(listed))


def test_every_folder_with_modules_is_a_package() -> None:
    bare = {path.parent for folder in FOLDERS.values() for path in folder.rglob("*.py")}
    assert [folder for folder in sorted(bare) if not (folder / "__init__.py").is_file()] == []


def test_the_long_runs_by_hand_find_their_parts() -> None:
    assert hostile_files.RUNS and all((hostile_files.HERE / part).is_file() for part in hostile_files.RUNS)


def test_the_top_level_holds_what_the_card_says() -> None:
    card = {"README.md", "DEVELOPERS.md", "pyproject.toml", "LICENSE", "model", "cli", "tests", "out"}
    if not (ROOT / ".git").exists():
        pytest.skip("not a clone: a source distribution tells nothing of what is tracked")
    listing = subprocess.run(
        ["git", "ls-files", "--cached", "--others", "--exclude-standard"],
        cwd=ROOT, capture_output=True, text=True, check=True,
    ).stdout  # fmt: skip
    top = {line.split("/")[0] for line in listing.splitlines()}
    assert {name for name in top - card if not name.startswith(".")} == set()


HEAVY = ("OCP", "numpy", "shapely", "vtkmodules", "cadquery", "trimesh", "scipy", "reportlab", *ON_REQUEST)
LIGHT_RUNS = {
    "help": (["--help"], 0),
    "version": (["--version"], 0),
    "help of raise": (["raise", "--help"], 0),
    "help of picture": (["picture", "--help"], 0),
    "help of show": (["show", "--help"], 0),
    "an unknown option": (["raise", "--no-such-option"], 2),
    "an unknown command": (["build"], 2),
    "a file that is not there": (["raise", "no-such-file.toml"], 2),
    "a description with a mistake": (["raise", "mistaken.toml"], 2),
}


def loaded_by(arguments: list[str], folder: Path) -> tuple[set[str], int]:
    """What of HEAVY is loaded after a run of the command, and its exit status."""
    (folder / "mistaken.toml").write_text('width = "30 parsecs"\n', encoding="utf-8")
    probe = (
        "import sys\n"
        "from ribwright.cli.main import run\n"
        "run(['new', 'good'])\n"
        f"status = run({arguments!r})\n"
        f"print('loaded:', *sorted(set(sys.modules) & set({HEAVY!r})), status)\n"
    )
    done = subprocess.run(
        [sys.executable, "-c", probe], cwd=folder, capture_output=True, text=True, check=True
    )
    _, *names, status = done.stdout.splitlines()[-1].split()
    return set(names), int(status)


@pytest.mark.parametrize("case", LIGHT_RUNS)
def test_help_and_complaints_load_nothing_heavy(case: str, tmp_path: Path) -> None:
    arguments, status = LIGHT_RUNS[case]
    assert loaded_by(arguments, tmp_path) == (set(), status)


MAY_COME = {
    "import ribwright": {"ribwright"},
    "from ribwright.cli.main import run; run(['--help'])": {"click", "ribwright"},
}
"""What the package and its help may load besides the standard library: these, and nothing that is added."""


@pytest.mark.parametrize("code", MAY_COME)
def test_what_comes_with_the_package_and_its_help(code: str) -> None:
    probe = f"import sys; before = set(sys.modules); {code}; print(*sorted(set(sys.modules) - before))"
    done = subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True, check=True)
    roots = {name.split(".")[0] for name in done.stdout.splitlines()[-1].split()}
    assert roots - sys.stdlib_module_names == MAY_COME[code]


def test_a_check_does_without_the_kernel(tmp_path: Path) -> None:
    assert loaded_by(["check", "good.toml"], tmp_path) == ({"numpy", "shapely"}, 0)


def test_raising_does_without_what_is_slow_to_load(tmp_path: Path) -> None:
    assert loaded_by(["raise", "good.toml"], tmp_path) == ({"OCP", "numpy", "shapely"}, 0)
