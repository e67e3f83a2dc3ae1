using System.Globalization;

namespace Warmup.Sheets;

/// <summary>A block of lines laid out for a page: what stands in each part of each akshara, and where lines begin.</summary>
internal sealed class HtmlBlock
{
    // What fits the width of a page, in parts of the page's unit of size, and how wide a cell of 1 to 6 letters is in the page's style.
    private const double WidestRow = 51.5;
    private const string Variants = "\u2081\u2082\u2083";
    private const char FirstIndic = '\u0900';
    private const char LastIndic = '\u0D7F';
    private static readonly double[] Widths = [1.6, 1.95, 2, 2.5, 3.1, 5];

    private readonly Section _section;
    private readonly SheetBlock _block;
    private readonly Dictionary<int, List<HtmlSlot>> _slots = [];
    private readonly ILookup<(int Akshara, int Part), SheetLine> _begins;
    private readonly HashSet<int> _sungAngas = [];
    private readonly HashSet<int> _answers = [];

    public HtmlBlock(Section section, SheetBlock block)
    {
        (_section, _block) = (section, block);
        Parts = block.Parts;
        foreach (var line in block.Lines)
        {
            Add(line);
        }

        Letters = Math.Clamp(_slots.Values.SelectMany(s => s).Select(s => LettersOf(s.Sign)).DefaultIfEmpty(1).Max(), 1, Widths.Length);
        HasWideLetters = _slots.Values.SelectMany(s => s).Any(s => s.Sign[0] is >= FirstIndic and <= LastIndic || Variants.Contains(s.Sign[^1], StringComparison.Ordinal));
        Bars = AvartanaRows.BarsInARow(section, block.Lines, Fits);
        _begins = block.Lines.ToLookup(line => At((line.Line.Onset * Parts).Floor()));
        if (!Meter.IsFree)
        {
            _sungAngas.UnionWith(_slots.Keys.Concat(_answers).Select(EndOfAnga));
        }
    }

    /// <summary>The most letters of a cell, at most 6.</summary>
    public int Letters { get; }

    /// <summary>Whether its letters are those of an Indic script or have variants, which are wide and take a smaller size.</summary>
    public bool HasWideLetters { get; }

    /// <summary>Whether a row has no room for its aksharas side by side.</summary>
    public bool IsLong => Meter.IsFree || !Fits(Meter.Beats);

    /// <summary>The bars of a row: one avartana, or several short bars of a time signature.</summary>
    public int Bars { get; }

    /// <summary>The parts of an akshara that have a column each.</summary>
    public int Parts { get; }

    public Meter Meter => _section.Meter;

    /// <summary>
    /// The rows, from akshara to akshara: each avartana in which something is written, as far as the block's last line goes; the last one of the section is
    /// whole, since its rest is silent. In free rhythm each line.
    /// </summary>
    public IEnumerable<HtmlRow> Rows()
    {
        if (Meter.IsFree)
        {
            return _block.Lines.Select(l => new HtmlRow((int)l.Line.Onset.Floor(), (int)l.Line.End.Ceiling(), l));
        }

        var isLast = _block.Lines[^1].Number == _section.Lines.Count;
        var length = Bars * Meter.Beats;
        var (from, to) = ((int)_block.Lines[0].Line.Onset.Floor() / Meter.Beats * Meter.Beats, (int)_block.Lines[^1].Line.End.Ceiling());
        var end = isLast ? (to + Meter.Beats - 1) / Meter.Beats * Meter.Beats : to;
        return Enumerable.Range(0, (to - from + length - 1) / length)
            .Select(row => new HtmlRow(from + (row * length), Math.Min(end, from + ((row + 1) * length)), null))
            .Where(row => Enumerable.Range(row.Start, row.End - row.Start).Any(a => _slots.ContainsKey(a) || _answers.Contains(a)));
    }

    /// <summary>What stands in an akshara of a row, part by part.</summary>
    public IReadOnlyList<HtmlSlot> SlotsOf(HtmlRow row, int akshara) => !_slots.TryGetValue(akshara, out var slots)
        ? []
        : row.Only is { } only ? slots.FindAll(s => s.Line == only) : slots;

    /// <summary>The line whose number stands before a row, or <see langword="null"/>.</summary>
    public SheetLine? LineBefore(HtmlRow row) => row.Only ?? _begins[(row.Start, 0)].FirstOrDefault();

    /// <summary>The lines that begin inside a row, with the part of the akshara in which each does.</summary>
    public IEnumerable<(int Part, SheetLine Line)> LinesInside(HtmlRow row, int akshara) => row.Only is null
        ? Enumerable.Range(0, Parts).Where(part => akshara > row.Start || part > 0).SelectMany(part => _begins[(akshara, part)].Select(line => (part, line)))
        : [];

    /// <summary>Whether an akshara is left silent for an answer.</summary>
    public bool IsAnswer(int akshara) => _answers.Contains(akshara);

    /// <summary>Whether nothing stands in the akshara's anga in any row, so that a narrow screen can leave it out.</summary>
    public bool IsEmptyAnga(int akshara) => !Meter.IsFree && !_sungAngas.Contains(EndOfAnga(akshara));

    /// <summary>A line in words, for a screen reader.</summary>
    public string Said(SheetLine line)
    {
        var said = new List<string>();
        foreach (var sign in line.Signs)
        {
            if (sign.Tone is { } tone)
            {
                var octave = tone.Octave switch
                {
                    0 => string.Empty,
                    1 => "upper ",
                    -1 => "lower ",
                    > 1 => "far upper ",
                    _ => "far lower ",
                };
                said.Add($"{octave}{(tone == SheetTone.Blank ? "a note" : tone.Name)}{(_section.Notes[sign.Note].IsHeld ? " held" : string.Empty)}");
            }
            else if (sign.Kind == SheetSignKind.Breath)
            {
                said.Add("breathe");
            }
        }

        if (line.Line.HasAnswer)
        {
            said.Add("then your answer");
        }

        return string.Join(", ", said);
    }

    private bool Fits(int aksharas) => aksharas * Parts * Widths[Letters - 1] <= WidestRow;

    /// <summary>The letters of a sign as a reader sees them; a variant is small and stands close to its letter.</summary>
    private static int LettersOf(string sign) => new StringInfo(sign.TrimEnd(Variants.ToCharArray())).LengthInTextElements;

    private void Add(SheetLine sheetLine)
    {
        var line = sheetLine.Line;

        // The notes that begin in a part of an akshara; more than one only where an akshara has more parts than can be shown.
        var notes = Enumerable.Range(line.FirstNote, line.NoteCount).ToLookup(n => (_section.Notes[n].Onset * Parts).Floor());
        foreach (var (slot, sign) in new LineCells(sheetLine.Written, Parts, t => t.Dotted).Cells)
        {
            var (akshara, part) = At(slot);
            if (line.HasAnswer && akshara >= line.AnswerOnset)
            {
                break;
            }

            if (!_slots.TryGetValue(akshara, out var slots))
            {
                _slots.Add(akshara, slots = []);
            }

            slots.Add(new HtmlSlot(part, sign, notes[slot].Count(), line.Speed.Kalam, sheetLine));
        }

        for (var akshara = (int)line.AnswerOnset.Ceiling(); line.HasAnswer && akshara < line.End; akshara++)
        {
            _answers.Add(akshara);
        }
    }

    private (int Akshara, int Part) At(long slot) => ((int)(slot / Parts), (int)(slot % Parts));

    /// <summary>The end of the anga in which an akshara lies, in aksharas from the section's beginning.</summary>
    private int EndOfAnga(int akshara) => akshara - (akshara % Meter.Beats) + Meter.AngaEnd(akshara % Meter.Beats);
}

/// <summary>A row, from akshara to akshara.</summary>
/// <param name="Start">Its first akshara, from the section's beginning.</param>
/// <param name="End">The akshara after its last.</param>
/// <param name="Only">The one line of the row in free rhythm; <see langword="null"/> where lines share rows.</param>
internal readonly record struct HtmlRow(int Start, int End, SheetLine? Only);

/// <summary>What stands in a part of an akshara.</summary>
/// <param name="Part">The part, from 0.</param>
/// <param name="Sign">What is written.</param>
/// <param name="NoteCount">The notes that begin here.</param>
/// <param name="Kalam">The speed of its line.</param>
/// <param name="Line">Its line.</param>
internal readonly record struct HtmlSlot(int Part, string Sign, int NoteCount, int Kalam, SheetLine Line);
