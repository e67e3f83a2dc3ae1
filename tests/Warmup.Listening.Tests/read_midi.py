"""Reads Standard MIDI Files with mido, strictly, and prints what is in them as JSON: one object a file."""
import json
import sys

import mido


def read(path):
    # clip=False: a data byte above 127 is an error, not repaired.
    file = mido.MidiFile(path, clip=False)
    found = {"type": file.type, "ticks": file.ticks_per_beat, "seconds": file.length, "ends": [],
             "notes": [], "lyrics": [], "markers": [], "tempos": [], "signatures": [], "names": []}
    for track in file.tracks:
        tick = 0
        bend, span, parameter, program = [0] * 16, [2] * 16, [(127, 127)] * 16, [0] * 16
        sounding = {}
        for message in track:
            tick += message.time
            kind = message.type
            if kind == "pitchwheel":
                bend[message.channel] = message.pitch
            elif kind == "program_change":
                program[message.channel] = message.program
            elif kind == "control_change":
                coarse, fine = parameter[message.channel]
                if message.control == 101:
                    parameter[message.channel] = (message.value, fine)
                elif message.control == 100:
                    parameter[message.channel] = (coarse, message.value)
                elif message.control == 6 and parameter[message.channel] == (0, 0):
                    span[message.channel] = message.value
            elif kind == "note_on" and message.velocity > 0:
                key = (message.channel, message.note)
                if key in sounding:
                    raise ValueError(f"{path}: {key} begins at {tick} while it sounds")
                sounding[key] = {"tick": tick, "channel": message.channel, "velocity": message.velocity,
                                 "program": program[message.channel],
                                 "cents": 100 * message.note + bend[message.channel] / 8192 * 100 * span[message.channel]}
            elif kind in ("note_off", "note_on"):
                note = sounding.pop((message.channel, message.note))
                note["length"] = tick - note["tick"]
                found["notes"].append(note)
            elif kind == "lyrics":
                found["lyrics"].append({"tick": tick, "text": message.text})
            elif kind == "marker":
                found["markers"].append({"tick": tick, "text": message.text})
            elif kind == "set_tempo":
                found["tempos"].append({"tick": tick, "microseconds": message.tempo})
            elif kind == "time_signature":
                found["signatures"].append({"tick": tick, "numerator": message.numerator, "denominator": message.denominator})
            elif kind == "track_name":
                found["names"].append(message.name)
        if sounding:
            raise ValueError(f"{path}: {list(sounding)} never end")
        found["ends"].append(tick)
    found["notes"].sort(key=lambda n: (n["tick"], n["channel"]))
    return found


for line in sys.argv[1:]:
    print(json.dumps(read(line)))
