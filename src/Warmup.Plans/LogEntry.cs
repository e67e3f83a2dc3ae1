using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup.Plans;

/// <summary>A drill that was sung: one line of a <see cref="PlanLog"/>. Immutable, value equality.</summary>
/// <remarks>
/// The text has five fields with tabs between them: the date, the scale, the exercise, the tempo, and <c>x</c> for the teacher's tick or
/// <c>-</c>. After them there may be a field with the lines that stayed off, <c>off:2,5</c>, and one for each singer for whom it was different:
/// <c>Wren=56</c> or <c>Robin=absent</c>.
/// </remarks>
public sealed record LogEntry : ISpanParsable<LogEntry>
{
    private const int Fields = 5;
    private const string Tick = "x";
    private const string NoTick = "-";
    private const string Off = "off:";
    private const int MostLines = 100_000;

    /// <summary>The day.</summary>
    public required DateOnly Date { get; init; }

    /// <summary>The scale's name, 1 to 100 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public required string ScaleName
    {
        get;
        init => field = Checks.Name(value, Scale.LongestName, "the name of a scale");
    }

    /// <summary>The exercise's name, such as <c>sarali-3</c>: 1 to 100 characters without control characters.</summary>
    /// <exception cref="ArgumentException">The name is empty or too long, or holds a control character.</exception>
    public required string ExerciseName
    {
        get;
        init => field = Checks.Name(value, PlanDrill.LongestName, "the name of an exercise");
    }

    /// <summary>The tempo that the class reached, in aksharas a minute, 10 to 400.</summary>
    /// <exception cref="ArgumentOutOfRangeException">The value lies outside its range.</exception>
    public required int Tempo
    {
        get;
        init => field = Require.InRange(value, Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, "the tempo");
    }

    /// <summary>Whether the teacher ticked the drill off; not by default. Nothing else moves a singer on to a faster tempo.</summary>
    public bool IsTicked { get; init; }

    /// <summary>
    /// The numbers of the lines that stayed off when the drill was heard, from 1, rising; none by default. A plan gives such a drill its turn
    /// again, unless the teacher ticked it off.
    /// </summary>
    /// <exception cref="ArgumentException">The numbers do not rise from 1 or more to 100,000 at most.</exception>
    public ValueList<int> OffLines
    {
        get;
        init => field = IsRising(value) ? value : throw new ArgumentException("the lines that stayed off must be rising numbers from 1 on", nameof(OffLines));
    }

    /// <summary>The singers who were absent or reached another tempo than the class, each once; none by default. All others sang as the class did.</summary>
    /// <exception cref="ArgumentException">A singer is there twice, in upper or lower case, or is <see langword="null"/>.</exception>
    public ValueList<SungBy> Singers
    {
        get;
        init => field = FirstTwice(Checks.NoNulls(value, nameof(Singers))) is { } twice
            ? throw new ArgumentException($"the singer {TextError.Quote(twice)} must be there once", nameof(Singers))
            : value;
    }

    /// <summary>The tempo that a singer reached: their own, or else the class's.</summary>
    /// <param name="alias">The singer's alias; upper and lower case are the same.</param>
    /// <returns>Aksharas a minute, or <see langword="null"/> if the singer was absent.</returns>
    public int? TempoOf(string alias)
    {
        ArgumentNullException.ThrowIfNull(alias);
        foreach (var singer in Singers)
        {
            if (singer.Alias.Equals(alias, StringComparison.OrdinalIgnoreCase))
            {
                return singer.Tempo;
            }
        }

        return Tempo;
    }

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="WarmupFormatException">The text is not an entry; the error has the place and the fix.</exception>
    public static LogEntry Parse(string text) => TryParse(text, out var entry, out var error) ? entry : throw error.ToException();

    /// <summary>Reads what <see cref="ToString"/> writes.</summary>
    /// <param name="text">The text.</param>
    /// <param name="entry">The entry, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was an entry.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out LogEntry? entry, [NotNullWhen(false)] out TextError? error)
    {
        ArgumentNullException.ThrowIfNull(text);
        return TryRead(text, out entry, out error);
    }

    static LogEntry IParsable<LogEntry>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static LogEntry ISpanParsable<LogEntry>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TryRead(s, out var entry, out var error) ? entry : throw error.ToException();

    static bool IParsable<LogEntry>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out LogEntry result) =>
        TryRead(s, out result, out _);

    static bool ISpanParsable<LogEntry>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out LogEntry result) =>
        TryRead(s, out result, out _);

    /// <summary>The entry as a line of the log, without the line's end.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{Date:yyyy-MM-dd}\t{ScaleName}\t{ExerciseName}\t{Tempo}\t{(IsTicked ? Tick : NoTick)}{(OffLines.IsEmpty ? string.Empty : $"\t{Off}{string.Join(',', OffLines)}")}{string.Concat(Singers.ConvertAll(s => $"\t{s}"))}");

    internal static bool TryRead(ReadOnlySpan<char> text, [NotNullWhen(true)] out LogEntry? entry, [NotNullWhen(false)] out TextError? error)
    {
        entry = null;
        var count = text.Count('\t') + 1;
        if (count < Fields)
        {
            error = TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a line of the log must have {Fields} fields with tabs between them, not {count}, and one more for each singer who was absent or reached another tempo"));
            return false;
        }

        // The last range is the rest: one field for each singer.
        Span<Range> at = stackalloc Range[Fields + 1];
        text.Split(at, '\t');
        var (day, scale, exercise, tempo, tick) = (at[0], at[1], at[2], at[3], at[4]);
        if (!DateOnly.TryParseExact(text[day], "yyyy-MM-dd", CultureInfo.InvariantCulture, DateTimeStyles.None, out var date))
        {
            error = Wrong(day, "the date must be a day such as 2026-12-01", text);
        }
        else if (!Checks.IsName(text[scale], Scale.LongestName))
        {
            error = Wrong(scale, $"the name of the scale must have 1 to {Scale.LongestName} characters without control characters", text);
        }
        else if (!Checks.IsName(text[exercise], PlanDrill.LongestName))
        {
            error = Wrong(exercise, $"the name of the exercise must have 1 to {PlanDrill.LongestName} characters without control characters", text);
        }
        else if (!Checks.TryWhole(text[tempo], Warmup.Tempo.Slowest, Warmup.Tempo.Fastest, out var speed))
        {
            error = Wrong(tempo, $"the tempo must be a whole number between {Warmup.Tempo.Slowest} and {Warmup.Tempo.Fastest}", text);
        }
        else if (text[tick] is not (Tick or NoTick))
        {
            error = Wrong(tick, $"the tick must be {Tick} or {NoTick}", text);
        }
        else if (!TryReadOff(text, count == Fields ? null : at[Fields].Start.Value, out var lines, out var next))
        {
            error = Wrong(next!.Value..text.Length, $"the lines that stayed off must be rising numbers with commas between them, such as {Off}2,5", text);
        }
        else if (TryReadSingers(text, next, out var singers, out error))
        {
            entry = new LogEntry { Date = date, ScaleName = text[scale].ToString(), ExerciseName = text[exercise].ToString(), Tempo = speed, IsTicked = text[tick] is Tick, OffLines = lines, Singers = singers };
        }

        return error is null;
    }

    /// <summary>Reads the lines that stayed off, if the field at a position holds them; then comes the next field, or where this one is wrong, itself.</summary>
    private static bool TryReadOff(ReadOnlySpan<char> text, int? from, out ValueList<int> lines, out int? next)
    {
        (lines, next) = (default, from);
        var begin = from ?? text.Length;
        var tab = text[begin..].IndexOf('\t');
        var length = tab < 0 ? text.Length - begin : tab;
        if (!text.Slice(begin, length).StartsWith(Off, StringComparison.Ordinal) || text.Slice(begin, length).Contains('='))
        {
            return true;
        }

        var read = new List<int>();
        foreach (var number in text.Slice(begin + Off.Length, length - Off.Length).ToString().Split(','))
        {
            if (!Checks.TryWhole(number, 1, MostLines, out var line))
            {
                return false;
            }

            read.Add(line);
        }

        lines = read.ToValueList();
        if (!IsRising(lines))
        {
            return false;
        }

        next = tab < 0 ? null : begin + length + 1;
        return true;
    }

    private static bool IsRising(ValueList<int> lines)
    {
        for (var i = 0; i < lines.Count; i++)
        {
            if (lines[i] < (i == 0 ? 1 : lines[i - 1] + 1) || lines[i] > MostLines)
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>Reads the fields from a position to the end of the line.</summary>
    private static bool TryReadSingers(ReadOnlySpan<char> text, int? from, out ValueList<SungBy> singers, [NotNullWhen(false)] out TextError? error)
    {
        var read = new List<SungBy>();
        singers = default;
        for (var begin = from ?? int.MaxValue; begin <= text.Length;)
        {
            var length = text[begin..].IndexOf('\t') is var tab and >= 0 ? tab : text.Length - begin;
            var field = begin..(begin + length);
            if (!SungBy.TryRead(text[field], out var singer))
            {
                error = Wrong(field, $"a singer must be an alias with a tempo between {Warmup.Tempo.Slowest} and {Warmup.Tempo.Fastest} or with absent, such as Wren=56 or Wren=absent", text);
                return false;
            }

            read.Add(singer);
            if (FirstTwice(read) is not null)
            {
                error = Wrong(field, "a singer must be there once", text);
                return false;
            }

            begin += length + 1;
        }

        (singers, error) = (read.ToValueList(), null);
        return true;
    }

    private static string? FirstTwice(IEnumerable<SungBy> singers)
    {
        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        return singers.FirstOrDefault(s => !seen.Add(s.Alias))?.Alias;
    }

    private static TextError Wrong(Range field, string what, ReadOnlySpan<char> text) => TextError.At(field.Start.Value + 1, $"{what}, not {TextError.Quote(text[field])}");
}
