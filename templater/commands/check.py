"""``templater check``: where each piece goes, and whether the rules hold."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from templater.commands.telling import show, tell_idle, tell_lacking
from templater.errors import ExitCode, Fault, UsageError


@click.command(short_help="Show where each piece goes, and whether the rules hold.")
@click.argument("layout", required=False, type=click.Path(path_type=Path))
@click.option(
    "--format",
    "form",
    type=click.Choice(["table", "json"]),
    help="Tables for people, if not given, or JSON for other programs.",
)
@click.option(
    "--all", "show_all", is_flag=True, help="Also list, piece by piece, the rules that do not apply."
)
@click.option(
    "--explain", "rule", metavar="RULE", help="Tell more of one rule, such as 'gap'; 'all' lists them."
)
def check(layout: Path | None, form: str | None, show_all: bool, rule: str | None) -> None:
    """Show where each piece of LAYOUT goes, and whether the rules of the trade hold.

    Nothing is written. Where a rule is broken that the layout does not accept, the exit code is 4.
    JSON lists every rule; --explain needs no LAYOUT.
    """
    if layout is not None and rule is None:
        _check_layout(layout, is_json=form == "json", show_all=show_all)
    elif rule is not None and layout is None and not (form or show_all):
        _explain(rule)
    else:
        message = "give a LAYOUT, with --all and --format json if you like, or --explain RULE alone"
        raise UsageError([Fault(message, "for example: templater check hall.yaml --format json")])


def _check_layout(layout: Path, *, is_json: bool, show_all: bool) -> None:
    """Show the findings of one layout; ends the program where a rule is broken."""
    from templater.layout.texts import list_texts
    from templater.pipeline import count_wall, read_wall
    from templater.rules.check import check_all
    from templater.rules.model import Verdict

    wall = read_wall(layout)
    findings = check_all(wall.plan)
    if is_json:
        from templater.commands.for_programs import format_findings

        click.echo(format_findings(findings))
    else:
        from templater.commands.check_report import print_report

        names, paper = list_texts(wall.layout), wall.layout.paper.name
        counts = count_wall(wall)
        print_report(wall.plan, findings, counts, paper=paper, names=names, show_all=show_all)
    tell_idle(wall.plan, findings)
    tell_lacking(wall)
    if any(finding.verdict is Verdict.BROKEN for finding in findings):
        sys.exit(ExitCode.RULE_BROKEN)


def _explain(rule: str) -> None:
    """Show the page of a rule, or which rules there are. Raises UsageError."""
    from templater.rules.explain import explain_rule, list_rules

    show(list_rules() if rule == "all" else explain_rule(rule))
