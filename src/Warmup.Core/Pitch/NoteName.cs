using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A note by letter, accidental and octave: C4 is middle C (MIDI note 60), as in scientific pitch notation.</summary>
/// <remarks>The octave changes at C, so B#3 sounds as C4 and Cb4 as B3. <c>default</c> is C0. Immutable.</remarks>
[JsonConverter(typeof(TextJsonConverter<NoteName>))]
public readonly struct NoteName : IEquatable<NoteName>, ITextForm<NoteName>
{
    private const int Lowest = -2;
    private const int Highest = 10;
    private const int MostAccidentals = 3;
    private const string Letters = "CDEFGAB";

    // Counts letters from the lowest octave, so that none is negative.
    private const int LetterShift = -7 * Lowest;

    private static ReadOnlySpan<sbyte> Naturals => [0, 2, 4, 5, 7, 9, 11];

    // One number, as in ScaleTone: the octave in its high half, below it the letter from C and the alteration.
    private readonly int _packed;

    /// <summary>Makes a note name.</summary>
    /// <param name="letter">A to G.</param>
    /// <param name="alteration">Semitones the accidental adds, -3 to 3; a written note has at most two.</param>
    /// <param name="octave">-2 to 10; middle C is in octave 4.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public NoteName(char letter, int alteration, int octave)
        : this(IndexOf(letter), alteration, octave)
    {
    }

    private NoteName(int letterIndex, int alteration, int octave)
    {
        var low = unchecked((byte)Require.InRange(alteration, -MostAccidentals, MostAccidentals));
        _packed = (Require.InRange(octave, Lowest, Highest) << 16) | (letterIndex << 8) | low;
    }

    /// <summary>The lowest octave, -2 (the project's own setting).</summary>
    public static int LowestOctave => Lowest;

    /// <summary>The highest octave, 10 (the project's own setting).</summary>
    public static int HighestOctave => Highest;

    /// <summary>The letter, A to G.</summary>
    public char Letter => Letters[LetterIndex];

    /// <summary>0 for C to 6 for B.</summary>
    public int LetterIndex => (_packed >> 8) & 0xFF;

    /// <summary>Semitones the accidental adds: -1 for a flat, 2 for a double sharp.</summary>
    public int Alteration => unchecked((sbyte)_packed);

    /// <summary>The octave; middle C is in octave 4.</summary>
    public int Octave => _packed >> 16;

    /// <summary>The MIDI note number, in equal temperament; 60 for middle C. It may lie outside 0 to 127.</summary>
    public int Midi => (12 * (Octave + 1)) + Naturals[LetterIndex] + Alteration;

    /// <summary>Equality of letter, accidental and octave: C#4 and Db4 differ.</summary>
    /// <param name="left">One name.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(NoteName left, NoteName right) => left.Equals(right);

    /// <summary>Inequality of letter, accidental or octave.</summary>
    /// <param name="left">One name.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(NoteName left, NoteName right) => !left.Equals(right);

    static int ITextForm<NoteName>.LongestText => 64;

    static string ITextForm<NoteName>.What => "a note";

    /// <summary>Reads <c>C4</c>, <c>F#3</c>, <c>Bb3</c>, <c>E♭4</c>, <c>Abb2</c>, <c>Gx4</c>.</summary>
    /// <param name="text">The text; the letter in either case, at most three accidentals and an octave from -2 to 10. White space around it has no meaning.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a note.</exception>
    public static NoteName Parse(string text) => TextForm.Parse<NoteName>(text);

    /// <summary>Reads a note as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="name">The name, or C0.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a note.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, out NoteName name, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse(text, out name, out error);

    static NoteName IParsable<NoteName>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<NoteName>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, out NoteName result) => TryParse(s, out result, out _);

    static NoteName ISpanParsable<NoteName>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<NoteName>(s);

    static bool ISpanParsable<NoteName>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, out NoteName result) => TextForm.TryParse(s, out result, out _);

    static bool ITextForm<NoteName>.TryRead(TextCursor cursor, out NoteName value, [NotNullWhen(false)] out TextError? error)
    {
        var word = cursor.Trimmed();
        error = TryRead(word, out value)
            ? null
            : word.Error(string.Create(
                CultureInfo.InvariantCulture,
                $"{(word.IsAtEnd ? "the note is missing" : $"{TextError.Quote(word.Rest)} is not a note")}; write a letter A to G, accidentals and an octave from {Lowest} to {Highest}, such as F#3"));
        return error is null;
    }

    /// <summary>Reads a word that is a note name.</summary>
    internal static bool TryRead(TextCursor word, out NoteName name)
    {
        name = default;
        var letter = Letters.IndexOf(char.ToUpperInvariant(word.Peek()), StringComparison.Ordinal);
        if (letter < 0)
        {
            return false;
        }

        word.Position++;
        var alteration = Accidentals.Take(ref word);
        if (Math.Abs(alteration) > MostAccidentals
            || !word.TryTakeInteger(out var octave)
            || octave is < Lowest or > Highest
            || !word.IsAtEnd)
        {
            return false;
        }

        name = new NoteName(letter, alteration, octave);
        return true;
    }

    /// <summary>The usual name of a MIDI note number: with a sharp on the black keys.</summary>
    /// <param name="midi">0 to 127.</param>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="midi"/> lies outside its range.</exception>
    public static NoteName FromMidi(int midi)
    {
        Require.InRange(midi, 0, 127);
        var pitchClass = midi % 12;
        var letter = Naturals.LastIndexOf((sbyte)pitchClass);
        var sharp = 0;
        if (letter < 0)
        {
            sharp = 1;
            letter = Naturals.LastIndexOf((sbyte)(pitchClass - 1));
        }

        return new NoteName(letter, sharp, (midi / 12) - 1);
    }

    /// <summary>The name of a MIDI note with a given letter.</summary>
    /// <param name="letterIndex">The letter counted over the octaves: 7 times the octave plus 0 for C to 6 for B.</param>
    /// <param name="midi">The MIDI note number.</param>
    /// <param name="name">The name, or C0.</param>
    /// <returns>Whether the letter lies in the octaves and needs three accidentals at most.</returns>
    internal static bool TrySpell(int letterIndex, int midi, out NoteName name)
    {
        if (AlterationOf(letterIndex, midi) is not (>= -MostAccidentals and <= MostAccidentals and var alteration))
        {
            name = default;
            return false;
        }

        var (octave, letter) = Math.DivRem(letterIndex + LetterShift, 7);
        name = new NoteName(letter, alteration, octave + Lowest);
        return true;
    }

    /// <summary>The semitones that an accidental on a letter has to add to give a MIDI note; <see langword="null"/> beyond the octaves.</summary>
    /// <param name="letterIndex">The letter counted over the octaves.</param>
    /// <param name="midi">The MIDI note number.</param>
    internal static int? AlterationOf(int letterIndex, int midi)
    {
        var letter = letterIndex + LetterShift;
        return letter >= 0 && letter < 7 * (Highest - Lowest + 1) ? midi - NaturalOf(letterIndex) : null;
    }

    /// <summary>The MIDI note of a letter without an accidental: seven letters lie as evenly as whole numbers can on twelve semitones.</summary>
    /// <param name="letterIndex">The letter counted over the octaves, from the lowest octave on.</param>
    internal static int NaturalOf(int letterIndex) => (((12 * (letterIndex + LetterShift)) + 5) / 7) + (12 * (Lowest + 1));

    /// <inheritdoc/>
    public bool Equals(NoteName other) => _packed == other._packed;

    /// <inheritdoc/>
    public override bool Equals(object? obj) => obj is NoteName other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode() => _packed;

    /// <summary>The name in ASCII: <c>F#3</c>, <c>Bb3</c>, <c>Ebb4</c>, <c>G##4</c>; <see cref="Parse"/> reads it back.</summary>
    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"{ToPitchClassString()}{Octave}");

    /// <summary>The name without its octave: <c>F#</c>.</summary>
    internal string ToPitchClassString() => Letter + new string(Alteration < 0 ? 'b' : '#', Math.Abs(Alteration));

    private static int IndexOf(char letter)
    {
        var index = Letters.IndexOf(letter, StringComparison.Ordinal);
        return index >= 0 ? index : throw new ArgumentOutOfRangeException(nameof(letter), letter, $"letter must be A to G, not '{letter}'");
    }
}
