using System.Globalization;

namespace Warmup.Takes;

/// <summary>What is uncertain about a whole take, and why. The bounds are the project's own settings.</summary>
internal static class TakeDoubts
{
    public const double LongRing = 0.7;
    private const int LeastForeign = 3;
    private const double FewOf = 20;
    private const double LeastFall = 34;
    private const double MuchClipping = 0.001;
    private const double LittleRivalry = 10;

    public static ValueList<string> Of(PitchTrack track, Voicing voicing, TakePasses passes, SungSpan[] spans, (double Onset, double End)[] times, TonicHypothesis hypothesis, List<(double From, double To)> foreign)
    {
        var doubts = new List<string>();
        foreach (var (from, to) in foreign)
        {
            doubts.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"From {from:0.0} to {to:0.0} s something was sung that is not in the drill: a longer drill that begins with this one sounds so."));
        }

        if (PartHeard(passes) is { } part)
        {
            doubts.Add(part);
        }

        foreach (var pass in passes.Passes.Where(p => p.IsForeign && p.To - p.From >= LeastForeign))
        {
            doubts.Add(string.Create(
                CultureInfo.InvariantCulture,
                $"From {times[pass.From].Onset:0.0} to {times[pass.To - 1].End:0.0} s hardly a note of line {passes.NumberOf(pass)} was heard: something else may have been sung, such as a longer drill."));
        }

        if (RingSeconds(track, voicing, spans, times) is { } ring && ring > LongRing)
        {
            doubts.Add(string.Create(CultureInfo.InvariantCulture, $"The room rings for about {ring:0.0} s: when notes begin and end is uncertain by a tenth of a second."));
        }

        if (voicing.Top - voicing.Floor is > 5 and < FewOf)
        {
            doubts.Add(string.Create(CultureInfo.InvariantCulture, $"Something else sounds, {voicing.Top - voicing.Floor:0} dB below the voice: soft notes and breaths are less certain."));
        }

        if (track.Clipped > MuchClipping)
        {
            doubts.Add("The recording is clipped: record farther from the microphone.");
        }

        if (hypothesis.Rival < LittleRivalry)
        {
            doubts.Add("Another octave or tonic fits almost as well.");
        }

        return doubts.ToValueList();
    }

    /// <summary>Whether whole lines were sung and then no more: then nothing tells a drill that was ended early from a shorter one that has these lines.</summary>
    private static string? PartHeard(TakePasses passes)
    {
        var heard = passes.Passes.Select(p => p.Line).Distinct().Count();
        return passes.Events.Exists(e => e.Kind == TakeEventKind.EarlyStop) && passes.Passes[^1].IsWhole
            ? string.Create(CultureInfo.InvariantCulture, $"Only {heard} of the {passes.LineCount} lines were heard, and the last of them to its end: a shorter drill that has these lines sounds the same.")
            : null;
    }

    /// <summary>How long the sound takes to fall by 60 dB, from its fall where notes end in silence; none where that cannot be told.</summary>
    public static double? RingSeconds(PitchTrack track, Voicing voicing, SungSpan[] spans, (double Onset, double End)[] times)
    {
        var rings = new List<double>();
        if (voicing.Top - voicing.Floor < LeastFall)
        {
            return null;
        }

        for (var s = 0; s < spans.Length; s++)
        {
            var until = s + 1 < spans.Length ? times[s + 1].Onset : track.Seconds;
            var from = (int)((times[s].End - 0.05) * PitchTrack.LowASecond);
            var to = (int)((until - 0.05) * PitchTrack.LowASecond);
            if (until - times[s].End < 0.25 || Fall(track, from, to) is not { } slope)
            {
                continue;
            }

            rings.Add(60 / slope);
        }

        rings.Sort();
        return rings.Count == 0 ? null : rings[rings.Count / 2];
    }

    /// <summary>How fast the level falls between 8 and 25 dB below where it began, in dB a second.</summary>
    private static double? Fall(PitchTrack track, int from, int to)
    {
        var top = track.Low(from);
        for (var i = from; i < Math.Min(from + 20, to); i++)
        {
            top = Math.Max(top, track.Low(i));
        }

        int? first = null;
        for (var i = from; i < to; i++)
        {
            if (track.Low(i) <= top - 8)
            {
                first ??= i;
                if (track.Low(i) <= top - 25)
                {
                    return i == first ? null : (track.Low(first.Value) - track.Low(i)) * PitchTrack.LowASecond / (i - first.Value);
                }
            }
        }

        return null;
    }
}
