namespace Warmup.Takes;

/// <summary>The lines as they were sung one after the other, and where their order was left.</summary>
internal sealed class TakePasses
{
    private const int LeastForeign = 4;

    private readonly DrillNotes _drill;
    private readonly SungSpan[] _spans;

    private TakePasses(DrillNotes drill, SungSpan[] spans) => (_drill, _spans) = (drill, spans);

    /// <summary>A line sung once: a range of spans, and whether fewer than half of them have the line's notes, so that it may be no line of the drill.</summary>
    public readonly record struct Pass(int Line, int From, int To, bool IsWhole, bool IsForeign);

    /// <summary>A note in the report's order: a span, or -1 for one that was left out.</summary>
    public readonly record struct Place(int Note, int Span, bool IsInside);

    /// <summary>Where the order of lines was left; the span at which, or -1 for the end.</summary>
    public readonly record struct Event(TakeEventKind Kind, int Line, int Span);

    public List<Pass> Passes { get; } = [];

    public List<Place> Order { get; } = [];

    /// <summary>How many lines the drill has.</summary>
    public int LineCount => _drill.Lines.Length;

    public List<Event> Events { get; } = [];

    public static TakePasses Of(DrillNotes drill, SungSpan[] spans)
    {
        var passes = new TakePasses(drill, spans);
        passes.Split();
        passes.Walk();
        return passes;
    }

    /// <summary>
    /// Lines begun out of their order of which hardly a note was heard: something else was sung, and nothing of the drill. A line in its place is its singer's,
    /// however it was sung.
    /// </summary>
    public IReadOnlyList<Pass> Foreign => [.. Enumerable.Range(1, Math.Max(0, Passes.Count - 1)).Select(p => (Before: Passes[p - 1], Here: Passes[p]))
        .Where(x => x.Here.IsForeign && x.Here.Line <= x.Before.Line && x.Here.To - x.Here.From >= LeastForeign).Select(x => x.Here)];

    /// <summary>The number of a pass's line in its round, from 1.</summary>
    public int NumberOf(Pass pass) => _drill.Lines[pass.Line].Number;

    private int LineOf(int span) => _drill.Notes[_spans[span].Note].Line;

    private void Split()
    {
        var from = 0;
        for (var s = 1; s <= _spans.Length; s++)
        {
            if (s == _spans.Length || _spans[s].Note <= _spans[s - 1].Note || LineOf(s) != LineOf(s - 1))
            {
                // A line that lacks its end by more than a left-out note was broken off.
                var line = _drill.Lines[LineOf(from)];
                var missing = line.First + line.Count - 1 - _spans[s - 1].Note;
                var own = _spans[from..s].Count(span => !span.IsOther);
                Passes.Add(new Pass(LineOf(from), from, s, missing == 0 || (missing == 1 && line.Count > 3 && s < _spans.Length && !IsAgain(s)), 2 * own < s - from));
                from = s;
            }
        }
    }

    /// <summary>Whether a span begins a line that was begun just before.</summary>
    private bool IsAgain(int span) => LineOf(span) == LineOf(span - 1);

    private void Walk()
    {
        var next = 0;
        for (var p = 0; p < Passes.Count; p++)
        {
            var pass = Passes[p];
            var first = _drill.Lines[pass.Line].First;
            if (p > 0 && pass.Line <= Passes[p - 1].Line)
            {
                var before = Passes[p - 1];
                if (!before.IsWhole)
                {
                    Events.Add(new Event(TakeEventKind.FalseStart, before.Line, before.From));
                }

                if (before.IsWhole || pass.Line < before.Line)
                {
                    Events.Add(new Event(TakeEventKind.Repeat, pass.Line, pass.From));
                }

                next = first;
            }
            else
            {
                var last = p == 0 ? -1 : Passes[p - 1].Line;
                for (var l = last + 1; l < pass.Line; l++)
                {
                    Events.Add(new Event(TakeEventKind.Skip, l, pass.From));
                }

                // What a line lacks at its end was left out of it; a whole line that is missing was skipped.
                var end = p == 0 ? next : _drill.Lines[last].First + _drill.Lines[last].Count;
                Leave(next, Math.Min(end, first), isInside: true);
                Leave(Math.Max(next, Math.Min(end, first)), first, isInside: false);
                next = first;
            }

            for (var s = pass.From; s < pass.To; s++)
            {
                Leave(next, _spans[s].Note, isInside: true);
                Order.Add(new Place(_spans[s].Note, s, true));
                next = _spans[s].Note + 1;
            }
        }

        // A line that was sung once more at the end does not leave out again what comes after it.
        next = Math.Max(next, _spans.Select(s => s.Note + 1).DefaultIfEmpty().Max());
        if (next < _drill.Notes.Length && _spans.Length > 0)
        {
            Events.Add(new Event(TakeEventKind.EarlyStop, LineOf(_spans.Length - 1), -1));
        }

        Leave(next, _drill.Notes.Length, isInside: false);
    }

    private void Leave(int from, int to, bool isInside)
    {
        for (var note = from; note < to; note++)
        {
            Order.Add(new Place(note, -1, isInside));
        }
    }
}
