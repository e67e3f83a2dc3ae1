using System.Globalization;
using Warmup.Drawing;

namespace Warmup.Cli;

/// <summary>The bars of a range chart: each singer with the drill in the octave that suits them.</summary>
internal static class RangeBars
{
    public static ValueList<RangeBar> Of(Score score, ValueList<Singer> singers)
    {
        // The score's own tonic, in whatever octaves the singers take it.
        var tonic = score.Sections[0].Tonic.Midi;
        var fit = score.RankTonics(singers).First(t => (t.Tonic.Midi - tonic) % 12 == 0);
        return fit.Singers.ConvertAll(f => new RangeBar(f.Singer.Band)
        {
            FullLow = f.Singer.FullLow,
            FullHigh = f.Singer.FullHigh,
            Octaves = (f.Tonic.Midi - tonic) / 12,
            IsTooHigh = f.SemitonesAbove.Sign > 0,
            IsTooLow = f.SemitonesBelow.Sign > 0,
            Verdict = Verdict(f.SemitonesAbove.ToDouble(), f.SemitonesBelow.ToDouble()),
        });
    }

    private static ValueList<string> Verdict(double above, double below) => (above > 0, below > 0) switch
    {
        (true, true) => ["too wide"],
        (true, false) => [Semitones(above), "too high"],
        (false, true) => [Semitones(below), "too low"],
        _ => ["fits"],
    };

    private static string Semitones(double count) =>
        string.Create(CultureInfo.InvariantCulture, $"{count:0.#} {(count.Equals(1) ? "semitone" : "semitones")}");
}
