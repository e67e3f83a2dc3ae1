using System.Globalization;

namespace Warmup.Audio;

/// <summary>A score in frames: every time is exact and rounded once to the nearest frame. It refuses what a file cannot hold.</summary>
internal sealed class WavPlan
{
    /// <summary>The lowest pitch that is made, in Hz (the project's own bound, below all that is heard as a pitch).</summary>
    public const double LowestHz = 5;

    private const int FrameParts = 1000;

    // The finest parts of a frame in which a section begins exactly.
    private const int FinestParts = 1_000_000;

    private readonly Rational[] _starts;

    // For each section the spans of one tempo: where each begins, in aksharas and in frames, and its frames an akshara.
    private readonly List<(Rational Onset, Rational Frame, Rational Rate)>[] _spans;
    private readonly Rational[] _lengths;

    private WavPlan(Score score, WavOptions options, CancellationToken cancellation)
    {
        Score = score;
        Options = options;
        if (score.Sections.IsEmpty)
        {
            throw new ExportException("a score must have at least 1 section, not 0");
        }

        _starts = new Rational[score.Sections.Count + 1];
        _spans = new List<(Rational, Rational, Rational)>[score.Sections.Count];
        _lengths = new Rational[score.Sections.Count];
        for (var s = 0; s < _lengths.Length; s++)
        {
            var section = score.Sections[s];
            CheckTimes(s);
            _lengths[s] = section.Length;
            if (s == 0)
            {
                CountInBeats = score.HasCountIn ? 0 : options.CountInBeats;
                _starts[0] = Rate(section.Tempo) * CountInBeats;
            }

            _spans[s] = [(Rational.Zero, _starts[s], Rate(section.Tempo))];
            foreach (var change in section.TempoChanges)
            {
                _spans[s].Add((change.Onset, Rounded(PlaceOf(s, change.Onset)), Rate(change.Tempo)));
            }

            _starts[s + 1] = PlaceOf(s, _lengths[s]) is var end && end.Denominator > FinestParts ? Rounded(end) : end;
        }

        Frames = Nearest(_starts[^1]);
        Sizes = new WavSizes(this);
        Check(cancellation);
    }

    public Score Score { get; }

    public WavOptions Options { get; }

    /// <summary>The clicks before the score begins.</summary>
    public int CountInBeats { get; }

    /// <summary>The length of the sound in frames.</summary>
    public long Frames { get; }

    /// <summary>The length of the sound in seconds.</summary>
    public Rational Seconds => _starts[^1] / Options.SampleRate;

    /// <summary>The sizes of the file's parts.</summary>
    public WavSizes Sizes { get; }

    /// <summary>The drone, or <see langword="null"/> where none sounds.</summary>
    public Drone? Drone => Options.HasDrone ? Score.Drone : null;

    /// <summary>The plan of a score.</summary>
    /// <exception cref="ExportException">A file cannot hold the score.</exception>
    public static WavPlan For(Score score, WavOptions options, CancellationToken cancellation) => new(score, options, cancellation);

    /// <summary>The length of a section in aksharas.</summary>
    public Rational LengthOf(int section) => _lengths[section];

    /// <summary>The frame of a point in a section.</summary>
    /// <param name="section">The index of the section.</param>
    /// <param name="aksharas">The point in aksharas from the section's beginning.</param>
    public long FrameOf(int section, Rational aksharas) => Nearest(PlaceOf(section, aksharas));

    /// <summary>The frame at which a section ends.</summary>
    public long EndFrameOf(int section) => Nearest(_starts[section + 1]);

    /// <summary>The frame of a click of the count-in.</summary>
    public long FrameOfCountIn(int beat) => Nearest(_spans[0][0].Rate * beat);

    /// <summary>The frame of a time in seconds from the beginning of the sound.</summary>
    public long FrameAt(Rational seconds) => Nearest(seconds * Options.SampleRate);

    /// <summary>The frame at which a note begins.</summary>
    public long FrameOfNote(int section, int note)
    {
        var at = Score.Sections[section].Notes[note];
        return FrameOf(section, at.Onset);
    }

    /// <summary>The frame at which a note falls silent.</summary>
    public long EndFrameOfNote(int section, int note)
    {
        var at = Score.Sections[section].Notes[note];
        return FrameOf(section, at.SoundEnd);
    }

    /// <summary>The frame of a marker.</summary>
    public long FrameOf(LineMarker marker)
    {
        var (s, l) = (Math.Max(0, marker.Section), marker.Line);
        return FrameOf(s, marker.OnsetIn(Score.Sections[s].Lines.AsSpan()[l]));
    }

    /// <summary>The markers in the order of their time.</summary>
    public IEnumerable<LineMarker> Markers()
    {
        var several = Score.Sections.Count > 1;
        for (var s = 0; Options.HasMarkers && s < Score.Sections.Count; s++)
        {
            for (var l = 0; l < Score.Sections[s].Lines.Count; l++)
            {
                yield return new LineMarker(several ? s : -1, l, false);
                if (Score.Sections[s].Lines[l].HasAnswer)
                {
                    yield return new LineMarker(several ? s : -1, l, true);
                }
            }
        }
    }

    private Rational Rate(Rational tempo) => (Rational)Options.SampleRate * 60 / tempo;

    /// <summary>The exact place of a point in a section, in frames.</summary>
    private Rational PlaceOf(int section, Rational aksharas)
    {
        var spans = _spans[section];
        var span = spans.Count - 1;
        while (span > 0 && aksharas < spans[span].Onset)
        {
            span--;
        }

        return spans[span].Frame + (spans[span].Rate * (aksharas - spans[span].Onset));
    }

    /// <summary>A place on a whole thousandth of a frame: sums over many tempi do not fit exact fractions of 64 bits.</summary>
    private static Rational Rounded(Rational frames) => new(Nearest(frames * FrameParts), FrameParts);

    private static long Nearest(Rational frames) => (frames + new Rational(1, 2)).Floor();

    private void CheckTimes(int s)
    {
        var section = Score.Sections[s];
        CheckTempo(s, section.Tempo);
        foreach (var change in section.TempoChanges)
        {
            CheckTempo(s, change.Tempo);
        }

        if (section.Resolution < 1 || section.LengthSteps < 1)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"{PlaceOf(s)}has {section.Resolution} grid steps an akshara and a length of {section.LengthSteps}; each must be at least 1"));
        }
    }

    private void CheckTempo(int section, Rational tempo)
    {
        if (tempo < Tempo.Slowest || tempo > Tempo.Fastest)
        {
            throw new ExportException($"{PlaceOf(section)}the tempo must be between {Tempo.Slowest} and {Tempo.Fastest} aksharas a minute, not {tempo}");
        }
    }

    private void Check(CancellationToken cancellation)
    {
        if (Sizes.Total > WavSizes.Largest)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"{Seconds.ToDouble():0} s of sound would need {Sizes.Total} bytes; a WAV file holds at most {WavSizes.Largest}: take fewer lines, a faster tempo or one channel"));
        }

        for (var s = 0; s < _lengths.Length; s++)
        {
            cancellation.ThrowIfCancellationRequested();
            var section = Score.Sections[s];
            for (var p = 0; Options.HasVoice && p < section.Pitches.Count; p++)
            {
                CheckHz(section.Pitches[p], PlaceOf(s));
            }

            var before = 0L;
            for (var n = 0; n < section.Notes.Count; n++)
            {
                var note = section.Notes[n];
                if (note.PitchIndex >= section.Pitches.Count || note.LineIndex >= section.Lines.Count)
                {
                    throw new ExportException(string.Create(
                        CultureInfo.InvariantCulture,
                        $"{PlaceOf(s)}note {n + 1} has pitch {note.PitchIndex} of {section.Pitches.Count} and line {note.LineIndex} of {section.Lines.Count}, counted from 0"));
                }

                // Every time is computed here once, so that none overflows half-way through the file.
                var start = FrameOfNote(s, n);
                var end = EndFrameOfNote(s, n);
                if (start < before || end > EndFrameOf(s))
                {
                    throw new ExportException(string.Create(
                        CultureInfo.InvariantCulture, $"{PlaceOf(s)}note {n + 1} overlaps the one before or the section's end"));
                }

                before = end;
            }
        }

        if (Drone is { } drone)
        {
            CheckDrone(drone);
        }
    }

    private void CheckDrone(Drone drone)
    {
        for (var i = 0; i < drone.Strings.Count; i++)
        {
            CheckHz(drone.Strings[i], string.Create(CultureInfo.InvariantCulture, $"drone string {i + 1}: "));
        }
    }

    private void CheckHz(ScorePitch pitch, string place)
    {
        var highest = WaveTable.HighestHz(Options.SampleRate);
        if (!(pitch.Hz >= LowestHz && pitch.Hz <= highest))
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture,
                $"{place}{pitch.Tone} ({pitch.Name}) sounds at {pitch.Hz:0.##} Hz; a pitch must lie between {LowestHz} and {highest:0} Hz at {Options.SampleRate} frames a second"));
        }
    }

    private string PlaceOf(int section) =>
        Score.Sections.Count == 1 ? string.Empty : string.Create(CultureInfo.InvariantCulture, $"section {section + 1}: ");
}
