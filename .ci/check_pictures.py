#!/usr/bin/python3
"""Checks that the pictures of the documents are what the program draws now.

    check_pictures.py DRAWN docs/pictures

DRAWN is a folder just drawn into. Lines, marks, boxes and what is written are compared; where words stand only if both
were lettered with the same font, since another runs wider or narrower. Prints one line a picture and ends with 0, else
the differences and 1.
"""

import re
import sys
from pathlib import Path
from xml.etree import ElementTree

NUMBER = re.compile(r"-?\d+(?:\.\d+)?(?:e-?\d+)?")

# Units of the picture, 4 to a millimetre in print. Another machine may round otherwise in the last place; a font of the
# same name may be of another release.
SAME_PLACE = 0.05
SAME_WORDS = 1.0

WORD_PLACES = {"x", "y", "transform", "font-family"}


def same(old, new, allowed):
    """Whether two attributes are alike but for numbers that lie close to each other."""
    if old is None or new is None or NUMBER.sub("0", old) != NUMBER.sub("0", new):
        return old == new
    return all(abs(float(a) - float(b)) <= allowed for a, b in zip(NUMBER.findall(old), NUMBER.findall(new)))


def shape_differences(old, new):
    """What differs between two elements and all in them."""
    if old.tag != new.tag or len(old) != len(new):
        yield f"{described(old)} has become {described(new)}"
        return
    if (old.text or "").strip() != (new.text or "").strip():
        yield f"{described(old)} has become {described(new)}"
    same_font = old.get("font-family") == new.get("font-family")
    for name in sorted(set(old.keys() + new.keys())):
        places_words = old.tag.endswith("}text") and name in WORD_PLACES
        if places_words and not same_font:
            continue
        if not same(old.get(name), new.get(name), SAME_WORDS if places_words else SAME_PLACE):
            yield f"{described(old)}: {name} was {shown(old.get(name))}, is {shown(new.get(name))}"
    for old_part, new_part in zip(old, new):
        yield from shape_differences(old_part, new_part)


def described(element):
    """An element's kind and words: text 'tierce 28 s'."""
    kind, words = element.tag.split("}")[-1], (element.text or "").strip()
    return f"{kind} '{words}'" if words else f"{kind} of {len(element)} parts" if len(element) else kind


def shown(value):
    """An attribute, cut short."""
    return "absent" if value is None else value if len(value) <= 60 else value[:57] + "..."


def main(drawn, kept):
    drawn, kept = ({file.name: file for file in Path(folder).glob("*.svg")} for folder in (drawn, kept))
    if not drawn:
        sys.exit("nothing was drawn")
    wrong = False
    for name in sorted(drawn.keys() | kept.keys()):
        if name not in drawn or name not in kept:
            differences = ["is not drawn any more" if name in kept else "is not kept"]
        else:
            try:
                old, new = (ElementTree.parse(folder[name]).getroot() for folder in (kept, drawn))
                differences = list(shape_differences(old, new))
            except ElementTree.ParseError as problem:
                differences = [f"is no XML in one of the folders: {problem}"]
        if differences:
            wrong = True
            print(f"{name} is not what the program draws:", *differences[:10], sep="\n  ")
        else:
            print(f"{name}: as the program draws it")
    return 1 if wrong else 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2]))
