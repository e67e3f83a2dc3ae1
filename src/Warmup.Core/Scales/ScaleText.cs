using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads scales written out in svaras, scale numbers, solfa or semitones.</summary>
internal static class ScaleText
{
    private const string VakraPrefix = "vakra:";
    private const string SemitonesPrefix = "semitones:";
    private const int UpperTonic = 12;

    /// <summary>Whether a text is meant as a scale written out, and not as a name.</summary>
    public static bool IsWrittenOut(ReadOnlySpan<char> text)
    {
        if (text.StartsWith(VakraPrefix, StringComparison.OrdinalIgnoreCase)
            || text.StartsWith(SemitonesPrefix, StringComparison.OrdinalIgnoreCase)
            || text.ContainsAny('/', '='))
        {
            return true;
        }

        // Several words of which the first is a tone, or a svara's letter that lacks its variant; or names and small letters of svaras alone.
        var cursor = new TextCursor(text);
        if (ToneText.AreNames(cursor))
        {
            return true;
        }

        return cursor.TryTakeWord(out var first) && !cursor.IsAtEnd && first.Position == 0
            && (ToneText.IsTone(first) || (first.Rest.Length is 1 or 2 && "SRGMPDN".Contains(first.Peek(), StringComparison.Ordinal)));
    }

    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        scale = null;
        string? name = null;
        if (cursor.Rest.LastIndexOf('=') is var equals and >= 0)
        {
            name = cursor.Rest[..equals].Trim().ToString();
            if (Require.NameFault(name, Scale.LongestName) is { } fault)
            {
                error = cursor.Error($"the name {TextError.Quote(name)} of a scale {fault}");
                return false;
            }

            cursor.Position += equals + 1;
        }

        cursor.SkipWhiteSpace();
        var start = cursor;
        if (cursor.TryTake(SemitonesPrefix))
        {
            return TryReadSemitones(cursor, name ?? NameOf(start.Rest), out scale, out error);
        }

        var isVakra = cursor.TryTake(VakraPrefix);
        var slash = cursor.Rest.IndexOf('/');
        var ascent = slash < 0 ? cursor : cursor.Before(cursor.Position + slash);
        if (!TryReadList(ascent, 1, isVakra, out var up, out error))
        {
            return false;
        }

        ValueList<ScaleTone>? down = null;
        if (slash >= 0)
        {
            var descent = cursor;
            descent.Position += slash + 1;
            if (descent.Rest.IndexOf('/') is var second and >= 0)
            {
                error = descent.ErrorAt(descent.Position + second, "a scale has one '/', between its ascent and its descent");
                return false;
            }

            if (!TryReadList(descent, -1, isVakra, out var falling, out error))
            {
                return false;
            }

            down = falling;
        }
        else if (!up.AsSpan().Contains(new ScaleTone(default, 1)))
        {
            error = cursor.ErrorAt(cursor.End - 1, "the scale must end on the upper tonic; write S' at its end");
            return false;
        }

        return Made(name ?? NameOf(start.Rest), up, down, cursor, out scale, out error);
    }

    /// <summary>The lists written out; a list that does not rise or fall all the way needs the prefix.</summary>
    public static string Write(Scale scale)
    {
        // A list that stops below the upper tonic does not say by itself that its descent stops there too.
        var up = string.Join(' ', scale.Ascent);
        var lists = scale.IsSymmetric && scale.HasUpperTonic ? up : $"{up} / {string.Join(' ', scale.Descent)}";
        return Goes(scale.Ascent, 1) && Goes(scale.Descent, -1) ? lists : $"{VakraPrefix} {lists}";
    }

    /// <summary>The name of a scale that is written out without one.</summary>
    public static string NameOf(ReadOnlySpan<char> text)
    {
        var shown = string.Join(' ', text.ToString().Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        return shown.Length > Scale.LongestName ? "written-out scale" : shown;
    }

    private static bool Goes(ValueList<ScaleTone> tones, int direction)
    {
        for (var i = 1; i < tones.Count; i++)
        {
            if ((tones[i].Semitones - tones[i - 1].Semitones) * direction <= 0)
            {
                return false;
            }
        }

        return true;
    }

    private static bool Made(
        string name, ValueList<ScaleTone> up, ValueList<ScaleTone>? down, TextCursor at, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        error = Scale.Fault(up, down ?? Scale.Turned(up)) is { } fault ? at.Error(fault.Message) : null;
        scale = error is null ? new Scale(name, up, down) : null;
        return error is null;
    }

    private static bool TryReadSemitones(TextCursor cursor, string name, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error)
    {
        scale = null;
        var start = cursor;
        var semitones = new List<int>();
        while (cursor.TryTakeWord(out var word))
        {
            var least = semitones.Count == 0 ? 0 : semitones[^1] + 1;
            var isNumber = int.TryParse(word.Rest, NumberStyles.None, CultureInfo.InvariantCulture, out var semitone);
            if (!isNumber || semitone < least || semitone > UpperTonic || (semitones.Count == 0 && semitone != 0))
            {
                error = word.Error(semitones.Count == 0
                    ? $"the first semitone must be 0, the tonic, not {TextError.Quote(word.Rest)}"
                    : string.Create(CultureInfo.InvariantCulture, $"a semitone must be a number between {least} and {UpperTonic} here, not {TextError.Quote(word.Rest)}; they rise from 0"));
                return false;
            }

            semitones.Add(semitone);
        }

        if (semitones.Count == 0)
        {
            error = start.Error("there are no semitones; write for example semitones: 0 2 4 7 9");
            return false;
        }

        return Made(name, Scale.TonesOf([.. semitones]), null, start, out scale, out error);
    }

    private static bool TryReadList(TextCursor cursor, int direction, bool isVakra, out ValueList<ScaleTone> tones, [NotNullWhen(false)] out TextError? error)
    {
        tones = default;
        var start = cursor;
        var list = new List<ScaleTone>();
        var which = direction > 0 ? "ascent" : "descent";
        var wasSolfa = false;
        while (cursor.TryTakeWord(out var word))
        {
            if (!ToneText.TryRead(word, out var tone, out var isSolfa))
            {
                error = word.Error(ToneText.WhyNot(word.Rest));
                return false;
            }

            if (list.Count > 0 && isSolfa != wasSolfa)
            {
                error = word.Error($"{TextError.Quote(word.Rest)} mixes solfa with svaras or numbers; write the whole {which} in one of them");
                return false;
            }

            wasSolfa = isSolfa;
            if (!isVakra && list.Count > 0 && (tone.Semitones - list[^1].Semitones) * direction <= 0)
            {
                error = word.Error(list.Contains(tone)
                    ? $"{tone} stands twice in the {which}; write it once, or put '{VakraPrefix}' before a scale that zigzags"
                    : $"{tone} after {list[^1]} is out of order in the {which}; mend the order, or put '{VakraPrefix}' before a scale that zigzags");
                return false;
            }

            if (list.Count == Scale.LongestList)
            {
                error = word.Error($"the {which} must have {Scale.FewestNotes} to {Scale.LongestList} entries; this is one more");
                return false;
            }

            list.Add(tone);
        }

        tones = list.ToValueList();
        error = list.Count == 0 ? start.Error($"the {which} is empty; write for example S R2 G3 P D2 S'") : null;
        return error is null;
    }
}
