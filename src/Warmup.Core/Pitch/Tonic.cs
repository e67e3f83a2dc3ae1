using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>The pitch of the middle S: a note of the keyboard, how far the true pitch lies from it, and the reference A4.</summary>
/// <remarks>
/// Given as a note name, a kattai or a frequency. The written name is chosen by the scale (see <see cref="Spelling"/>) unless the
/// user typed one. Immutable, value equality.
/// </remarks>
public sealed record Tonic
{
    /// <summary>The lowest tonic, as a MIDI note: C1.</summary>
    public const int LowestMidi = 24;

    /// <summary>The highest tonic, as a MIDI note: C7.</summary>
    public const int HighestMidi = 96;

    /// <summary>The frequency of A4 unless another is given, in Hz (ISO 16).</summary>
    public const double StandardA4 = 440;

    /// <summary>The lowest reference frequency of A4, in Hz (the project's own setting).</summary>
    public const double LowestA4 = 380;

    /// <summary>The highest reference frequency of A4, in Hz (the project's own setting).</summary>
    public const double HighestA4 = 500;

    private Tonic(int midi, NoteName? typed, double offsetCents, double a4)
    {
        Midi = Require.InRange(midi, LowestMidi, HighestMidi, "the tonic's MIDI note");
        TypedName = typed;
        OffsetCents = offsetCents;
        A4 = Require.InRange(a4, LowestA4, HighestA4);
    }

    /// <summary>The nearest note of the keyboard, 24 (C1) to 96 (C7).</summary>
    public int Midi { get; }

    /// <summary>The name the user typed, or <see langword="null"/> where the scale chooses it.</summary>
    public NoteName? TypedName { get; }

    /// <summary>How far the tonic lies above its keyboard note, in cents, -50 to 50; 0 unless it was given in Hz.</summary>
    public double OffsetCents { get; }

    /// <summary>The reference frequency of A4 in Hz.</summary>
    public double A4 { get; }

    /// <summary>The frequency in Hz.</summary>
    public double Hz => A4 * Math.Pow(2, (Midi - 69 + (OffsetCents / 100)) / 12);

    /// <summary>The kattai, such as <c>5.5</c>.</summary>
    public string KattaiNumber => Kattai.FromMidi(Midi);

    /// <summary>A tonic by note name, which is kept in the notation.</summary>
    /// <param name="name">The note; C1 to C7.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static Tonic FromNote(NoteName name, double a4 = StandardA4) => new(name.Midi, name, 0, a4);

    /// <summary>A tonic by MIDI note; its name is chosen by the scale.</summary>
    /// <param name="midi">24 (C1) to 96 (C7).</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static Tonic FromMidi(int midi, double a4 = StandardA4) => new(midi, null, 0, a4);

    /// <summary>A tonic by frequency: the nearest note of the keyboard and the rest in cents.</summary>
    /// <param name="hz">The frequency in Hz; its nearest note must lie from C1 to C7.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range or is no number.</exception>
    public static Tonic FromHz(double hz, double a4 = StandardA4)
    {
        Require.InRange(hz, 20, 5000);
        Require.InRange(a4, LowestA4, HighestA4);
        var exact = 69 + (12 * Math.Log2(hz / a4));
        var midi = (int)Math.Round(exact, MidpointRounding.ToEven);
        return new Tonic(midi, null, (exact - midi) * 100, a4);
    }

    /// <summary>A tonic by kattai; its name is chosen by the scale.</summary>
    /// <param name="kattai">1 to 7 in halves, without 3.5 and 7.5.</param>
    /// <param name="octave">The octave of its C; 3 unless given.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kattai, or the tonic leaves C1 to C7.</exception>
    public static Tonic FromKattai(Rational kattai, int octave = Kattai.DefaultOctave, double a4 = StandardA4) =>
        Kattai.TryGetPitchClass(kattai, out var pitchClass)
            ? new Tonic((12 * (Require.InRange(octave, 0, 8) + 1)) + pitchClass, null, 0, a4)
            : throw new ArgumentOutOfRangeException(nameof(kattai), kattai, NoSuchKattai(kattai.ToString()));

    /// <summary>The tonic so many semitones higher, with the same offset and reference; its name is chosen by the scale unless it moves by octaves.</summary>
    /// <param name="semitones">Semitones to add; negative ones lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tonic would leave C1 to C7.</exception>
    public Tonic Transposed(int semitones)
    {
        var octaves = semitones % 12 == 0 ? semitones / 12 : (int?)null;
        var typed = octaves is { } o && TypedName is { } name ? new NoteName(name.Letter, name.Alteration, name.Octave + o) : (NoteName?)null;
        return new Tonic(Midi + semitones, typed, OffsetCents, A4);
    }

    /// <summary>
    /// Reads a tonic: a note name (<c>C#3</c>), a kattai (<c>5.5</c> or <c>5.5 kattai</c>) or a frequency (<c>220Hz</c>).
    /// </summary>
    /// <param name="text">The text.</param>
    /// <param name="tonic">The tonic, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <returns>Whether the text was a tonic from C1 to C7.</returns>
    /// <exception cref="ArgumentOutOfRangeException"><paramref name="a4"/> lies outside its range.</exception>
    public static bool TryParse(string text, [NotNullWhen(true)] out Tonic? tonic, [NotNullWhen(false)] out TextError? error, double a4 = StandardA4)
    {
        Require.InRange(a4, LowestA4, HighestA4);
        tonic = null;
        error = null;
        var trimmed = text.AsSpan().Trim();
        if (NoteName.TryParse(trimmed, out var name))
        {
            error = OutOfRange(name.Midi, trimmed);
            tonic = error is null ? FromNote(name, a4) : null;
            return error is null;
        }

        if (trimmed.EndsWith("hz", StringComparison.OrdinalIgnoreCase))
        {
            var number = trimmed[..^2].TrimEnd();
            if (double.TryParse(number, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture, out var hz) && hz is >= 20 and <= 5000)
            {
                error = OutOfRange((int)Math.Round(69 + (12 * Math.Log2(hz / a4)), MidpointRounding.ToEven), trimmed);
                tonic = error is null ? FromHz(hz, a4) : null;
                return error is null;
            }

            error = TextError.At(1, $"{TextError.Quote(trimmed)} is no frequency from 20Hz to 5000Hz; write for example 220Hz");
            return false;
        }

        var digits = trimmed.EndsWith("kattai", StringComparison.OrdinalIgnoreCase) ? trimmed[..^6].TrimEnd() : trimmed;
        if (Rational.TryParse(digits.ToString(), out var kattai) && digits.IndexOf('/') < 0)
        {
            if (!Kattai.TryGetPitchClass(kattai, out _))
            {
                error = TextError.At(1, NoSuchKattai(digits.ToString()));
                return false;
            }

            tonic = FromKattai(kattai, a4: a4);
            return true;
        }

        error = TextError.At(
            1,
            $"{TextError.Quote(trimmed)} is no tonic; write a note (C#3), a kattai (5.5) or a frequency (220Hz)");
        return false;
    }

    /// <summary>Reads a tonic as <see cref="TryParse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <exception cref="WarmupFormatException">The text is no tonic from C1 to C7.</exception>
    public static Tonic Parse(string text) => TryParse(text, out var tonic, out var error) ? tonic! : throw error!.ToException();

    /// <summary>The typed name or the keyboard note, with the offset in cents where there is one.</summary>
    public override string ToString()
    {
        var name = (TypedName ?? NoteName.FromMidi(Midi)).ToString();
        return OffsetCents == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} {OffsetCents:+0.0;-0.0} cents");
    }

    /// <summary>
    /// The frequency, the nearest note, how far the tonic lies from it, the kattai and the reference:
    /// <c>220.5 Hz: A3 +3.9 cents, kattai 6, at A4 = 440 Hz</c>.
    /// </summary>
    public string ToReport() => string.Create(CultureInfo.InvariantCulture, $"{Hz:0.##} Hz: {this}, kattai {KattaiNumber}, at A4 = {A4:0.##} Hz");

    private static TextError? OutOfRange(int midi, ReadOnlySpan<char> text) => midi is >= LowestMidi and <= HighestMidi
        ? null
        : TextError.At(1, string.Create(
            CultureInfo.InvariantCulture,
            $"the tonic {TextError.Quote(text)} is MIDI note {midi}; it must lie from C1 ({LowestMidi}) to C7 ({HighestMidi})"));

    private static string NoSuchKattai(string kattai) =>
        $"there is no kattai {kattai}; kattais are 1 1.5 2 2.5 3 4 4.5 5 5.5 6 6.5 7";
}
