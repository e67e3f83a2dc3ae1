using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>Reads and writes tunings.</summary>
internal static class TuningText
{
    private const string Choices = "9/8 or 10/9, 45/32 or 64/45, 5/3 or 27/16, 9/5 or 16/9";

    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        var text = cursor.Trimmed();
        var colon = text.Rest.LastIndexOf(':');
        var name = text;
        if (colon < 0)
        {
            text.TakeWhile(static c => c != ',');
            name = text.Word(name.Position).Trimmed();
            return TryFind(name, out tuning, out error) && TryReadOthers(text, tuning, out tuning, out error);
        }

        name = text.Before(text.Position + colon).Trimmed();
        text.Position += colon + 1;
        return TryReadIntervals(name, ref text, out tuning, out error) && TryReadOthers(text, tuning, out tuning, out error);
    }

    public static string Write(Tuning tuning)
    {
        var others = string.Concat(tuning.Overrides.Select(o => $", {o}"));
        var named = tuning.Name + others;
        return Tuning.TryParse(named, out var read, out _) && read == tuning ? named : $"{tuning.Name}: {string.Join(' ', tuning.Intervals)}{others}";
    }

    private static bool TryFind(TextCursor name, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        foreach (var named in Tuning.All)
        {
            if (name.Rest.Equals(named.Name, StringComparison.OrdinalIgnoreCase))
            {
                (tuning, error) = (named, null);
                return true;
            }
        }

        tuning = null;
        error = name.Error($"unknown tuning {TextError.Quote(name.Rest)}; write {string.Join(" or ", Tuning.All)}, or just: with ratios such as just: 10/9 27/16");
        return false;
    }

    /// <summary>Reads the intervals of a tuning of one's own, or the ratios chosen in just intonation.</summary>
    private static bool TryReadIntervals(TextCursor name, ref TextCursor text, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        tuning = null;
        error = null;
        var words = text;
        var count = 0;
        while (StartsNumber(words) && words.TryTakeWord(out _))
        {
            count++;
        }

        if (count != Tuning.Places && name.Rest.Equals(JustTuning.Name, StringComparison.OrdinalIgnoreCase))
        {
            return TryReadChoices(ref text, out tuning, out error);
        }

        var intervals = new Interval[count];
        for (var i = 0; i < count; i++)
        {
            text.TryTakeWord(out var word);
            if (!Interval.TryRead(word, out intervals[i], out error))
            {
                return false;
            }
        }

        var shown = name.Rest.ToString();
        var places = ValueList.Adopt(intervals);
        error = Require.NameFault(shown, Tuning.LongestName) is { } fault ? name.Error($"the name {TextError.Quote(shown)} of a tuning {fault}")
            : Tuning.IntervalsFault(places) is { } wrong ? text.Error(wrong)
            : null;
        tuning = error is null ? new Tuning(shown, places) : null;
        return tuning is not null;
    }

    private static bool TryReadChoices(ref TextCursor text, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        tuning = null;
        error = null;
        var choices = JustTuning.Usual;
        while (StartsWord(text, out var first) && !IsDegree(first))
        {
            text.TryTakeWord(out var word);
            if (choices.With(word.Rest) is not { } chosen)
            {
                error = word.Error($"{TextError.Quote(word.Rest)} is not a choice of just intonation; choose among {Choices}");
                return false;
            }

            choices = chosen;
        }

        tuning = choices.ToTuning();
        return true;
    }

    /// <summary>Reads the svaras that are tuned differently.</summary>
    private static bool TryReadOthers(TextCursor text, Tuning first, [NotNullWhen(true)] out Tuning? tuning, [NotNullWhen(false)] out TextError? error)
    {
        (tuning, error) = (first, null);
        while (StartsWord(text, out _))
        {
            var start = text;
            if (!TunedDegree.TryTake(ref text, out var degree, out var interval, out error))
            {
                return false;
            }

            start.TryTakeWord(out var word);
            error = degree == default ? word.Error("the tonic S is the unison of every tuning and cannot be tuned differently")
                : Tuning.OverrideFault(degree, interval) is { } fault ? word.Error(fault)
                : null;
            if (error is not null)
            {
                return false;
            }

            tuning = tuning.With(degree, interval);
        }

        return true;
    }

    private static bool StartsNumber(TextCursor text) => StartsWord(text, out var first) && (char.IsAsciiDigit(first) || first == '-');

    private static bool IsDegree(char first) => first is 'S' or 'R' or 'G' or 'M' or 'P' or 'D' or 'N' or '#' or 'b';

    private static bool StartsWord(TextCursor text, out char first)
    {
        var isLeft = text.TryTakeWord(out var word);
        first = word.Peek();
        return isLeft;
    }
}
