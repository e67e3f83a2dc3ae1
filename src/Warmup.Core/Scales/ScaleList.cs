namespace Warmup;

/// <summary>
/// One list of a scale in rising order, counted in steps from the tonic and repeated every octave where the scale allows it.
/// Adjacent equal notes are one place. A descent is held in reverse, so that step 0 is the tonic here too.
/// </summary>
internal sealed class ScaleList
{
    // Runs are looked for in three octaves below and above: no singer and no pattern bound goes further.
    private const int OctavesSearched = 3;

    private readonly ScaleTone[] _places;
    private readonly int _tonic;
    private readonly int _upper;

    public ScaleList(ValueList<ScaleTone> rising, ScaleDirection direction)
    {
        Direction = direction;
        var places = new List<ScaleTone>(rising.Count);
        foreach (var tone in rising)
        {
            if (places.Count == 0 || places[^1] != tone)
            {
                places.Add(tone);
            }
        }

        _places = [.. places];
        _tonic = Array.IndexOf(_places, default);
        _upper = Array.LastIndexOf(_places, new ScaleTone(default, 1));
        if (_upper < _tonic)
        {
            _upper = -1;
        }

        Top = (_upper >= 0 ? _upper : _places.Length - 1) - _tonic;
        IsRising = _upper >= 0;
        for (var i = _tonic; i < _upper; i++)
        {
            IsRising &= _places[i].Semitones < _places[i + 1].Semitones;
        }
    }

    public ScaleDirection Direction { get; }

    public bool HasUpperTonic => _upper >= 0;

    /// <summary>Whether it repeats and never turns, so that each tone has one step.</summary>
    public bool IsRising { get; }

    /// <summary>Steps from the tonic to the upper tonic, or to the highest note where there is none.</summary>
    public int Top { get; }

    /// <summary>The tone of a step; <see langword="null"/> where the list does not go that far.</summary>
    public ScaleTone? this[int step] => TryGet(step, out var tone) ? tone : null;

    /// <summary>The tone of a step.</summary>
    /// <returns>Whether the list goes that far.</returns>
    public bool TryGet(int step, out ScaleTone tone)
    {
        var at = _tonic + step;
        if (_upper < 0 || (step >= 0 && step <= Top))
        {
            var isIn = at >= 0 && at < _places.Length;
            tone = isIn ? _places[at] : default;
            return isIn;
        }

        var octave = Math.DivRem(step, Top, out var place);
        if (place < 0)
        {
            place += Top;
            octave--;
        }

        tone = _places[_tonic + place];
        if (Math.Abs(tone.Octave + octave) > ScaleTone.HighestOctave)
        {
            return false;
        }

        tone = tone.Raised(octave);
        return true;
    }

    /// <summary>
    /// The form a tone takes in this list: itself where the list has it, else the same pitch by another letter (a chromatic scale is
    /// spelled with sharps up and flats down), else the other variant of its letter, else <see langword="null"/>.
    /// </summary>
    public ScaleTone? FormOf(ScaleTone tone)
    {
        ScaleTone? form = null;
        ScaleTone? twin = null;
        foreach (var place in _places)
        {
            if (place.Degree == tone.Degree)
            {
                return tone;
            }

            if (place.Degree.Semitones == tone.Degree.Semitones)
            {
                twin = new ScaleTone(place.Degree, tone.Octave);
            }

            // The variant nearest in pitch, should a list hold two others.
            if (place.Degree.Letter == tone.Degree.Letter
                && (form is null || Distance(place.Degree, tone.Degree) < Distance(form.Value.Degree, tone.Degree)))
            {
                form = new ScaleTone(place.Degree, tone.Octave);
            }
        }

        return twin ?? form;
    }

    /// <summary>
    /// The notes strictly between two tones, in rising order. Where a tone occurs twice, or is missing from the list and the list
    /// crosses its pitch twice, the places nearest each other are taken.
    /// </summary>
    /// <returns>An array of the caller's own.</returns>
    public ScaleTone[] Between(ScaleTone low, ScaleTone high)
    {
        var first = -OctavesSearched * Math.Max(1, Top);
        var last = (OctavesSearched + 1) * Math.Max(1, Top);
        if (IsRising && StepOf(low) is { } below && StepOf(high) is { } above && below >= first && above <= last)
        {
            return Tones(below + 1, above - below - 1);
        }

        var (holdsLow, holdsHigh) = (Holds(low), Holds(high));
        var lowest = new List<int>();
        var highest = new List<int>();
        for (var step = first; step <= last; step++)
        {
            if (this[step] is not { } tone)
            {
                continue;
            }

            // A missing low end stands just before the first place above it; a missing high end just after the last place below it.
            if (tone == low)
            {
                lowest.Add(step + 1);
            }
            else if (!holdsLow && tone.Semitones > low.Semitones && (this[step - 1] is not { } before || before.Semitones <= low.Semitones))
            {
                lowest.Add(step);
            }

            if (tone == high)
            {
                highest.Add(step - 1);
            }
            else if (!holdsHigh && tone.Semitones < high.Semitones && (this[step + 1] is not { } after || after.Semitones >= high.Semitones))
            {
                highest.Add(step);
            }
        }

        var best = (From: 0, Count: -1);
        foreach (var from in lowest)
        {
            foreach (var to in highest)
            {
                var count = to - from + 1;
                if (count >= 0 && (best.Count < 0 || count < best.Count))
                {
                    best = (from, count);
                }
            }
        }

        return Tones(best.From, best.Count);
    }

    /// <summary>The step of a tone of a rising list; <see langword="null"/> where the list does not have it.</summary>
    private int? StepOf(ScaleTone tone)
    {
        for (var i = _tonic; i < _upper; i++)
        {
            if (_places[i].Degree == tone.Degree)
            {
                return i - _tonic + ((tone.Octave - _places[i].Octave) * Top);
            }
        }

        return null;
    }

    private ScaleTone[] Tones(int step, int count)
    {
        var tones = count > 0 ? new ScaleTone[count] : [];
        for (var i = 0; i < tones.Length; i++)
        {
            tones[i] = this[step + i]!.Value;
        }

        return tones;
    }

    private static int Distance(Degree a, Degree b) => Math.Abs(a.Semitones - b.Semitones);

    private bool Holds(ScaleTone tone) => FormOf(tone) == tone;
}
