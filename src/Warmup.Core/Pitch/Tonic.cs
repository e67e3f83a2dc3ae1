using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>The pitch of the middle S: a note of the keyboard, how far the true pitch lies from it, and the reference A4.</summary>
/// <remarks>
/// Given as a note name, a kattai or a frequency. The scale chooses the written name unless the user typed one. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Tonic>))]
public sealed partial record Tonic
{
    // Constants, because a parameter's default must be one.
    private const double UsualA4 = 440;
    private const int UsualOctave = 3;

    private Tonic(int midi, NoteName? typed, double offsetCents, double a4)
    {
        Midi = Require.InRange(midi, LowestMidi, HighestMidi, "the tonic's MIDI note");
        TypedName = typed;
        OffsetCents = offsetCents;
        A4 = Require.InRange(a4, LowestA4, HighestA4);
        Hz = A4 * Math.Pow(2, (Midi - 69 + (OffsetCents / 100)) / 12);
    }

    /// <summary>The lowest tonic as a MIDI note: 24, C1 (the project's own setting).</summary>
    public static int LowestMidi => 24;

    /// <summary>The highest tonic as a MIDI note: 96, C7 (the project's own setting).</summary>
    public static int HighestMidi => 96;

    /// <summary>The frequency of A4 unless another is given: 440 Hz (ISO 16).</summary>
    public static double StandardA4 => UsualA4;

    /// <summary>The lowest reference frequency of A4: 380 Hz (the project's own setting).</summary>
    public static double LowestA4 => 380;

    /// <summary>The highest reference frequency of A4: 500 Hz (the project's own setting).</summary>
    public static double HighestA4 => 500;

    /// <summary>The nearest note of the keyboard, 24 (C1) to 96 (C7).</summary>
    public int Midi { get; }

    /// <summary>The name the user typed, or <see langword="null"/> where the scale chooses it.</summary>
    public NoteName? TypedName { get; }

    /// <summary>How far the tonic lies above its keyboard note, in cents, -50 to 50; 0 unless it was given in Hz.</summary>
    public double OffsetCents { get; }

    /// <summary>The reference frequency of A4 in Hz.</summary>
    public double A4 { get; }

    /// <summary>The frequency in Hz.</summary>
    public double Hz { get; }

    /// <summary>The kattai, such as <c>5.5</c>.</summary>
    public string KattaiNumber => Kattai.FromMidi(Midi);

    /// <summary>A tonic by note name, which is kept in the notation.</summary>
    /// <param name="name">The note; C1 to C7.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static Tonic FromNote(NoteName name, double a4 = UsualA4) => new(name.Midi, name, 0, a4);

    /// <summary>A tonic by MIDI note; the scale chooses its name.</summary>
    /// <param name="midi">24 (C1) to 96 (C7).</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static Tonic FromMidi(int midi, double a4 = UsualA4) => new(midi, null, 0, a4);

    /// <summary>A tonic by frequency: the nearest note of the keyboard and the rest in cents.</summary>
    /// <param name="hz">The frequency in Hz; its nearest note must lie from C1 to C7.</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range or is not a number.</exception>
    public static Tonic FromHz(double hz, double a4 = UsualA4)
    {
        Require.InRange(hz, 20, 5000);
        Require.InRange(a4, LowestA4, HighestA4);
        var exact = 69 + (12 * Math.Log2(hz / a4));
        var midi = (int)Math.Round(exact, MidpointRounding.ToEven);
        return new Tonic(midi, null, (exact - midi) * 100, a4);
    }

    /// <summary>A tonic by kattai; the scale chooses its name.</summary>
    /// <param name="kattai">1 to 7 in halves, without 3.5 and 7.5.</param>
    /// <param name="octave">The octave of its C, 0 to 8; 3 by default (the project's own setting).</param>
    /// <param name="a4">The reference A4 in Hz, 380 to 500.</param>
    /// <exception cref="ArgumentOutOfRangeException">There is no such kattai, or the tonic leaves C1 to C7.</exception>
    public static Tonic FromKattai(Rational kattai, int octave = UsualOctave, double a4 = UsualA4) =>
        Kattai.TryGetPitchClass(kattai, out var pitchClass)
            ? new Tonic((12 * (Require.InRange(octave, 0, 8) + 1)) + pitchClass, null, 0, a4)
            : throw new ArgumentOutOfRangeException(nameof(kattai), kattai, NoSuchKattai(kattai.ToString()));

    /// <summary>A higher tonic with the same offset and reference. The scale chooses its name unless it moves by whole octaves.</summary>
    /// <param name="semitones">Semitones to add; negative ones lower.</param>
    /// <exception cref="ArgumentOutOfRangeException">The tonic would leave C1 to C7.</exception>
    public Tonic Transposed(int semitones)
    {
        var octaves = semitones % 12 == 0 ? semitones / 12 : (int?)null;
        var typed = octaves is { } o && TypedName is { } name ? new NoteName(name.Letter, name.Alteration, name.Octave + o) : (NoteName?)null;
        return new Tonic(Midi + semitones, typed, OffsetCents, A4);
    }

    /// <summary>
    /// The typed name or the keyboard note, with the offset in cents where there is one: <c>A3 +3.9 cents</c>. <see cref="ToText"/> has
    /// the whole value.
    /// </summary>
    public override string ToString()
    {
        var name = (TypedName ?? NoteName.FromMidi(Midi)).ToString();
        return OffsetCents == 0 ? name : string.Create(CultureInfo.InvariantCulture, $"{name} {OffsetCents:+0.0;-0.0} cents");
    }

    /// <summary>
    /// The frequency, the nearest note, how far the tonic lies from it, the kattai and the reference:
    /// <c>220.5 Hz: A3 +3.9 cents, kattai 6, at A4 = 440 Hz</c>.
    /// </summary>
    /// <param name="hasKattai">Whether the kattai is named; true by default.</param>
    public string ToReport(bool hasKattai = true) =>
        string.Create(CultureInfo.InvariantCulture, $"{Hz:0.##} Hz: {this}, {(hasKattai ? $"kattai {KattaiNumber}, " : string.Empty)}at A4 = {A4:0.##} Hz");

    private static string NoSuchKattai(string kattai) =>
        $"there is no kattai {kattai}; kattais are 1 1.5 2 2.5 3 4 4.5 5 5.5 6 6.5 7";
}
