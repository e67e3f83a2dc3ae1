using System.CommandLine;
using System.Globalization;

namespace Warmup.Cli;

/// <summary><c>--tuning</c>: a tuning's name, or a Scala file.</summary>
internal static class TuningOption
{
    private const string Name = "--tuning";
    private const string ScalaEnding = ".scl";

    public static Option<string> Create() => new(Name)
    {
        Description = $"Tuning: {string.Join(", ", Tuning.All)}, \"just: 10/9 27/16\" with ratios of your choice, or a {ScalaEnding} file. \"five{ScalaEnding}: R2 1, G3 2, P 3, D2 4\" says which pitch of the file each svara takes.",
        DefaultValueFactory = _ => Tuning.Equal.Name,
    };

    public static bool IsScalaFile(string path) => path.EndsWith(ScalaEnding, StringComparison.OrdinalIgnoreCase);

    /// <summary>The tuning that the option names.</summary>
    /// <exception cref="InputException">There is no such tuning, or the file cannot be used; the message says why.</exception>
    public static Tuning Read(string text)
    {
        var mark = text.IndexOf(ScalaEnding + ":", StringComparison.OrdinalIgnoreCase);
        if (mark >= 0)
        {
            var end = mark + ScalaEnding.Length;
            return WithSvaras(ReadFile(text[..end]), text[..end], text[(end + 1)..]);
        }

        if (!IsScalaFile(text))
        {
            return OptionValue.Parsed<Tuning>(Name, text, Tuning.TryParse);
        }

        var file = ReadFile(text);
        try
        {
            return file.ToTuning(Path.GetFileNameWithoutExtension(text));
        }
        catch (ArgumentException)
        {
            throw new InputException(
                $"{Name}: {text} is not a tuning as it stands: it has {file.Pitches.Count} pitches; a tuning has 12, the last of them the octave 2/1, and a name of at most 100 characters; or say which pitch each svara takes: \"{text}: R2 1, G3 2\"");
        }
    }

    private static ScalaFile ReadFile(string path) => InputFile.Read(Name, path, ScalaFile.LargestFile, $"a {ScalaEnding} file", bytes =>
    {
        using var stream = new MemoryStream(bytes);
        return ScalaFile.Read(stream);
    });

    /// <summary>Equal tuning, in which the named svaras take pitches of the file: <c>R2 1, G3 2, P 3, D2 4</c>.</summary>
    private static Tuning WithSvaras(ScalaFile file, string path, string svaras)
    {
        var tuning = Tuning.Equal;
        foreach (var part in svaras.Split(',', StringSplitOptions.TrimEntries))
        {
            if (part.Split(' ', StringSplitOptions.RemoveEmptyEntries) is not [var svara, var number]
                || !Degree.TryParse(svara, out var degree, out _)
                || !int.TryParse(number, NumberStyles.None, CultureInfo.InvariantCulture, out var pitch))
            {
                throw new InputException($"{Name}: {TextError.Quote(part)} must be a svara and the number of a pitch of {path}, such as R2 1");
            }

            if (pitch < 1 || pitch > file.Pitches.Count)
            {
                throw new InputException(string.Create(CultureInfo.InvariantCulture, $"{Name}: the pitch for {degree} must be between 1 and {file.Pitches.Count}, the pitches of {path}, not {pitch}"));
            }

            try
            {
                tuning = tuning.With(degree, file.Pitches[pitch - 1]);
            }
            catch (ArgumentException refused)
            {
                throw new InputException($"{Name}: pitch {pitch.ToString(CultureInfo.InvariantCulture)} of {path}: {Refusal.Words(refused)}");
            }
        }

        return tuning;
    }
}
