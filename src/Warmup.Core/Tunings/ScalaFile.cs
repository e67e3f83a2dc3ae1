using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace Warmup;

/// <summary>A tuning in the Scala scale format (<c>.scl</c>): a description and the pitches above an implicit 1/1, usually up to the octave.</summary>
/// <param name="Description">The description line; it may be empty.</param>
/// <param name="Pitches">The pitches above 1/1 in the order of the file, exact ratios or cents.</param>
/// <remarks>
/// The published rules of the format: a line that begins with <c>!</c> is a comment; then a line of description, a line with the number
/// of pitches, and one pitch a line: with a period it is cents, otherwise a ratio, a whole number n being n/1; what follows a pitch on its
/// line is ignored. Immutable, value equality.
/// </remarks>
public sealed record ScalaFile(string Description, ValueList<Interval> Pitches)
{
    /// <summary>The largest file that is read, in characters (the project's own bound).</summary>
    public const int LargestFile = 1_000_000;

    /// <summary>The most pitches of a file (the project's own bound).</summary>
    public const int MostPitches = 4_096;

    /// <summary>Reads a file.</summary>
    /// <param name="text">The file's text, at most 1,000,000 characters.</param>
    /// <param name="file">The tuning, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong and where, or <see langword="null"/>.</param>
    /// <returns>Whether the text was such a file.</returns>
    public static bool TryParse(string text, [NotNullWhen(true)] out ScalaFile? file, [NotNullWhen(false)] out TextError? error) => ScalaReader.TryRead(text, out file, out error);

    /// <summary>Reads a file as <see cref="TryParse"/> does.</summary>
    /// <param name="source">The file's bytes: ASCII, UTF-8, or 8-bit text whose other characters stand in comments. It is not closed.</param>
    /// <exception cref="WarmupFormatException">The bytes are no such file, or are too many.</exception>
    public static ScalaFile Read(Stream source)
    {
        // One character more than is allowed shows that the file is too long, whatever its length.
        using var reader = new StreamReader(source, new UTF8Encoding(false, false), true, 4096, leaveOpen: true);
        var buffer = new char[4096];
        var text = new StringBuilder();
        while (text.Length <= LargestFile && reader.Read(buffer, 0, buffer.Length) is var count and > 0)
        {
            text.Append(buffer, 0, count);
        }

        return TryParse(text.ToString(), out var file, out var error) ? file! : throw error!.ToException();
    }

    /// <summary>The twelve places of a tuning, and the octave, as a file.</summary>
    /// <param name="tuning">The tuning; svaras tuned otherwise than their place are not in the file, which has no letters.</param>
    public static ScalaFile FromTuning(Tuning tuning) =>
        new(tuning.Name, [.. tuning.Intervals.AsSpan()[1..], Interval.FromRatio(2)]);

    /// <summary>The pitches of a scale's notes in a tuning, and the octave, as a file.</summary>
    /// <param name="scale">The scale; the notes of both lists from low to high.</param>
    /// <param name="tuning">The tuning.</param>
    public static ScalaFile FromScale(Scale scale, Tuning tuning)
    {
        var pitches = ((IEnumerable<Degree>)scale.Degrees)
            .Where(d => d != default)
            .Select(d => tuning[d])
            .Distinct()
            .OrderBy(i => i.Cents)
            .Append(Interval.FromRatio(2));
        return new ScalaFile($"{scale.Name}, {tuning}", pitches.ToValueList());
    }

    /// <summary>The tuning of a file of twelve pitches that ends on the octave: the n-th pitch is the place n semitones above the tonic.</summary>
    /// <param name="name">The tuning's name.</param>
    /// <exception cref="ArgumentException">There are not twelve pitches, or the last one is not the octave: give the places yourself.</exception>
    public Tuning ToTuning(string name)
    {
        if (Pitches.Count != 12)
        {
            throw new ArgumentException(string.Create(
                CultureInfo.InvariantCulture,
                $"a file of 12 pitches is a tuning as it stands; this one has {Pitches.Count}, so say which pitch each of the 12 places takes"));
        }

        return Math.Abs(Pitches[11].Cents - 1200) < 1e-9
            ? ToTuning(name, [0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11])
            : throw new ArgumentException($"the last pitch of a tuning is the octave 2/1, not {Pitches[11]}; say which pitch each of the 12 places takes");
    }

    /// <summary>A tuning from any file: which pitch each of the twelve places takes. Octaves are pure, whatever the file's last pitch is.</summary>
    /// <param name="name">The tuning's name.</param>
    /// <param name="places">Twelve numbers of pitches: 0 is 1/1, 1 the first pitch of the file; the tonic's place takes 0.</param>
    /// <exception cref="ArgumentException">There are not twelve numbers, one is not in the file, or the tonic's place is no unison.</exception>
    public Tuning ToTuning(string name, ReadOnlySpan<int> places)
    {
        var intervals = new Interval[places.Length];
        for (var i = 0; i < places.Length; i++)
        {
            if (places[i] < 0 || places[i] > Pitches.Count)
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"a place must take a pitch between 0 and {Pitches.Count}, not {places[i]}"), nameof(places));
            }

            intervals[i] = places[i] == 0 ? Interval.Unison : Pitches[places[i] - 1];
        }

        return new Tuning(name, ValueList.Adopt(intervals));
    }

    /// <summary>The file's text, with <c>\n</c> at the end of each line; <see cref="TryParse"/> gives an equal value back.</summary>
    /// <exception cref="ArgumentException">The description begins with <c>!</c>, which would make it a comment, or holds control characters.</exception>
    public string ToText()
    {
        Require.PlainText(Description, Drill.LongestTitle, nameof(Description));
        if (Description.StartsWith('!'))
        {
            throw new ArgumentException("a description must not begin with '!', which begins a comment");
        }

        var text = new StringBuilder();
        text.Append(Description).Append('\n');
        text.Append(CultureInfo.InvariantCulture, $" {Pitches.Count}\n!\n");
        foreach (var pitch in Pitches)
        {
            text.Append(' ').Append(PitchText(pitch)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Writes the file in UTF-8 without a byte-order mark.</summary>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    /// <exception cref="ArgumentException">The description begins with <c>!</c> or holds control characters.</exception>
    public void Write(Stream destination) => destination.Write(Encoding.UTF8.GetBytes(ToText()));

    private static string PitchText(Interval pitch)
    {
        if (pitch.Ratio is { } ratio)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{ratio.Numerator}/{ratio.Denominator}");
        }

        // The shortest digits that give the same number back, never with an exponent; the period says that they are cents.
        var digits = pitch.Cents.ToString("R", CultureInfo.InvariantCulture);
        digits = digits.Contains('E', StringComparison.Ordinal) ? pitch.Cents.ToString("F60", CultureInfo.InvariantCulture) : digits;
        return digits.Contains('.', StringComparison.Ordinal) ? digits : digits + ".0";
    }
}
