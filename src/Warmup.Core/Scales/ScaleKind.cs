using System.Diagnostics.CodeAnalysis;

namespace Warmup;

/// <summary>How many of the seven letters a list of a scale uses (common practice: the upper tonic and repeated letters do not count).</summary>
public enum LetterCount
{
    /// <summary>Four letters (svarantara).</summary>
    Svarantara = 4,

    /// <summary>Five letters (audava).</summary>
    Audava = 5,

    /// <summary>Six letters (shadava).</summary>
    Shadava = 6,

    /// <summary>Seven letters (sampurna).</summary>
    Sampurna = 7,
}

/// <summary>The kind of a scale by the letters of its ascent and its descent: audava, shadava-sampurna, ...</summary>
/// <param name="Ascent">The letters of the ascent.</param>
/// <param name="Descent">The letters of the descent.</param>
/// <remarks>Letters are counted, not notes: a scale with both D1 and D2 in a list still has one D there. Immutable, value equality.</remarks>
public sealed record ScaleKind(LetterCount Ascent, LetterCount Descent)
{
    private static readonly (string Name, LetterCount Count)[] Names =
    [
        ("svarantara", LetterCount.Svarantara),
        ("audava", LetterCount.Audava),
        ("shadava", LetterCount.Shadava),
        ("sampurna", LetterCount.Sampurna),
    ];

    /// <summary>Reads a kind: <c>audava</c> for both ways, or ascent and descent: <c>audava-sampurna</c>.</summary>
    /// <param name="text">The text, in any case.</param>
    /// <param name="kind">The kind, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a kind.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out ScaleKind? kind, [NotNullWhen(false)] out TextError? error)
    {
        kind = null;
        error = null;
        var trimmed = text.AsSpan().Trim();
        var dash = trimmed.IndexOf('-');
        var first = dash < 0 ? trimmed : trimmed[..dash];
        var second = dash < 0 ? trimmed : trimmed[(dash + 1)..];
        if (Find(first) is not { } up || Find(second) is not { } down)
        {
            error = TextError.At(
                1, $"{TextError.Quote(trimmed)} is no kind of scale; write svarantara, audava, shadava or sampurna, or two of them such as audava-sampurna");
            return false;
        }

        kind = new ScaleKind(up, down);
        return true;
    }

    /// <summary><c>audava</c> where both ways agree, otherwise <c>audava-sampurna</c>.</summary>
    public override string ToString() => Ascent == Descent ? Name(Ascent) : $"{Name(Ascent)}-{Name(Descent)}";

    /// <summary>The kind of two lists; <see langword="null"/> where a note is no svara or a list has fewer than four letters.</summary>
    internal static ScaleKind? Of(ValueList<ScaleTone> ascent, ValueList<ScaleTone> descent) =>
        Count(ascent) is { } up && Count(descent) is { } down ? new ScaleKind(up, down) : null;

    private static LetterCount? Count(ValueList<ScaleTone> tones)
    {
        var letters = 0;
        foreach (var tone in tones)
        {
            if (!tone.Degree.IsSvara)
            {
                return null;
            }

            letters |= 1 << tone.Degree.Letter;
        }

        var count = System.Numerics.BitOperations.PopCount((uint)letters);
        return count >= (int)LetterCount.Svarantara ? (LetterCount)count : null;
    }

    private static LetterCount? Find(ReadOnlySpan<char> word)
    {
        foreach (var (name, count) in Names)
        {
            if (word.Equals(name, StringComparison.OrdinalIgnoreCase))
            {
                return count;
            }
        }

        return null;
    }

    private static string Name(LetterCount count) => Names[(int)count - (int)LetterCount.Svarantara].Name;
}
