using System.Globalization;

namespace Warmup.Sheets;

/// <summary>Lines of a sheet that follow each other in one speed, in the same time through the drill.</summary>
/// <remarks>Immutable, value equality.</remarks>
public sealed record SheetBlock
{
    // The parts of an akshara that can still be read side by side.
    private const int MostParts = 18;

    private readonly Section _section;
    private readonly MeterWords _words;

    private SheetBlock(Section section, MeterWords words, ValueList<SheetLine> lines)
    {
        _section = section;
        _words = words;
        Lines = lines;
    }

    /// <summary>The lines, at least one.</summary>
    public ValueList<SheetLine> Lines { get; }

    /// <summary>How many times through the drill, alike in everything, the block stands for; 1 unless <see cref="SheetSection.PrintedBlocks"/> puts them together.</summary>
    public int Times { get; private init; } = 1;

    /// <summary>
    /// What stands over the block where a section has several: <c>Time 2 of 3, speed 2, 72 aksharas a minute</c>, and where the drill is sung once
    /// <c>From here: speed 2, 72 aksharas a minute</c>. Where the block stands for several times, <c>Sing 4 times: speed 1, 60 aksharas a minute</c>.
    /// </summary>
    public string Heading => Times > 1 ? Repeated : _section.Rounds > 1 ? Title : $"From here: {Title}";

    /// <summary>The time through the drill, where there are several, the speed and the tempo.</summary>
    internal string Title
    {
        get
        {
            var time = _section.Rounds > 1 ? string.Create(CultureInfo.InvariantCulture, $"Time {Lines[0].Line.Round + 1} of {_section.Rounds}, ") : string.Empty;
            return time + Pace;
        }
    }

    /// <summary>How fast the block is: its speed and its tempo in the words of its meter.</summary>
    public string Pace
    {
        get
        {
            var line = Lines[0].Line;
            return string.Create(CultureInfo.InvariantCulture, $"{_words.Speed(line.Speed)}, {_section.TempoAt(line.Onset).ToDouble():0.###} {_words.Beat}s a minute");
        }
    }

    /// <summary>The heading of a block that stands for several times: the first block of a time says how often, those in further speeds follow it.</summary>
    private string Repeated
    {
        get
        {
            var line = Lines[0];
            if (line.Number > 1 && _section.Lines[line.Number - 2].Round == line.Line.Round)
            {
                return $"Then, each time: {Pace}";
            }

            var last = Lines[^1].Number;
            var parts = last < _section.Lines.Count && _section.Lines[last].Round == line.Line.Round ? ", with all speeds" : string.Empty;
            var which = Times < _section.Rounds ? string.Create(CultureInfo.InvariantCulture, $"Times {line.Line.Round + 1} to {line.Line.Round + Times} of {_section.Rounds}: sing") : "Sing";
            return string.Create(CultureInfo.InvariantCulture, $"{which} {Times} times{parts}: {Pace}");
        }
    }

    /// <summary>The parts of an akshara on which all notes fall; where they would be too many, a part for each note of the speed.</summary>
    internal int Parts
    {
        get
        {
            long parts = 1;
            var (first, last) = (Lines[0].Line, Lines[^1].Line);
            foreach (ref readonly var note in _section.Notes.AsSpan()[first.FirstNote..(last.FirstNote + last.NoteCount)])
            {
                parts = Rational.Lcm(parts, note.Onset.Denominator);
                if (parts > MostParts)
                {
                    return (int)Math.Min(MostParts, first.Speed.NotesPerAkshara.Ceiling());
                }
            }

            return (int)parts;
        }
    }

    /// <summary>The blocks of a section, in order.</summary>
    internal static ValueList<SheetBlock> Of(Section section, SheetLetters letters, CancellationToken cancellation)
    {
        var tones = new SheetTone[section.Pitches.Count];
        for (var p = 0; p < tones.Length; p++)
        {
            tones[p] = letters.OfNote(section.Pitches[p].Tone, section);
        }

        var blocks = new List<SheetBlock>();
        var lines = new List<SheetLine>();
        var signs = new List<SheetSign>();
        for (var l = 0; l < section.Lines.Count; l++)
        {
            cancellation.ThrowIfCancellationRequested();
            if (l > 0 && (section.Lines[l].Round != section.Lines[l - 1].Round || section.Lines[l].Speed != section.Lines[l - 1].Speed))
            {
                blocks.Add(new SheetBlock(section, MeterWords.Of(section.Meter, letters.IsSolfa), lines.ToValueList()));
                lines.Clear();
            }

            lines.Add(SheetLine.Of(section, l, tones, signs));
        }

        if (lines.Count > 0)
        {
            blocks.Add(new SheetBlock(section, MeterWords.Of(section.Meter, letters.IsSolfa), lines.ToValueList()));
        }

        return blocks.ToValueList();
    }

    /// <summary>The blocks with those of times that are exactly alike put together.</summary>
    internal static ValueList<SheetBlock> Printed(Section section, ValueList<SheetBlock> blocks)
    {
        var printed = new List<SheetBlock>();
        var (round, times) = (0, section.AlikeFrom(0));
        foreach (var block in blocks)
        {
            var own = block.Lines[0].Line.Round;
            if (own >= round + times)
            {
                (round, times) = (own, section.AlikeFrom(own));
            }

            if (own == round)
            {
                printed.Add(block with { Times = times });
            }
        }

        return printed.ToValueList();
    }

    /// <summary>The heading.</summary>
    public override string ToString() => Heading;
}
