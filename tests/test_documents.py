"""What the documents say is true of the program: commands, exit codes, layouts, pictures."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
from click.testing import CliRunner

from templater.cli import commands
from templater.errors import ExitCode
from templater.layout.rule_codes import RULE_CODES

ROOT = Path(__file__).parent.parent
README = (ROOT / "README.md").read_text("utf-8")
DEVELOPERS = (ROOT / "DEVELOPERS.md").read_text("utf-8")


def _blocks(text: str, language: str) -> list[str]:
    return re.findall(rf"```{language}\n(.*?)```", text, re.DOTALL)


def test_ci_runs_exactly_the_readmes_test_command() -> None:
    _, test_command = (block.strip() for block in _blocks(README, "sh"))
    lines = (ROOT / ".ci" / "run").read_text("utf-8").splitlines()
    assert lines[-1] == test_command
    assert test_command in DEVELOPERS


def test_the_readmes_first_command_names_a_shipped_layout() -> None:
    make, _ = _blocks(README, "sh")
    (layout,) = re.findall(r"layouts/\S+\.yaml", make)
    assert (ROOT / layout).is_file()


def test_the_readmes_program_tells_where_its_layout_has_holes(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("hall.yaml").write_text(_blocks(README, "yaml")[0], "utf-8")
    (program,) = _blocks(README, "python")
    exec(compile(program, "README.md", "exec"), {})
    told = re.findall(r"^(.*): ([\d.]+) across, ([\d.]+) up$", capsys.readouterr().out, re.MULTILINE)
    # By hand, in: the pair is 16 + 3 + 16 wide over a bench from 30 to 110, so its middle is at 70; it
    # stands 7 above 34, so its top is at 61. The bell's middle is at 60, so its top at 64 1/2.
    by_hand = [
        ("Tide chart", 70 - 1.5 - 8, 61 - 2.25 + 0.5),
        ("Kelp print", 70 + 1.5 + 8 - 6, 61 - 3),
        ("Kelp print", 70 + 1.5 + 8 + 6, 61 - 3),
        ("Fog bell", 150, 64.5 - 0.5),
    ]
    assert [name for name, *_ in told] == [name for name, *_ in by_hand]
    for (_, *found), (_, *expected) in zip(told, by_hand, strict=True):
        assert [float(value) / 25.4 for value in found] == pytest.approx(expected, abs=0.001)
    assert Path("hall-kit", "kit.pdf").is_file()


@pytest.mark.parametrize("text", [README, DEVELOPERS], ids=["README", "DEVELOPERS"])
def test_every_file_that_is_named_is_there(text: str) -> None:
    for target in re.findall(r"\]\(([^)#:]+)\)", text):
        assert (ROOT / target).exists(), target
    for path in re.findall(r"`((?:templater|tests|layouts)/[\w/.-]+)`", text):
        assert (ROOT / path).exists(), path
    for path in re.findall(r"`([a-z_]+/[\w/]+\.py)`", text):
        assert (ROOT / path).exists() or (ROOT / "templater" / path).exists(), path


def test_every_exit_code_and_rule_is_told() -> None:
    told = {int(code) for code in re.findall(r"^\| (\d+) \|", README, re.MULTILINE)}
    assert told == {int(code) for code in ExitCode}
    for code in RULE_CODES:
        assert f"`{code}`" in README, code


def test_every_command_and_option_is_told() -> None:
    for name in commands.commands:
        assert f"templater {name}" in README, name
        shown = CliRunner().invoke(commands, [name, "--help"]).output
        for option in set(re.findall(r"--[a-z]+", shown)) - {"--help"}:
            assert option in README, f"{name} {option}"


def test_modules_that_developers_are_told_to_run_are_there() -> None:
    for module in re.findall(r"python -m (tests[\w.]*)", DEVELOPERS + README):
        path = ROOT / module.replace(".", "/")
        assert path.with_suffix(".py").is_file() or (path / "__main__.py").is_file(), module
