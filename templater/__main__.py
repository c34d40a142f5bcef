"""``python -m templater`` is the command line."""

import signal

_INTERRUPTED = 130
"""The exit code for it, known before the program's own list of them is there."""


def main() -> None:
    """Run the command line; no traceback either where it is interrupted as it begins or ends."""
    try:
        from templater.cli import main as run_command

        run_command()
    except KeyboardInterrupt:
        raise SystemExit(_INTERRUPTED) from None
    finally:
        signal.signal(signal.SIGINT, signal.SIG_IGN)


if __name__ == "__main__":
    main()
