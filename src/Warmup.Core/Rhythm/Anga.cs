using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>An anga (limb) of a tala: its aksharas, each with a gesture of the hand. <c>default</c> is the anudrutam.</summary>
/// <remarks>
/// The laghu, the drutam and the anudrutam have a sign in notation: <c>I4</c> for a laghu of four, <c>O</c> and <c>U</c> (common practice).
/// Any other anga is made from its gestures. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Anga>))]
public readonly record struct Anga : ITextForm<Anga>
{
    // Nothing stands for the one clap of the anudrutam, so that the default value is an anga too.
    private readonly ValueList<Kriya> _gestures;

    /// <summary>Makes an anga of its gestures, one for each akshara.</summary>
    /// <param name="gestures">1 to 64 gestures.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are none or too many, or a value is none of the gestures.</exception>
    public Anga(ValueList<Kriya> gestures)
    {
        Require.InRange(gestures.Count, 1, Meter.MostBeats, "the number of an anga's gestures");
        foreach (var gesture in gestures)
        {
            Require.InRange((int)gesture, (int)Kriya.Clap, (int)Kriya.Silent, nameof(gestures));
        }

        _gestures = gestures.Count == 1 && gestures[0] == Kriya.Clap ? default : gestures;
    }

    /// <summary>Two aksharas: clap, wave.</summary>
    public static Anga Drutam { get; } = new([Kriya.Clap, Kriya.Wave]);

    /// <summary>One akshara: clap.</summary>
    public static Anga Anudrutam => default;

    /// <summary>Its length in aksharas, 1 to 64.</summary>
    public int Aksharas => Math.Max(1, _gestures.Count);

    /// <summary>The gesture of each of its aksharas.</summary>
    public ValueList<Kriya> Gestures => _gestures.IsEmpty ? [Kriya.Clap] : _gestures;

    /// <summary>Its sign in notation: <c>I3</c>, <c>I4</c>, <c>I5</c>, <c>I7</c> or <c>I9</c> for a laghu, <c>O</c> for a drutam, <c>U</c> for an anudrutam; <see langword="null"/> for another anga.</summary>
    public string? Sign
    {
        get
        {
            if (this == default)
            {
                return "U";
            }

            foreach (var jati in Jatis.All)
            {
                if (this == Laghu(jati))
                {
                    return string.Create(CultureInfo.InvariantCulture, $"I{Aksharas}");
                }
            }

            return this == Drutam ? "O" : null;
        }
    }

    /// <summary>A laghu: a clap, then a finger for each further akshara.</summary>
    /// <param name="jati">Its count.</param>
    /// <exception cref="ArgumentOutOfRangeException">The jati is none of the five.</exception>
    public static Anga Laghu(Jati jati)
    {
        const int Fingers = Kriya.Thumb - Kriya.LittleFinger + 1;
        var gestures = new Kriya[jati.Aksharas()];
        for (var i = 1; i < gestures.Length; i++)
        {
            gestures[i] = Kriya.LittleFinger + ((i - 1) % Fingers);
        }

        return new(ValueList.Adopt(gestures));
    }

    static int ITextForm<Anga>.LongestText => 800;

    static string ITextForm<Anga>.What => "an anga";

    /// <summary>Reads the sign of an anga (<c>I4</c>, <c>O</c>, <c>U</c>) or its gestures in words: <c>clap silent wave</c>.</summary>
    /// <param name="text">The sign, or 1 to 64 of the words clap, little, ring, middle, index, thumb, wave and silent, separated by spaces.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not an anga.</exception>
    public static Anga Parse(string text) => TextForm.Parse<Anga>(text);

    /// <summary>Reads an anga as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="anga">The anga, or the anudrutam.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was an anga.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out Anga anga, [NotNullWhen(false)] out TextError? error) => TextForm.TryParse(text, out anga, out error);

    static Anga IParsable<Anga>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Anga>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out Anga result) => TryParse(s, out result, out _);

    static Anga ISpanParsable<Anga>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Anga>(s);

    static bool ISpanParsable<Anga>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out Anga result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Anga>.TryRead(TextCursor cursor, out Anga value, [NotNullWhen(false)] out TextError? error) => AngaText.TryRead(cursor, out value, out error);

    /// <summary>The sign, or the gestures in words where there is none; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => Sign ?? AngaText.Write(Gestures);
}
