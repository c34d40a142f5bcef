"""Everything that must hold before a change lands: lint, format, types, tests."""

from __future__ import annotations

import subprocess
import sys

CHECKS = (
    ("ruff", "check", "."),
    ("ruff", "format", "--check", "."),
    ("mypy",),
    ("pytest", "-q"),
)


def main() -> int:
    """Run every check, stop at none, and say how many failed."""
    failed = 0
    for check in CHECKS:
        print("$", " ".join(check), flush=True)  # noqa: T201
        failed += subprocess.run([sys.executable, "-m", *check], check=False).returncode != 0
    return min(failed, 1)


if __name__ == "__main__":
    sys.exit(main())
