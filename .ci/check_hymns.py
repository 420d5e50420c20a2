#!/usr/bin/python3
"""Lays the tunes that the program reads from the hymns beside what abc2midi makes of them.

    check_hymns.py [--all] PROGRAM FOLDER

PROGRAM is the built Revoicer.Benchmarks, FOLDER holds the hymns as .abc files. Of each tune (first voice, repeats
unfolded) start, length and pitch of every note must agree. Without --all a tenth is read, drawn with a fixed seed.
check_hymns.tsv lists differences in which abc2midi leaves the ABC standard, each with its reason. Ends with 1 where a
difference is not explained. Needs abc2midi (Debian's abcmidi) and mido (python3-mido).
"""

import random
import subprocess
import sys
import tempfile
from fractions import Fraction
from pathlib import Path

import mido

SEED = 1685  # any fixed number; the same tenth each time
DIVISION = 480  # ticks a quarter in abc2midi's files


def our_tunes(program, files):
    """For each file the notes as (start, length, pitch), in quarters."""
    run = subprocess.run([program, "tune", *files], capture_output=True, text=True, check=False)
    if run.returncode != 0:
        sys.exit(f"not every hymn is read:\n{run.stderr}")
    tunes = {}
    for line in run.stdout.splitlines():
        first, rest = line.split(" ", 1)
        if first == "file":
            notes = tunes[rest] = []
        else:
            length, pitch = rest.split()
            notes.append((Fraction(first), Fraction(length), int(pitch)))
    return tunes


def notes_of(track, division):
    """The notes of a track as (start, length, pitch), in quarters."""
    tick, sounding, notes = 0, {}, []
    for message in track:
        tick += message.time
        if message.type == "note_on" and message.velocity > 0:
            sounding[message.note] = tick
        elif message.type in ("note_off", "note_on") and message.note in sounding:
            start = sounding.pop(message.note)
            notes.append((Fraction(start, division), Fraction(tick - start, division), message.note))
    return sorted(notes)


def their_tune(file, folder):
    """The first voice as abc2midi reads it."""
    midi_file = Path(folder, "hymn.mid")
    midi_file.unlink(missing_ok=True)

    # -NGRA: no grace notes; -silent: its own remarks are not asked for.
    subprocess.run(
        ["abc2midi", file, "-o", midi_file, "-quiet", "-silent", "-NGRA"], capture_output=True, check=False
    )
    midi = mido.MidiFile(midi_file, charset="latin-1")
    if midi.ticks_per_beat != DIVISION:
        sys.exit(f"abc2midi writes {midi.ticks_per_beat} ticks a quarter, not {DIVISION}")
    tracks = [notes_of(track, midi.ticks_per_beat) for track in midi.tracks]
    return next(notes for notes in tracks if notes)


def is_same(our, their):
    """Whether two notes agree; abc2midi strikes a note one tick late, so that one before it has ended."""
    tick = Fraction(1, DIVISION)
    return our[2] == their[2] and abs(our[0] - their[0]) <= tick and abs(our[1] - their[1]) <= tick


def first_difference(ours, theirs):
    """What differs first, in words; None where nothing does."""
    for our, their in zip(ours, theirs):
        if not is_same(our, their):
            return "at {0}: {1} for {2}, abc2midi at {3}: {4} for {5}".format(our[0], our[2], our[1], their[0], their[2], their[1])
    if len(ours) != len(theirs):
        return f"{len(ours)} notes, abc2midi {len(theirs)}"
    return None


def explanations():
    table = Path(__file__).with_suffix(".tsv").read_text(encoding="utf-8").splitlines()
    return dict(line.split("\t") for line in table if line and not line.startswith("#"))


def main(is_all, program, folder):
    files = sorted(str(f) for f in Path(folder).glob("*.abc"))
    if not is_all:
        files = sorted(random.Random(SEED).sample(files, -(-len(files) // 10)))
    explained, agree, known, unexplained = explanations(), 0, 0, []
    ours = our_tunes(program, files)
    with tempfile.TemporaryDirectory() as work:
        for file in files:
            difference = first_difference(ours[file], their_tune(file, work))
            if difference is None:
                agree += 1
            elif Path(file).stem in explained:
                known += 1
            else:
                unexplained.append(f"{Path(file).stem}: {difference}")
    print(f"hymns: {len(files)} read, {agree} agree, {known} explained")
    for line in unexplained:
        print(f"  differs: {line}")
    return 1 if unexplained or not files else 0


if __name__ == "__main__":
    arguments = [a for a in sys.argv[1:] if a != "--all"]
    if len(arguments) != 2:
        sys.exit(__doc__)
    sys.exit(main("--all" in sys.argv, *arguments))
