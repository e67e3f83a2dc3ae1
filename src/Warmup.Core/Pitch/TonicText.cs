using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <content>The text form: <c>C#3</c>, <c>5.5 kattai</c>, <c>220Hz</c>, <c>midi 57 +3.9c, A4=442Hz</c>.</content>
public sealed partial record Tonic : ITextForm<Tonic>, IWritesText
{
    private const double LowestHz = 20;
    private const double HighestHz = 5000;
    private const double FarthestCents = 50;
    private const string Forms = "write a note (C#3), a kattai (5.5) or a frequency (220Hz)";

    static int ITextForm<Tonic>.LongestText => 200;

    static string ITextForm<Tonic>.What => "a tonic";

    /// <summary>
    /// Reads a tonic: a note name (<c>C#3</c>), a kattai (<c>5.5</c> or <c>5.5 kattai</c>, in octave 3), a frequency (<c>220Hz</c>) or a
    /// MIDI note (<c>midi 57</c>). A note may lie off its key (<c>A3 +3.9 cents</c>), and the reference may follow: <c>C#3, A4=432Hz</c>.
    /// </summary>
    /// <param name="text">The text; white space around it has no meaning. The tonic lies from C1 to C7.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a tonic.</exception>
    public static Tonic Parse(string text) => TextForm.Parse<Tonic>(text);

    /// <summary>Reads a tonic as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="tonic">The tonic, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <param name="a4">The reference A4 in Hz where the text names none, 380 to 500; 440 by default.</param>
    /// <returns>Whether the text was a tonic from C1 to C7.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="a4"/> lies outside its range.</exception>
    public static bool TryParse(
        [NotNullWhen(true)] string? text, [NotNullWhen(true)] out Tonic? tonic, [NotNullWhen(false)] out TextError? error, double a4 = UsualA4)
    {
        Require.InRange(a4, LowestA4, HighestA4);
        tonic = null;
        return TextForm.IsReadable<Tonic>(text, out error) && TryRead(new TextCursor(text), a4, out tonic, out error);
    }

    static Tonic IParsable<Tonic>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Tonic>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Tonic result) => TryParse(s, out result, out _);

    static Tonic ISpanParsable<Tonic>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Tonic>(s);

    static bool ISpanParsable<Tonic>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Tonic result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Tonic>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out Tonic value, [NotNullWhen(false)] out TextError? error) =>
        TryRead(cursor, UsualA4, out value, out error);

    /// <summary>
    /// The whole value, as <see cref="Parse"/> reads it back: the typed name (<c>C#3</c>), or the MIDI note with what the tonic lies off it
    /// (<c>midi 57 +3.9c</c>); the reference where it is not 440 Hz.
    /// </summary>
    public string ToText()
    {
        var reference = A4.Equals(UsualA4) ? string.Empty : string.Create(CultureInfo.InvariantCulture, $", A4={A4:R}Hz");
        var offset = OffsetCents == 0 ? string.Empty : $" {(OffsetCents > 0 ? "+" : string.Empty)}{Interval.CentsText(OffsetCents)}c";
        return string.Create(CultureInfo.InvariantCulture, $"{TypedName?.ToString() ?? $"midi {Midi}"}{offset}{reference}");
    }

    private static bool TryRead(TextCursor cursor, double a4, [NotNullWhen(true)] out Tonic? tonic, [NotNullWhen(false)] out TextError? error)
    {
        tonic = null;
        var text = cursor.Trimmed();
        var comma = text.Rest.IndexOf(',');
        if (comma < 0)
        {
            return TryReadPitch(text, a4, out tonic, out error);
        }

        var reference = text;
        reference.Position += comma + 1;
        return TryReadReference(reference.Trimmed(), out a4, out error) && TryReadPitch(text.Before(text.Position + comma).Trimmed(), a4, out tonic, out error);
    }

    private static bool TryReadReference(TextCursor cursor, out double a4, [NotNullWhen(false)] out TextError? error)
    {
        var start = cursor;
        a4 = 0;
        error = cursor.TryTake("A4") && cursor.PeekPastWhiteSpace() == '=' && cursor.TryTake('=') && TryReadHz(cursor.Trimmed(), out a4) && a4 >= LowestA4 && a4 <= HighestA4
            ? null
            : start.Error(string.Create(
                CultureInfo.InvariantCulture, $"{TextError.Quote(start.Rest)} is not a reference from {LowestA4} to {HighestA4} Hz; write for example A4=442Hz"));
        return error is null;
    }

    private static bool TryReadPitch(TextCursor text, double a4, [NotNullWhen(true)] out Tonic? tonic, [NotNullWhen(false)] out TextError? error)
    {
        tonic = null;
        if (text.Rest.EndsWith("hz", StringComparison.OrdinalIgnoreCase))
        {
            if (!TryReadHz(text, out var hz) || hz is not (>= LowestHz and <= HighestHz))
            {
                error = text.Error($"{TextError.Quote(text.Rest)} is not a frequency from 20Hz to 5000Hz; write for example 220Hz");
                return false;
            }

            error = OutOfRange(text, (int)Math.Round(69 + (12 * Math.Log2(hz / a4)), MidpointRounding.ToEven));
            tonic = error is null ? FromHz(hz, a4) : null;
            return error is null;
        }

        var digits = text.Rest.EndsWith("kattai", StringComparison.OrdinalIgnoreCase) ? text.Rest[..^6].TrimEnd() : text.Rest;
        if (!digits.Contains('/') && Rational.TryRead(digits, out var kattai))
        {
            error = Kattai.TryGetPitchClass(kattai, out _) ? null : text.Error(NoSuchKattai(digits.ToString()));
            tonic = error is null ? FromKattai(kattai, a4: a4) : null;
            return error is null;
        }

        if (!TryReadKey(text, out var midi, out var name, out var offset))
        {
            error = text.Error($"{(text.IsAtEnd ? "the tonic is missing" : $"{TextError.Quote(text.Rest)} is not a tonic")}; {Forms}");
            return false;
        }

        error = OutOfRange(text, midi);
        tonic = error is null ? new Tonic(midi, offset == 0 ? name : null, offset, a4) : null;
        return error is null;
    }

    private static bool TryReadHz(TextCursor text, out double hz)
    {
        hz = 0;
        return text.Rest.EndsWith("hz", StringComparison.OrdinalIgnoreCase)
            && double.TryParse(text.Rest[..^2].TrimEnd(), NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out hz);
    }

    /// <summary>Reads a note or a MIDI note, and how far the tonic lies off it.</summary>
    private static bool TryReadKey(TextCursor text, out int midi, out NoteName? name, out double offset)
    {
        (name, offset) = (null, 0);
        if (text.TryTake("midi"))
        {
            text.SkipWhiteSpace();
            if (!text.TryTakeInteger(out midi))
            {
                return false;
            }
        }
        else
        {
            var start = text.Position;
            text.TakeWord();
            var isNote = NoteName.TryRead(text.Word(start), out var note);
            (midi, name) = (note.Midi, note);
            if (!isNote)
            {
                return false;
            }
        }

        if (text.PeekPastWhiteSpace() is not ('+' or '-'))
        {
            return text.IsAtEnd;
        }

        var cents = text.Rest;
        cents = cents.EndsWith("cents", StringComparison.OrdinalIgnoreCase) ? cents[..^5] : cents.EndsWith("c", StringComparison.OrdinalIgnoreCase) ? cents[..^1] : default;
        return Interval.TryReadCents(cents.TrimEnd(), out offset) && Math.Abs(offset) <= FarthestCents;
    }

    private static TextError? OutOfRange(TextCursor text, int midi) => midi >= LowestMidi && midi <= HighestMidi
        ? null
        : text.Error(string.Create(
            CultureInfo.InvariantCulture,
            $"the tonic {TextError.Quote(text.Rest)} is MIDI note {midi}; it must lie from C1 ({LowestMidi}) to C7 ({HighestMidi})"));
}
