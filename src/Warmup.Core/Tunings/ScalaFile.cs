using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>A tuning in the Scala scale format (<c>.scl</c>): a description and the pitches above an implicit 1/1, usually up to the octave.</summary>
/// <remarks>
/// The published rules of the format: a line that begins with <c>!</c> is a comment; then a line of description, a line with the number
/// of pitches, and one pitch a line: with a period it is cents, otherwise a ratio, a whole number n being n/1; what follows a pitch on its
/// line is ignored. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<ScalaFile>))]
public sealed record ScalaFile : ITextForm<ScalaFile>, IWritesText
{
    /// <summary>Makes a file.</summary>
    /// <param name="description">
    /// The description line: at most 10,000 characters, none of them a control character. It may be empty; it does not begin with <c>!</c>,
    /// which would make it a comment, nor end with white space.
    /// </param>
    /// <param name="pitches">The pitches above 1/1 in the order of the file, exact ratios or cents; at most 4,096.</param>
    /// <exception cref="ArgumentNullException"><paramref name="description"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException"><paramref name="description"/> is not such a line.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are too many pitches.</exception>
    public ScalaFile(string description, ValueList<Interval> pitches)
    {
        Description = Require.PlainText(description, LongestDescription);
        if (description.StartsWith('!'))
        {
            throw new ArgumentException("description must not begin with '!', which begins a comment", nameof(description));
        }

        if (description.Length > 0 && char.IsWhiteSpace(description[^1]))
        {
            throw new ArgumentException("description must not end with white space", nameof(description));
        }

        Require.InRange(pitches.Count, 0, MostPitches, "the number of pitches");
        Pitches = pitches;
    }

    /// <summary>The largest file that is read, in characters: 1,000,000 (the project's own setting).</summary>
    public static int LargestFile => 1_000_000;

    /// <summary>The most pitches of a file: 4,096 (the project's own setting).</summary>
    internal static int MostPitches => 4_096;

    /// <summary>The longest description, in characters: 10,000 (the project's own setting).</summary>
    internal static int LongestDescription => 10_000;

    /// <summary>The description line; it may be empty.</summary>
    public string Description { get; }

    /// <summary>The pitches above 1/1 in the order of the file, exact ratios or cents.</summary>
    public ValueList<Interval> Pitches { get; }

    static int ITextForm<ScalaFile>.LongestText => LargestFile;

    static string ITextForm<ScalaFile>.What => "a .scl file";

    /// <summary>Reads the text of a file.</summary>
    /// <param name="text">The text, at most 1,000,000 characters.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a file.</exception>
    public static ScalaFile Parse(string text) => TextForm.Parse<ScalaFile>(text);

    /// <summary>Reads the text of a file as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="file">The tuning, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong and where, or <see langword="null"/>.</param>
    /// <returns>Whether the text was such a file.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out ScalaFile? file, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<ScalaFile>(text, out file, out error);

    static ScalaFile IParsable<ScalaFile>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<ScalaFile>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out ScalaFile result) =>
        TryParse(s, out result, out _);

    static ScalaFile ISpanParsable<ScalaFile>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<ScalaFile>(s);

    static bool ISpanParsable<ScalaFile>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out ScalaFile result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<ScalaFile>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out ScalaFile value, [NotNullWhen(false)] out TextError? error) =>
        ScalaReader.TryRead(cursor, out value, out error);

    /// <summary>Reads a file as <see cref="Parse"/> does.</summary>
    /// <param name="source">The file's bytes: ASCII, UTF-8, or 8-bit text whose other characters stand in comments. It is not closed.</param>
    /// <exception cref="ArgumentNullException"><paramref name="source"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The bytes are not such a file, or are too many.</exception>
    public static ScalaFile Read(Stream source)
    {
        ArgumentNullException.ThrowIfNull(source);

        // One character more than is allowed shows that the file is too long, whatever its length.
        using var reader = new StreamReader(source, new UTF8Encoding(false, false), true, 4096, leaveOpen: true);
        var buffer = new char[4096];
        var text = new StringBuilder();
        while (text.Length <= LargestFile && reader.Read(buffer, 0, buffer.Length) is var count and > 0)
        {
            text.Append(buffer, 0, count);
        }

        return text.Length <= LargestFile
            ? Parse(text.ToString())
            : throw TextError.At(1, string.Create(CultureInfo.InvariantCulture, $"a .scl file must be at most {LargestFile} characters long; shorten its comments")).ToException();
    }

    /// <summary>The twelve places of a tuning, and the octave, as a file.</summary>
    /// <param name="tuning">The tuning; svaras tuned differently from their place are not in the file, which has no letters.</param>
    /// <exception cref="ArgumentNullException"><paramref name="tuning"/> is <see langword="null"/>.</exception>
    public static ScalaFile FromTuning(Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(tuning);
        return new(tuning.Name, [.. tuning.Intervals.AsSpan()[1..], Interval.FromRatio(2)]);
    }

    /// <summary>The pitches of a scale's notes in a tuning, and the octave, as a file.</summary>
    /// <param name="scale">The scale; the notes of both lists from low to high.</param>
    /// <param name="tuning">The tuning.</param>
    /// <exception cref="ArgumentNullException">An argument is <see langword="null"/>.</exception>
    public static ScalaFile FromScale(Scale scale, Tuning tuning)
    {
        ArgumentNullException.ThrowIfNull(scale);
        ArgumentNullException.ThrowIfNull(tuning);
        var pitches = scale.Degrees
            .Where(d => d != default)
            .Select(d => tuning[d])
            .Distinct()
            .OrderBy(i => i.Cents)
            .Append(Interval.FromRatio(2));
        return new ScalaFile($"{scale.Name}, {tuning}", pitches.ToValueList());
    }

    /// <summary>The tuning of a file of twelve pitches that ends on the octave: the n-th pitch is the place n semitones above the tonic.</summary>
    /// <param name="name">The tuning's name: 1 to 100 characters without control characters.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">There are not twelve pitches, or the last one is not the octave: give the places yourself.</exception>
    public Tuning ToTuning(string name)
    {
        ArgumentNullException.ThrowIfNull(name);
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
    /// <param name="name">The tuning's name: 1 to 100 characters without control characters.</param>
    /// <param name="places">Twelve numbers of pitches: 0 is 1/1, 1 the first pitch of the file; the tonic's place takes 0.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">There are not twelve numbers, one is not in the file, or the tonic's place is not the unison.</exception>
    public Tuning ToTuning(string name, ReadOnlySpan<int> places)
    {
        ArgumentNullException.ThrowIfNull(name);
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

    /// <summary>The file's text, with <c>\n</c> at the end of each line; <see cref="Parse"/> reads it back.</summary>
    public string ToText()
    {
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
    /// <exception cref="ArgumentNullException"><paramref name="destination"/> is <see langword="null"/>.</exception>
    public void Write(Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        destination.Write(Encoding.UTF8.GetBytes(ToText()));
    }

    /// <summary>The description and the number of pitches: <c>just (12 pitches)</c>.</summary>
    public override string ToString() => OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Description} ({Pitches.Count} pitches)").TrimStart());

    private static string PitchText(Interval pitch)
    {
        if (pitch.Ratio is { } ratio)
        {
            return string.Create(CultureInfo.InvariantCulture, $"{ratio.Numerator}/{ratio.Denominator}");
        }

        // The period says that they are cents.
        var digits = Interval.CentsText(pitch.Cents);
        return digits.Contains('.', StringComparison.Ordinal) ? digits : digits + ".0";
    }
}
