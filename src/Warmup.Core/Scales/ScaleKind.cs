using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

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
/// <remarks>Letters are counted, not notes: a scale with both D1 and D2 in a list still has one D there. Immutable, value equality.</remarks>
[JsonConverter(typeof(TextJsonConverter<ScaleKind>))]
public sealed record ScaleKind : ITextForm<ScaleKind>
{
    private static readonly (string Name, LetterCount Count)[] Names =
    [
        ("svarantara", LetterCount.Svarantara),
        ("audava", LetterCount.Audava),
        ("shadava", LetterCount.Shadava),
        ("sampurna", LetterCount.Sampurna),
    ];

    /// <summary>Makes a kind.</summary>
    /// <param name="ascent">The letters of the ascent.</param>
    /// <param name="descent">The letters of the descent.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is none of the four.</exception>
    public ScaleKind(LetterCount ascent, LetterCount descent)
    {
        Ascent = (LetterCount)Require.InRange((int)ascent, (int)LetterCount.Svarantara, (int)LetterCount.Sampurna, nameof(ascent));
        Descent = (LetterCount)Require.InRange((int)descent, (int)LetterCount.Svarantara, (int)LetterCount.Sampurna, nameof(descent));
    }

    /// <summary>The letters of the ascent.</summary>
    public LetterCount Ascent { get; }

    /// <summary>The letters of the descent.</summary>
    public LetterCount Descent { get; }

    static int ITextForm<ScaleKind>.LongestText => 64;

    static string ITextForm<ScaleKind>.What => "a kind of scale";

    /// <summary>Reads a kind: <c>audava</c> for both ways, or ascent and descent: <c>audava-sampurna</c>.</summary>
    /// <param name="text">The text, in any case; white space around it has no meaning.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a kind.</exception>
    public static ScaleKind Parse(string text) => TextForm.Parse<ScaleKind>(text);

    /// <summary>Reads a kind as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="kind">The kind, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a kind.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out ScaleKind? kind, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<ScaleKind>(text, out kind, out error);

    static ScaleKind IParsable<ScaleKind>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<ScaleKind>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out ScaleKind result) =>
        TryParse(s, out result, out _);

    static ScaleKind ISpanParsable<ScaleKind>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<ScaleKind>(s);

    static bool ISpanParsable<ScaleKind>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out ScaleKind result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<ScaleKind>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out ScaleKind value, [NotNullWhen(false)] out TextError? error)
    {
        var word = cursor.Trimmed();
        var start = word;
        var up = Find(word.TakeWhile(static c => c != '-'));
        var down = word.TryTake('-') ? Find(word.Rest) : up;
        value = up is { } ascent && down is { } descent ? new ScaleKind(ascent, descent) : null;
        error = value is not null ? null : start.Error(
            $"{TextError.Quote(start.Rest)} is not a kind of scale; write svarantara, audava, shadava or sampurna, or two of them such as audava-sampurna");
        return error is null;
    }

    /// <summary><c>audava</c> where both ways agree, otherwise <c>audava-sampurna</c>; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => Ascent == Descent ? Name(Ascent) : $"{Name(Ascent)}-{Name(Descent)}";

    /// <summary>The kind of two lists; <see langword="null"/> where a note is not a svara or a list has fewer than four letters.</summary>
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
