"""What sheets and woods a frame may be made of: ``glass 2 mm``, ``4-ply``, ``red oak``."""

from __future__ import annotations

import re
from typing import Annotated

from pydantic import PlainValidator, ValidationInfo

from templater.layout.choices import choice
from templater.layout.model import Material, Sheet, Wood
from templater.layout.values import fail, filled_text, read_thickness
from templater.quoting import find_nearest, list_words, quote, suggest

_PLY = re.compile(r"([1-9])[- ]ply", re.ASCII)


def _sheet(noun: str, *materials: Material) -> PlainValidator:
    """A material with its thickness; only glass may leave it out."""
    known = [material.value for material in materials]

    def read(raw: object, info: ValidationInfo) -> Sheet:
        word, _, thickness = filled_text(raw, noun).strip().partition(" ")
        if word not in known:
            near = suggest(find_nearest(word, known))
            raise fail(f"is {quote(word)}, which is not {noun}{near}", f"use {list_words(known)}")
        material = Material(word)
        if material is Material.NONE:
            if thickness:
                raise fail("is none, but has a thickness", "write none alone")
            return Sheet(material)
        if not thickness and material is not Material.GLASS:
            raise fail(f"has no thickness after {quote(word)}", f"write for example {word} 3 mm")
        return Sheet(material, read_thickness(thickness, info) if thickness else None)

    return PlainValidator(read, json_schema_input_type=str)


def _read_mat(raw: object) -> Sheet:
    text = filled_text(raw, "a mat board").strip()
    if text == Material.NONE.value:
        return Sheet(Material.NONE)
    match = _PLY.fullmatch(text)
    if match is None:
        raise fail(f"is {quote(text)}, which is not a mat board", "write for example 4-ply, or none")
    return Sheet(Material.MAT, plies=int(match.group(1)))


Glazing = Annotated[Sheet, _sheet("a glazing", Material.GLASS, Material.ACRYLIC, Material.NONE)]
Backing = Annotated[Sheet, _sheet("a backing", Material.MDF, Material.FOAM, Material.NONE)]
MatBoard = Annotated[Sheet, PlainValidator(_read_mat, json_schema_input_type=str)]
WoodName = Annotated[Wood, choice(Wood, "a wood whose weight is known")]
