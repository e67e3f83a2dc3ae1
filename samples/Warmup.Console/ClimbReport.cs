using System.Globalization;

namespace Warmup.Cli;

/// <summary>How the rounds of a climb fit singers: range, breath and speed over all of them.</summary>
internal sealed class ClimbReport
{
    private const int Octave = 12;

    private readonly Climb _climb;
    private readonly ValueList<Singer> _singers;
    private readonly Func<Score, Score> _breathe;
    private readonly CancellationToken _cancellation;
    private readonly Score _score;

    private ClimbReport(Climb climb, Score score, ValueList<Singer> singers, Func<Score, Score> breathe, CancellationToken cancellation) =>
        (_climb, _score, _singers, _breathe, _cancellation) = (climb, score, singers, breathe, cancellation);

    /// <summary>Whether all rounds fit all singers.</summary>
    public bool Fits => FitsAll(_score);

    /// <summary>Checks a climb.</summary>
    /// <param name="climb">The climb.</param>
    /// <param name="score">Its score, with the planned breaths if there are any.</param>
    /// <param name="singers">The singers, or none.</param>
    /// <param name="breathe">Puts the planned breaths into the score of another climb.</param>
    /// <param name="cancellation">Stops the work.</param>
    public static ClimbReport Of(Climb climb, Score score, ValueList<Singer> singers, Func<Score, Score> breathe, CancellationToken cancellation) =>
        new(climb, score, singers, breathe, cancellation);

    /// <summary>For each singer the worst finding of each kind, with its round; what would help; and the cautions.</summary>
    public void Print(Terminal terminal)
    {
        foreach (var finding in _score.Findings)
        {
            terminal.Out.WriteLine($"note: {finding.Describe()}");
        }

        if (_singers.IsEmpty)
        {
            return;
        }

        foreach (var singer in _singers)
        {
            var findings = _score.Check(singer);
            var worst = findings.GroupBy(f => f.Code).Select(g => g.MaxBy(f => Math.Abs((f.Measured ?? 0) - (f.Limit ?? 0)))!).ToList();
            terminal.Out.WriteLine(worst.Count == 0 ? $"{singer.Alias}: all rounds fit" : string.Join(Environment.NewLine, worst.Select(f => $"{singer.Alias}, {Round(f)}: {f.Message}")));
        }

        if (!Fits)
        {
            terminal.Out.WriteLine($"What would help (applied and checked, for all of them): {Help()}");
        }

        Report.PrintCautions(terminal, _score.Cautions);
    }

    /// <summary>The same as JSON, with every finding; a climb has no remedies in it.</summary>
    public void PrintJson(Terminal terminal, List<WrittenFile>? files = null) => Report.PrintJson(terminal, _score, _singers, files, singer => _score.Check(singer).Select(f => Report.ToRow(f, null, null)));

    private string Round(Finding finding) => finding.Place is { } place
        ? string.Create(CultureInfo.InvariantCulture, $"line {place.Line} on {_score.Sections[place.Section - 1].TonicName}")
        : "all rounds";

    /// <summary>A shorter climb or another tonic to begin on, each with its option.</summary>
    private string Help()
    {
        var ways = new List<string>();
        var shorter = Enumerable.Range(1, _climb.Semitones - 1).Reverse().Where(n => FitsAll(_climb.Drill.Tonic, n)).ToList();
        if (shorter.Count > 0)
        {
            ways.Add(string.Create(CultureInfo.InvariantCulture, $"climb {shorter[0]} {(shorter[0] == 1 ? "semitone" : "semitones")} (--climb {shorter[0]})"));
        }

        var midi = _climb.Drill.Tonic.Midi;
        foreach (var apart in Enumerable.Range(1, Octave).SelectMany(a => (int[])[-a, a]))
        {
            if (midi + apart >= Tonic.LowestMidi && midi + apart + _climb.Semitones <= Tonic.HighestMidi
                && _climb.Drill.Tonic.Transposed(apart) is var other && FitsAll(other, _climb.Semitones))
            {
                var name = Spelling.ChooseTonic(other, _climb.Drill.Scale, out _);
                ways.Add($"begin on {name} ({TonicOption.Name} {name})");
                break;
            }
        }

        return ways.Count > 0 ? string.Join("; or ", ways) : "neither a shorter climb nor another tonic within an octave does; see the drill alone, without --climb";
    }

    private bool FitsAll(Tonic tonic, int semitones) => FitsAll(_breathe(new Climb
    {
        Drill = _climb.Drill with { Tonic = tonic },
        Semitones = semitones,
        Cue = _climb.Cue,
    }.ToScore(_cancellation)));

    private bool FitsAll(Score score) => _singers.All(s => score.Fits(s));
}
