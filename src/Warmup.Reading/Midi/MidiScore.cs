using System.Globalization;
using System.Text;

namespace Warmup.Reading;

/// <summary>Reads Standard MIDI Files of formats 0 and 1.</summary>
internal sealed class MidiScore
{
    // The channel of drums in General MIDI, counted from 0.
    private const int Drums = 9;

    private readonly RawPiece _piece = new() { Format = "MIDI" };
    private readonly SortedDictionary<(int Track, int Channel), MidiPart> _parts = [];
    private readonly List<(long Tick, string Text)> _markers = [];
    private readonly CancellationToken _cancellation;
    private readonly int _division;
    private int _notes;
    private long _end;

    private MidiScore(int division, CancellationToken cancellation) => (_division, _cancellation) = (division, cancellation);


    public static RawPiece Read(ReadOnlySpan<byte> bytes, CancellationToken cancellation)
    {
        var header = new MidiBytes(bytes, 0, bytes.Length);
        if (!header.Take(Math.Min(4, header.Left)).SequenceEqual("MThd"u8))
        {
            throw new ReadingException("a MIDI file begins with MThd", new PiecePlace(PlaceKind.Byte, 0));
        }

        var length = header.UInt32();
        if (length < 6 || length > header.Left)
        {
            throw header.Error("the header's length is wrong");
        }

        var (format, tracks, division) = (header.UInt16(), header.UInt16(), header.UInt16());
        if (format > 1)
        {
            throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"the file has format {format}; formats 0 and 1 are read"), new PiecePlace(PlaceKind.Byte, 8));
        }

        if (division is 0 or >= 0x8000)
        {
            throw new ReadingException(
                division == 0 ? "a quarter note has 0 ticks" : "the file counts frames (SMPTE) and not quarter notes, and has no beats to read", new PiecePlace(PlaceKind.Byte, 12));
        }

        var score = new MidiScore(division, cancellation);
        header.Take((int)length - 6);
        var track = 0;
        while (header.Left >= 8)
        {
            var at = header.Position;
            var isTrack = header.Take(4).SequenceEqual("MTrk"u8);
            var size = header.UInt32();
            if (size > header.Left)
            {
                score.Remark($"{(isTrack ? "a track" : "a chunk")} is cut off: it was read as far as it goes", at);
                size = (uint)header.Left;
            }

            if (isTrack)
            {
                if (track >= ReadingLimits.Parts)
                {
                    throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"there are more than {ReadingLimits.Parts} tracks"), new PiecePlace(PlaceKind.Byte, at));
                }

                score.Track(new MidiBytes(bytes, header.Position, header.Position + (int)size), track++, format);
            }

            header.Take((int)size);
        }

        if (track == 0)
        {
            throw header.Error("the file has no track");
        }

        if (track != tracks)
        {
            score.Remark(string.Create(CultureInfo.InvariantCulture, $"the header counts {tracks} tracks, and there are {track}"), 10);
        }

        return score.ToPiece();
    }

    private void Track(MidiBytes bytes, int track, int format)
    {
        var tick = 0L;
        var status = 0;
        var name = string.Empty;
        var isEnded = false;
        string? lyric = null;
        while (!bytes.IsAtEnd && !isEnded)
        {
            _cancellation.ThrowIfCancellationRequested();
            tick += bytes.Quantity();
            if (tick > int.MaxValue)
            {
                throw bytes.Error("the track is longer than 2147483647 ticks");
            }

            if (bytes.Peek() >= 0x80)
            {
                status = bytes.Byte();
            }
            else if (status is < 0x80 or >= 0xF0)
            {
                throw bytes.Error("a data byte stands where an event begins, and no running status is in force");
            }

            switch (status)
            {
                case 0xFF:
                    isEnded = Meta(ref bytes, tick, ref name, ref lyric);
                    status = 0;
                    break;
                case 0xF0 or 0xF7:
                    bytes.Take(bytes.Quantity());
                    status = 0;
                    break;
                case > 0xF0:
                    throw bytes.Error(string.Create(CultureInfo.InvariantCulture, $"the status byte {status:X2} has no place in a file"));
                default:
                    Channel(ref bytes, track, status, tick, ref lyric);
                    break;
            }
        }

        if (!isEnded)
        {
            Remark("a track has no end: it was read as far as it goes", bytes.Position);
        }

        foreach (var (key, part) in _parts)
        {
            if (key.Track == track)
            {
                part.Name = format == 0 ? part.Name : name;
                if (part.Close(tick) is var open and > 0)
                {
                    Remark(string.Create(CultureInfo.InvariantCulture, $"{open} {(open == 1 ? "note never ends" : "notes never end")}: ended with the track"), bytes.Position);
                }
            }
        }

        if (_piece.Title.Length == 0 && track == 0)
        {
            _piece.Title = name;
        }

        _end = Math.Max(_end, tick);
    }

    private void Channel(ref MidiBytes bytes, int track, int status, long tick, ref string? lyric)
    {
        var channel = status & 0x0F;
        var at = bytes.Position;
        var first = bytes.Data();
        var second = (status & 0xF0) is 0xC0 or 0xD0 ? 0 : bytes.Data();
        if (channel == Drums || (status & 0xF0) is not (0x80 or 0x90 or 0xC0))
        {
            return;
        }

        if (!_parts.TryGetValue((track, channel), out var part))
        {
            part = new MidiPart { Name = string.Create(CultureInfo.InvariantCulture, $"Track {track + 1}, channel {channel + 1}") };
            _parts.Add((track, channel), part);
        }

        if ((status & 0xF0) == 0x90 && second > 0)
        {
            if (++_notes > ReadingLimits.Notes)
            {
                throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"there are more than {ReadingLimits.Notes} notes"), new PiecePlace(PlaceKind.Byte, at));
            }

            part.On(first, tick, lyric);
            lyric = null;
        }
        else if ((status & 0xF0) != 0xC0 && !part.Off(first, tick))
        {
            Remark("a note ends that never began: left out", at);
        }
    }

    private bool Meta(ref MidiBytes bytes, long tick, ref string name, ref string? lyric)
    {
        var type = bytes.Byte();
        var at = bytes.Position;
        var data = bytes.Take(bytes.Quantity());
        switch (type)
        {
            case 0x2F:
                return true;
            case 0x03 when name.Length == 0:
                name = Text(data);
                break;
            case 0x05:
                lyric = Lyric(data);
                break;
            case 0x06:
                _markers.Add((tick, Text(data)));
                break;
            case 0x51 when data.Length == 3:
                var microseconds = (data[0] << 16) | (data[1] << 8) | data[2];
                if (microseconds == 0)
                {
                    Remark("a tempo of 0 microseconds a quarter note was left out", at);
                }
                else
                {
                    _piece.AddTempo(Quarters(tick), NearFraction.OfMicroseconds(microseconds));
                }

                break;
            case 0x58 when data.Length >= 2:
                if (data[0] == 0 || data[1] > 7)
                {
                    Remark(string.Create(CultureInfo.InvariantCulture, $"a time signature of {data[0]} over 2 to the power of {data[1]} was left out"), at);
                }
                else
                {
                    _piece.AddMeter(new RawMeter(Quarters(tick), Groups(data), 1 << data[1], false));
                }

                break;
            case 0x59 when data.Length == 2 && unchecked((sbyte)data[0]) is >= -7 and <= 7:
                _piece.AddKey(Quarters(tick), unchecked((sbyte)data[0]), data[1] == 1);
                break;
            default:
                break;
        }

        return false;
    }

    /// <summary>The beats of a time signature: six of them are two dotted ones, unless the metronome clicks at each.</summary>
    private static ValueList<int> Groups(ReadOnlySpan<byte> data)
    {
        const int ClocksPerWhole = 96;
        return data[0] > 3 && data[0] % 3 == 0 && data.Length > 2 && data[2] << data[1] == ClocksPerWhole
            ? Enumerable.Repeat(3, data[0] / 3).ToValueList()
            : [data[0]];
    }

    private Rational Quarters(long tick) => new(tick, _division);

    private void Remark(string message, int at) => _piece.Remarks.Add(RemarkKind.Mended, message, new PiecePlace(PlaceKind.Byte, at));

    /// <summary>A text: UTF-8 where it is, otherwise Latin-1, as older programs write it.</summary>
    private static string Text(ReadOnlySpan<byte> data) => PlainText.Of(Decoded(data));

    private static string Decoded(ReadOnlySpan<byte> data)
    {
        data = data[..Math.Min(data.Length, ReadingLimits.Text)];
        return System.Text.Unicode.Utf8.IsValid(data) ? Encoding.UTF8.GetString(data) : Encoding.Latin1.GetString(data);
    }

    /// <summary>A syllable by RP-017: a carriage return ends a line, a space a word; a line that ends leaves a mark.</summary>
    private static string Lyric(ReadOnlySpan<byte> data) => Decoded(data).Replace('\n', '\r');

    private RawPiece ToPiece()
    {
        _piece.Tempi.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        _piece.Meters.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        _piece.Keys.Sort(static (a, b) => a.Onset.CompareTo(b.Onset));
        var markers = _markers.OrderBy(m => m.Tick).Select(m => (Quarters(m.Tick), m.Text)).ToList();
        var measures = MidiMarks.Measures(_piece.Meters, Quarters(_end));
        foreach (var part in _parts.Values)
        {
            if (!part.HasNotes)
            {
                continue;
            }

            var raw = part.Finish(_division);
            raw.Measures.AddRange(measures);
            MidiMarks.Add(raw, markers, _piece);
            if (!_piece.IsOurs && MidiGaps.Close(raw.Notes) is { } gap)
            {
                _piece.Remarks.Add(RemarkKind.Time, "gaps of less than a twentieth of a note were closed: programs that play a part leave them", raw.Place(gap));
            }

            _piece.Parts.Add(raw);
            Report(raw, part.Chords, RemarkKind.Chord, "notes at once: the highest was kept");
            Report(raw, part.Overlaps, RemarkKind.Mended, "notes overlap: the first one ends where the next begins");
        }

        return _piece;
    }

    private void Report(RawPart part, List<Rational> at, RemarkKind kind, string message)
    {
        foreach (var onset in part.IsDrone ? [] : at)
        {
            _piece.Remarks.Add(kind, message, part.Place(onset));
        }
    }
}
