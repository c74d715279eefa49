"""Lists MIDI files as package smftest does: read.py FILE...

Mido reads strictly: a data byte above 127 is an error. It takes text as
Latin-1, which gives back every byte.
"""

import sys

import mido


def meta(track, at, message):
    if message.type == "track_name":
        yield f"track {track} name {message.name.encode('latin-1').hex()}"
    elif message.type == "marker":
        yield f"track {track} at {at} marker {message.text.encode('latin-1').hex()}"
    elif message.type == "set_tempo":
        yield f"track {track} at {at} tempo {message.tempo}"
    elif message.type == "time_signature":
        yield (
            f"track {track} at {at} meter {message.numerator}/{message.denominator},"
            f" {message.clocks_per_click} clocks,"
            f" {message.notated_32nd_notes_per_beat} thirty-seconds"
        )
    elif message.type == "end_of_track":
        yield f"track {track} at {at} end"
    else:
        yield f"track {track} at {at} stranger {message}"


def lines(file):
    yield f"format {file.type}, {len(file.tracks)} tracks, {file.ticks_per_beat} ticks"
    for number, track in enumerate(file.tracks):
        at, down = 0, {}
        for message in track:
            at += message.time
            if message.is_meta:
                yield from meta(number, at, message)
            elif message.type == "program_change":
                yield f"track {number} channel {message.channel} at {at} program {message.program}"
            elif message.type == "note_on" and message.velocity > 0:
                key = message.channel, message.note
                if key in down:
                    yield f"track {number} at {at} struck while down {key}"
                down[key] = at, message.velocity
            elif message.type in ("note_on", "note_off"):
                start, velocity = down.pop((message.channel, message.note))
                yield (
                    f"track {number} channel {message.channel} at {start}"
                    f" note {message.note} for {at - start} velocity {velocity}"
                )
            else:
                yield f"track {number} at {at} stranger {message}"
        for key in down:
            yield f"track {number} left down {key}"


def listing(name):
    try:
        return sorted(lines(mido.MidiFile(name)))
    except (EOFError, KeyError, OSError, ValueError) as error:
        return [f"refused: {error!r}"]


for name in sys.argv[1:]:
    print("\n".join([f"file {name}", *listing(name)]))
