"""Faults in the settings of rules and in what is knowingly accepted."""

import pytest

from tests.layout.files import check_wide

ACCEPT = "- {rule: eye-line, for: PICK, because: the stairs put the eye higher here}"
RULE_CODES = (
    "width-over-furniture, past-the-ends, clearance, gap, eye-line, group-as-one, uneven-gaps,"
    " near-miss, balance, near-ceiling, near-corner, near-opening, door-swing or size-against-wall"
)


@pytest.mark.parametrize(
    ("old", "new", "faults"),
    [
        (
            "  gap: {",
            "  ¦gaps: {",
            [f"'gaps' is not a key of 'rules' (did you mean 'gap'?) => use {RULE_CODES}"],
        ),
        (
            "eye-line: off",
            "eye-line: ¦maybe",
            [
                "'eye-line' needs to be on or off, but is 'maybe'"
                " => write on, off or a band, {from: 2 in, to: 5 in}"
            ],
        ),
        (
            "near-miss: on",
            "door-swing: ¦{to: 3}",
            ["'door-swing' needs to be on or off, but is a mapping => write on or off"],
        ),
        (
            "near-miss: on",
            "near-miss:¦",
            ["'near-miss' has no value => write one after the colon, or remove the key"],
        ),
        (
            "{to: 12.5 %}",
            "{from: ¦5 %}",
            [
                "'from' does not apply to a rule that asks for equality: "
                "its band always starts at nothing => write 'to' alone, for example {to: 15 %}"
            ],
        ),
        (
            "near-miss: on",
            "uneven-gaps: {from: ¦1/8, to: 1/2}",
            [
                "'from' does not apply to a rule that asks for equality: "
                "its band always starts at nothing => write 'to' alone, for example {to: 1/2 in}"
            ],
        ),
        (
            "near-miss: on",
            "uneven-gaps: ¦maybe",
            [
                "'uneven-gaps' needs to be on or off, but is 'maybe'"
                " => write on, off or a band, {to: 1/2 in}"
            ],
        ),
        (
            "{to: 12.5 %}",
            "{to: ¦12.5}",
            ["'to' needs a percentage of at most 1000 %, but is '12.5' => write for example 60 %"],
        ),
        (
            "{from: 2, to: 5}",
            "¦{from: 6, to: 5}",
            ["'gap' has a 'from' that is more than its 'to' => exchange the two"],
        ),
        (
            "{from: 2, to: 5}",
            "¦{}",
            ["'gap' needs 'from' or 'to' => add one of them, or write on or off"],
        ),
        (
            "{from: 2, to: 5}",
            "{from: ¦10 %, ¦least: 5}",
            [
                "'from' needs a length, but '10 %' is not a length"
                " => write for example 23 5/8 in, 5' 7 1/2\", 60 cm or 304 mm",
                "'least' is not a key of 'gap' => use from or to",
            ],
        ),
        (
            ACCEPT,
            ACCEPT.replace("eye-line", "¦eyeline").replace("PICK", "¦picks"),
            [
                "'rule' is 'eyeline', which is not a rule (did you mean 'eye-line'?)"
                f" => use {RULE_CODES}",
                "'for' names 'picks', which is not a piece or group of this layout"
                " (did you mean 'pick'?)"
                " => name the piece or group that the finding is about",
            ],
        ),
        (
            ACCEPT,
            "- ¦{rule: eye-line, for: pick}",
            [
                "acceptance 1 needs 'because'"
                " => add for example 'because: the stairs put the eye higher here'"
            ],
        ),
        (
            ACCEPT,
            f"{ACCEPT}\n  - ¦{{rule: eye-line, for: pick, because: the same}}",
            ["'eye-line' is accepted for 'pick' already => keep one of the two"],
        ),
    ],
)
def test_rules_and_acceptances(old: str, new: str, faults: list[str]) -> None:
    check_wide(old, new, *faults)
