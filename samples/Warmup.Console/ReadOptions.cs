using System.CommandLine;
using Warmup.Reading;

namespace Warmup.Cli;

/// <summary>The options that say what is known about a file, and what is to differ from it.</summary>
internal sealed class ReadOptions
{
    private readonly Option<string> _file = new("--file") { Description = "The file: MusicXML (.musicxml .xml .mxl), MIDI (.mid), or text in svaras, solfa or scale numbers.", Required = true };
    private readonly Option<string?> _part = new("--part") { Description = "The part to read, by name or number; by default the pitched part with the most syllables." };
    private readonly Option<string?> _section = new("--section") { Description = "Only this section of the file, by its number; by default all of them." };
    private readonly Option<string?> _scale = new("--scale") { Description = "The scale of the music: a name, the number of a parent or the notes; proposed where the file does not say it." };
    private readonly Option<string?> _tonic = new(TonicOption.Name) { Description = $"The tonic of the music: {TonicOption.Forms}; proposed where the file does not say it." };
    private readonly Option<string?> _toScale = new("--to-scale") { Description = "Carry the lines to this scale." };
    private readonly Option<string?> _toTonic = new("--to-tonic") { Description = $"Carry the lines to this tonic: {TonicOption.Forms}." };
    private readonly Option<string?> _lines = new("--lines") { Description = "Only some of the lines: 1-5,7." };
    private readonly Option<string?> _syllables = new("--syllables") { Description = $"Sing these syllables instead of the file's: {string.Join(", ", Syllables.All.Select(s => s.Name))}." };
    private readonly Option<string> _tuning = TuningOption.Create();
    private readonly Option<string?> _tempo = new("--tempo") { Description = $"Another tempo, in aksharas or beats a minute, {Tempo.Slowest} to {Tempo.Fastest}." };
    private readonly TimeOptions _time = new();

    public void AddTo(Command command)
    {
        foreach (var option in (Option[])[_file, _part, _section, _scale, _tonic, _toScale, _toTonic, _lines, _syllables, _tuning, _tempo])
        {
            command.Add(option);
        }

        _time.AddTo(command);
    }

    /// <summary>The file, and those of its sections that are wanted.</summary>
    /// <exception cref="InputException">The file cannot be read, or has no such section.</exception>
    public (ReadMusic Music, ValueList<ReadSection> Sections) Read(ParseResult parsed, CancellationToken cancellation)
    {
        var music = DrillFile.Read(
            _file.Name,
            parsed.GetValue(_file)!,
            new ReadingOptions { Scale = ScaleOf(parsed, _scale), Tonic = parsed.GetValue(_tonic) is { } tonic ? TonicOption.Read(tonic) : null, Part = parsed.GetValue(_part) },
            cancellation);
        return (music, parsed.GetValue(_section) is { } number ? [music.Sections[OptionValue.Whole(_section.Name, number, 1, music.Sections.Count) - 1]] : music.Sections);
    }

    /// <summary>The drill of a section with what is to differ, and its score.</summary>
    /// <exception cref="InputException">An option's value cannot be used.</exception>
    public (Drill Drill, Score Score) Change(ReadSection section, ParseResult parsed, CancellationToken cancellation)
    {
        section = ScaleOf(parsed, _toScale) is { } scale ? section.InScale(scale, cancellation) : section;
        section = parsed.GetValue(_syllables) is { } kind ? section.SungIn(OptionValue.Parsed<Syllables>(_syllables.Name, kind, Syllables.TryParse)) : section;
        var drill = section.ToDrill() with { Tuning = TuningOption.Read(parsed.GetValue(_tuning)!) };
        drill = parsed.GetValue(_toTonic) is { } tonic
            ? drill with { Tonic = OptionValue.Parsed(_toTonic.Name, tonic, (string typed, out Tonic? read, out TextError? error) => Tonic.TryParse(typed, out read, out error)) }
            : drill;
        drill = parsed.GetValue(_tempo) is { } tempo ? drill with { Tempo = OptionValue.Parsed<TempoRamp>(_tempo.Name, tempo, TempoRamp.TryParse) } : drill;
        drill = _time.Read(parsed, drill);
        drill = parsed.GetValue(_lines) is { } lines ? LineChoice.Of(drill, LineChoice.Read(lines)) : drill;
        return (drill, section.ToScore(drill, cancellation));
    }

    /// <summary>The options that make a change of a section's drill: they replace those of the command, or join them.</summary>
    public IReadOnlyList<string> ToOptions(Remedy remedy, ReadSection section, bool isOnlySection, ParseResult parsed)
    {
        var options = new OrderedOptions();
        if (!isOnlySection)
        {
            options.Set(_section.Name, section.Number.ToString(System.Globalization.CultureInfo.InvariantCulture));
        }

        foreach (var (name, value) in ToPairs(remedy, parsed))
        {
            options.Set(name, value);
        }

        return options.ToList();
    }

    private IEnumerable<(string Name, string? Value)> ToPairs(Remedy remedy, ParseResult parsed) => remedy switch
    {
        OtherTonic tonic => [(_toTonic.Name, tonic.Text)],
        OtherTempo tempo => [(_tempo.Name, tempo.Tempo.ToString())],
        OtherScale scale => [(_toScale.Name, scale.Scale.Name)],
        FewerLines fewer => [(_lines.Name, LineChoice.ToText(fewer.Lines, parsed.GetValue(_lines)))],
        PlannedBreaths => [(BreathOption.Name, null)],
        TwoRemedies two => ToPairs(two.First, parsed).Concat(ToPairs(two.Second, parsed)),
        _ => _time.ToPairs(remedy, parsed),
    };

    private static Scale? ScaleOf(ParseResult parsed, Option<string?> option) =>
        parsed.GetValue(option) is { } text ? OptionValue.Parsed<Scale>(option.Name, text, Catalogue.Default.TryRead) : null;
}
