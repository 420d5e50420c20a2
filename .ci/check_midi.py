#!/usr/bin/python3
"""Checks a MIDI file against the arrangement file beside it, by another reader than the program's own.

    check_midi.py NAME.mid NAME.json

Exactly the arrangement's strokes must be found: sounding pitch, tick (from beat and lead), track, and the sounding
seconds up to one constant. Prints one line and ends with 0, else the differences and 1. Needs mido (Debian's
python3-mido).
"""

import json
import sys
from collections import Counter
from fractions import Fraction
from math import ceil, floor

import mido

TRACKS = {"left foot": "Pedal", "right foot": "Pedal", "left hand": "Manual", "right hand": "Manual"}


def tempi_of(arrangement):
    """The tempo map as (from in quarters, quarters a second), exact."""
    return [
        (Fraction(t["from"]), Fraction(t["unit"]) * Fraction(t["perMinute"]) / 60)
        for t in arrangement["tempi"]
    ]


def quarters_of(lead, beat, tempi):
    """How many quarters the lead fills before its beat."""
    quarters = Fraction(0)
    for index in range(len(tempi) - 1, -1, -1):
        start, speed = tempi[index]
        if index and start >= beat:
            continue
        inside = (beat - start) / speed
        if index == 0 or inside >= lead:
            return quarters + lead * speed
        quarters, lead, beat = quarters + beat - start, lead - inside, start
    return quarters


def expected_strokes(arrangement, division):
    """(track, pitch, tick) of every stroke, and each stroke's seconds in the order of the ticks."""
    tempi = tempi_of(arrangement)
    transposition = arrangement["tower"]["transposition"]
    placed = {}
    for stroke in arrangement["strokes"]:
        beat = Fraction(stroke["beat"])
        lead = quarters_of(Fraction(stroke["lead"]), beat, tempi) * division
        tick = floor(beat * division + Fraction(1, 2)) - floor(lead + Fraction(1, 2))

        # Two strokes of one bell on one tick are one note, the louder.
        key = (stroke["midi"], tick)
        if key not in placed or stroke["level"] > placed[key]["level"]:
            placed[key] = stroke

    upper, lower = (int(n) for n in arrangement["bars"][0]["meter"].split("/"))
    is_compound = lower >= 8 and upper > 3 and upper % 3 == 0
    beat_ticks = Fraction(12 if is_compound else 4, lower) * division
    first = min((tick for _, tick in placed), default=0)
    lead_in = ceil(-min(first, 0) / beat_ticks) * beat_ticks
    strokes = Counter(
        (TRACKS[s["limb"]], midi + transposition, int(tick + lead_in)) for (midi, tick), s in placed.items()
    )
    return strokes, sorted(s["at"] for s in placed.values())


def found_strokes(midi):
    """(track, pitch, tick) of every note that begins in the file."""
    strokes = Counter()
    for track in midi.tracks:
        tick = 0
        for message in track:
            tick += message.time
            if message.type == "note_on" and message.velocity > 0:
                strokes[(track.name, message.note, tick)] += 1
    return strokes


def head_differences(midi, arrangement):
    """What is wrong besides the strokes."""
    if midi.type != 1:
        yield f"format {midi.type}, not 1"
    names = [track.name for track in midi.tracks]
    if names != [arrangement["title"], "Manual", "Pedal"]:
        yield f"tracks {names}"
    for track in midi.tracks[1:]:
        programs = [m.program for m in track if m.type == "program_change"]
        if programs != [14]:
            yield f"track {track.name} has programs {programs}, not tubular bells (14)"


def time_differences(midi, at):
    """Whether the file's seconds differ from the arrangement's by one constant."""
    now, heard, slowest = 0.0, [], 0
    for message in midi:
        now += message.time
        if message.type == "set_tempo":
            slowest = max(slowest, message.tempo)
        if message.type == "note_on" and message.velocity > 0:
            heard.append(now)
    late = [h - a for h, a in zip(sorted(heard), at)]

    # A lead is rounded to a tick, a tempo to a microsecond a quarter (at least 10 ms long, so 1e-4 of the time).
    allowed = slowest / 1e6 / midi.ticks_per_beat + 1e-4 * max(now, 1)
    if late and max(late) - min(late) > allowed:
        yield f"seconds differ by {min(late):.4f} to {max(late):.4f}"


def main(midi_name, json_name):
    with open(json_name, encoding="utf-8") as file:
        arrangement = json.load(file)
    midi = mido.MidiFile(midi_name, charset="utf-8")
    expected, at = expected_strokes(arrangement, midi.ticks_per_beat)
    found = found_strokes(midi)
    differences = list(head_differences(midi, arrangement))
    differences += [f"missing: {s}" for s in sorted((expected - found).elements())]
    differences += [f"not in the arrangement: {s}" for s in sorted((found - expected).elements())]
    if not differences:
        differences += list(time_differences(midi, at))
    if differences:
        print(f"{midi_name} is not {json_name}:", *differences, sep="\n  ")
        return 1
    print(f"{midi_name}: all {sum(found.values())} strokes of {json_name}, no other")
    return 0


if __name__ == "__main__":
    if len(sys.argv) != 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2]))
