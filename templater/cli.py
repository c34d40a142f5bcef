"""The command line: what all commands share, from the first word that is typed to the exit code."""

from __future__ import annotations

import codecs
import os
import sys
from io import TextIOWrapper
from typing import Any, NoReturn

import click

from templater import __version__
from templater.commands.arrange import arrange
from templater.commands.calibrate import calibrate
from templater.commands.check import check
from templater.commands.kit import kit
from templater.commands.measure import measure
from templater.commands.new import new
from templater.commands.proof import proof
from templater.commands.telling import name_lacking_signs, tell
from templater.errors import ExitCode, TemplaterError
from templater.quoting import show_path
from templater.to_files.held_signals import heed_what_was_asked, list_in_place, signals_heeded

_EXIT_CODES = """\b
Exit codes:
  0    done
  1    a fault of the program
  2    wrong usage
  3    the layout is missing, cannot be read or cannot be placed, or needs too many sheets
  4    (check) a rule is broken and not accepted
  5    cannot write
  6    the proof failed
  130  interrupted
"""


class _Commands(click.Group):
    """The commands in the order in which they are used; a fault that the user can mend ends them."""

    def list_commands(self, ctx: click.Context) -> list[str]:  # noqa: ARG002  # click's interface
        """As they were added, and not by the alphabet."""
        return list(self.commands)

    def invoke(self, ctx: click.Context) -> Any:
        """Run a command; an error becomes lines on stderr and an exit code."""
        try:
            return super().invoke(ctx)
        except TemplaterError as error:
            heed_what_was_asked()  # for an interrupt that a library swallowed may be behind it
            tell(str(error))
            sys.exit(error.exit_code)


@click.group(cls=_Commands, epilog=_EXIT_CODES, context_settings={"help_option_names": ["-h", "--help"]})
@click.version_option(__version__, prog_name="templater")
def commands() -> None:
    """Turn a layout of framed pieces on a wall into paper templates that show every hole.

    A template is printed at full size, taped to the wall and drilled through. A layout is a text file
    that describes the wall and what is to hang on it.

    \b
    To begin:
      templater new hall.yaml     an example, to be changed to your own wall
      templater check hall.yaml   where each piece goes, and what to heed
      templater kit hall.yaml     makes the folder hall-kit; print kit.pdf in it

    'templater COMMAND --help' tells more of a command.
    """  # noqa: D301  # click's mark for lines that stay as they are


for command in (new, check, arrange, kit, calibrate, measure, proof):
    commands.add_command(command)


def _give_up_writing(error: OSError) -> NoReturn:
    """End where what is printed cannot be written, such as on a full disk."""
    null = os.open(os.devnull, os.O_WRONLY)
    os.dup2(null, sys.stdout.fileno())  # or Python would try once more as it ends, and complain
    if not isinstance(error, BrokenPipeError):  # whoever reads the pipe has seen enough
        click.echo(f"cannot write: {error.strerror or error}", err=True)
    sys.exit(ExitCode.CANNOT_WRITE)


def _open_closed_streams() -> None:
    """Lead a standard stream that is closed to nowhere, lest one of a kit's files takes its number."""
    while (handle := os.open(os.devnull, os.O_RDWR)) <= 2:
        pass
    os.close(handle)
    sys.stdout = sys.stdout or os.fdopen(1, "w", encoding="utf-8")
    sys.stderr = sys.stderr or os.fdopen(2, "w", encoding="utf-8")


def _name_what_streams_lack() -> None:
    """Let signs that a stream's encoding lacks be told by name: a minus must not become a question."""
    codecs.register_error("templater.named", name_lacking_signs)
    for stream in (sys.stdout, sys.stderr):
        if isinstance(stream, TextIOWrapper):
            stream.reconfigure(errors="templater.named")


def main() -> None:
    """Run the command line; whatever happens, no traceback."""
    _open_closed_streams()
    _name_what_streams_lack()
    with signals_heeded():
        _run_to_its_end()


def _run_to_its_end() -> None:
    """Run the commands; every way in which they can end has its words and its exit code."""
    try:
        _run_commands()
    except OSError as error:
        _give_up_writing(error)
    except SystemExit as end:  # 1 is what click and rich answer to a pipe that nobody reads
        sys.exit(ExitCode.CANNOT_WRITE if end.code == 1 else end.code)
    except (click.exceptions.Abort, KeyboardInterrupt):
        _tell_interrupted()
        sys.exit(ExitCode.INTERRUPTED)
    except click.ClickException as error:
        error.show()
        sys.exit(ExitCode.USAGE)
    except Exception as error:
        kind = type(error).__name__
        click.echo(f"a fault of the program ({kind}: {error})", err=True)
        click.echo("  no kit is left half written; please report it together with the layout", err=True)
        sys.exit(ExitCode.PROGRAM_FAULT)


def _run_commands() -> None:
    """Run the commands; where the run was asked to end it ends so, whatever a library made of that."""
    try:
        commands(prog_name="templater", standalone_mode=False)
        sys.stdout.flush()
    finally:
        heed_what_was_asked()


def _tell_interrupted() -> None:
    """Say so, and what the run had put in its place before."""
    click.echo("interrupted", err=True)
    for path in list_in_place():
        click.echo(f"  {show_path(path)} is whole and in its place", err=True)
