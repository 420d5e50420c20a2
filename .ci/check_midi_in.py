#!/usr/bin/python3
"""Writes MIDI files by another library than the program's own and checks that the program reads them as they are meant.

    check_midi_in.py READER FOLDER [DRAFT.mid...]

READER is the built program of tests/Revoicer.Benchmarks; the files are written into FOLDER. Files of exact ticks have to come
through exactly, played ones on the grid they were played by, rolls on their last stroke. Drafts, each with its arrangement
file beside it, have to come through with every stroke on its beat. Prints a line for each kind of file and ends with 0, else
the differences and 1. Needs mido (Debian's python3-mido).
"""

import json
import os
import random
import subprocess
import sys
from fractions import Fraction

import mido

SCALE = [60, 62, 64, 65, 67, 69, 71, 72, 74, 76, 77, 79]


def track_of(notes, division, name=None, channel=0, first=(), off_as_on=False, shift=None):
    """A track of (start, length, pitch) in quarters; the shift moves a start by ticks."""
    events = [(0, 0, mido.MetaMessage("track_name", name=name))] if name else []
    events += [(tick, 1, message) for tick, message in first]
    for start, length, pitch in notes:
        on = max(0, round(start * division) + (shift(start) if shift else 0))
        events.append((on, 3, mido.Message("note_on", note=pitch, velocity=80, channel=channel)))
        kind, velocity = ("note_on", 0) if off_as_on else ("note_off", 64)
        events.append((round((start + length) * division), 2, mido.Message(kind, note=pitch, velocity=velocity, channel=channel)))
    track, before = mido.MidiTrack(), 0
    for tick, _, message in sorted(events, key=lambda e: e[:2]):
        track.append(message.copy(time=tick - before))
        before = tick
    return track


def head(tempo, upper, lower, *more):
    return [(0, mido.MetaMessage("set_tempo", tempo=mido.bpm2tempo(tempo))), (0, mido.MetaMessage("time_signature", numerator=upper, denominator=lower)), *more]


def line(steps, count, seed):
    """A tune of notes one to three steps long, each beginning where the one before ends."""
    chance, notes, at = random.Random(seed), [], Fraction(0)
    for _ in range(count):
        length = Fraction(chance.randint(1, 3), steps)
        notes.append((at, length, chance.choice(SCALE)))
        at += length
    return notes


def exact_files():
    """(name, file, voices): files whose ticks say exactly what is meant."""
    for division in (24, 96, 120, 192, 384, 480, 960, 1024, 15360):
        for steps in (1, 2, 3, 4, 6, 8, 12):
            if division % steps:
                continue
            tune, bass = line(steps, 40, steps), [(Fraction(4 * i), Fraction(4), 36 + i) for i in range(10)]
            file = mido.MidiFile(type=1, ticks_per_beat=division)
            file.tracks.append(track_of([], division, "Gulls", first=head(30, 4, 4)))
            file.tracks.append(track_of(tune, division, "Upper", off_as_on=steps % 2 == 0))
            file.tracks.append(track_of(bass, division, "Lower", channel=1))
            yield f"exact-{division}-{steps}", file, {"Upper": tune, "Lower": bass}
    tune = line(2, 30, 5)
    file = mido.MidiFile(type=0, ticks_per_beat=480)
    odd = [
        (0, mido.Message("sysex", data=[126, 127, 9, 1])),
        (0, mido.Message("program_change", program=14)),
        (100, mido.Message("pitchwheel", pitch=500)),
        (200, mido.Message("control_change", control=64, value=127)),
        (300, mido.MetaMessage("lyrics", text="fog")),
        (400, mido.MetaMessage("sequencer_specific", data=(1, 2, 3))),
        (0, mido.MetaMessage("key_signature", key="Bbm")),
        (960, mido.MetaMessage("set_tempo", tempo=400000)),
    ]
    file.tracks.append(track_of(tune, 480, "Gulls", channel=2, first=head(90, 3, 4, *odd)))
    yield "exact-one-track", file, {"channel 3": tune}


def played_files():
    """Tunes as played on a keyboard, out by up to 12 ms, and rolls of four strokes 60 ms apart that ring on."""
    for tempo in (60, 84, 100, 132):
        for steps in (1, 2, 3, 4):
            chance, division = random.Random(tempo * steps), 480
            most = int(0.012 * tempo / 60 * division)
            tune = line(steps, 60, tempo + steps)
            file = mido.MidiFile(type=1, ticks_per_beat=division)
            file.tracks.append(track_of(tune, division, "Played", first=head(tempo, 4, 4), shift=lambda _: chance.randint(-most, most)))
            yield f"played-{tempo}-{steps}", file, {"Played": tune}
    for tempo in (60, 84, 100, 125):
        division, step = 960, round(0.06 * tempo / 60 * 960)
        leads = {48: 3, 55: 2, 64: 1, 72: 0}
        chords = [(Fraction(2 * i), Fraction(2), pitch) for i in range(1, 9) for pitch in leads]
        file = mido.MidiFile(type=1, ticks_per_beat=division)
        file.tracks.append(track_of([], division, "Gulls", first=head(tempo, 4, 4)))
        for pitch, lead in leads.items():
            own = [n for n in chords if n[2] == pitch]
            ringing = [(start, Fraction(3, 2), p) for start, _, p in own]
            file.tracks.append(track_of(ringing, division, f"Bell {pitch}", shift=lambda _, by=lead * step: -by))
        yield f"rolled-{tempo}", file, {f"Bell {p}": [n for n in chords if n[2] == p] for p in leads}


def read(reader, names):
    """The notes of each voice of each file, by the program."""
    said = subprocess.run([reader, "passage", *names], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, check=False)
    files, voice = {}, None
    for told in said.stdout.splitlines():
        word, _, rest = told.partition(" ")
        if word == "file":
            files[rest] = {}
            current = files[rest]
        elif word == "voice":
            voice = current.setdefault(rest, [])
        elif word != "bars":
            start, length, pitch = told.split()
            voice.append((Fraction(start), Fraction(length), int(pitch)))
    return files, said.stderr


def differences(meant, found, with_lengths):
    if list(meant) != list(found):
        return [f"voices {list(found)}, not {list(meant)}"]
    wrong = []
    for voice, notes in meant.items():
        # A note is cut where its own pitch is struck again.
        for expected, got in zip(sorted(notes, key=lambda n: (n[0], n[2])), found[voice]):
            if (expected if with_lengths else expected[::2]) != (got if with_lengths else got[::2]):
                wrong.append(f"{voice}: {expected} is read as {got}")
        if len(notes) != len(found[voice]):
            wrong.append(f"{voice}: {len(found[voice])} notes, not {len(notes)}")
    return wrong


def draft_differences(found, arrangement):
    """What is wrong with the strokes of a draft; whole beats of lead-in may stand before it."""
    transposition = arrangement["tower"]["transposition"]
    meant = sorted((Fraction(s["beat"]), s["midi"] + transposition) for s in arrangement["strokes"])
    notes = sorted((start, pitch) for voice in found.values() for start, _, pitch in voice)
    lead_in = notes[0][0] - meant[0][0] if notes and meant else 0
    late = [(start + lead_in, pitch) for start, pitch in meant]
    return [] if late == notes else [f"{len(set(late) ^ set(notes))} strokes differ, such as {sorted(set(late) ^ set(notes))[:4]}"]


def main(reader, folder, drafts):
    code = 0
    for files, with_lengths in ((list(exact_files()), True), (list(played_files()), False)):
        paths = {name: os.path.join(folder, f"{name}.mid") for name, _, _ in files}
        for name, file, _ in files:
            file.save(paths[name])
        found, said = read(reader, paths.values())
        for name, _, meant in files:
            wrong = differences(meant, found[paths[name]], with_lengths)
            if with_lengths:
                wrong += [told for told in said.splitlines() if told.startswith(f"{paths[name]}:")]
            if wrong:
                print(f"{name}:", *wrong[:20], sep="\n  ")
                code = 1
        print(f"{len(files)} files, {'exactly' if with_lengths else 'as meant'}" if code == 0 else f"of {len(files)} files not all")
    found, _ = read(reader, drafts) if drafts else ({}, "")
    for draft in drafts:
        with open(draft.removesuffix(".mid") + ".json", encoding="utf-8") as file:
            wrong = draft_differences(found[draft], json.load(file))
        print(f"{draft}:", *(wrong or ["every stroke on its beat"]))
        code = 1 if wrong else code
    return code


if __name__ == "__main__":
    if len(sys.argv) < 3:
        sys.exit(__doc__)
    sys.exit(main(sys.argv[1], sys.argv[2], sys.argv[3:]))
