"""Reads iCalendar files with the icalendar library and prints their events as JSON: one object a file."""
import json
import sys

from icalendar import Calendar


def read(path):
    with open(path, "rb") as file:
        text = file.read()
    calendar = Calendar.from_ical(text)
    events = []
    for event in calendar.walk("VEVENT"):
        if event.errors:
            raise ValueError(f"{event.errors}")
        begin, stamp = event.decoded("dtstart"), event.decoded("dtstamp")
        events.append({
            "uid": str(event["uid"]),
            "begin": begin.strftime("%Y-%m-%dT%H:%M:%S"),
            "isLocal": begin.tzinfo is None and "TZID" not in event["dtstart"].params,
            "stampOffsetSeconds": stamp.utcoffset().total_seconds(),
            "seconds": event.decoded("duration").total_seconds(),
            "summary": str(event["summary"]),
            "description": str(event["description"]),
        })
    # RFC 5545, 3.1: lines end with CRLF, and none is longer than 75 octets.
    lines = text.split(b"\r\n")
    return {
        "version": str(calendar["version"]),
        "product": str(calendar["prodid"]),
        "longestLine": max(len(line) for line in lines),
        "isEndedByCrLf": text.endswith(b"\r\n") and not any(b"\n" in line or b"\r" in line for line in lines),
        "events": events,
    }


for path in sys.argv[1:]:
    print(json.dumps(read(path)))
