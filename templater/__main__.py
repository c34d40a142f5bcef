"""``python -m templater`` is the command line."""

import signal
import sys

_INTERRUPTED = 130
"""The exit code for it, known before the program's own list of them is there."""

_ENDING_SIGNALS = ("SIGTERM", "SIGHUP", "SIGINT")
"""Those that a run heeds, known before the program's own list of them is there."""


def main() -> None:
    """Run the command line; no traceback either where it is interrupted as it begins or ends."""
    try:
        _run()
    except KeyboardInterrupt:
        sys.stderr.write("interrupted\n")
        raise SystemExit(_INTERRUPTED) from None
    finally:
        # Python remembers an interrupt that strikes code run from text, as dataclasses have it, until
        # the next such code; "python -m" would then end by the signal, whatever exit code it is given.
        exec("")


def _run() -> None:
    """From the first signal that is heeded until nothing is left that could be interrupted."""
    numbers = [getattr(signal, name) for name in _ENDING_SIGNALS if hasattr(signal, name)]
    for number in numbers:
        if signal.getsignal(number) is signal.SIG_DFL:
            signal.signal(number, signal.default_int_handler)
    try:
        from templater.cli import main as run_command

        run_command()
    finally:
        for number in numbers:
            signal.signal(number, signal.SIG_IGN)


if __name__ == "__main__":
    main()
