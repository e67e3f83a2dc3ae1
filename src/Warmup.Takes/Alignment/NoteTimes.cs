namespace Warmup.Takes;

/// <summary>
/// When each note of an alignment begins and ends, to a few milliseconds: where the voice begins, or the middle of the glide where two notes
/// touch.
/// </summary>
/// <param name="track">The take.</param>
/// <param name="voicing">Where there is voice.</param>
/// <param name="heardOf">What was heard in a stretch.</param>
/// <param name="isRinging">Whether the room rings long after a note has ended.</param>
internal sealed class NoteTimes(PitchTrack track, Voicing voicing, Func<SungSpan, NoteContour.Heard> heardOf, bool isRinging)
{
    private const int Around = 12;
    private const double SmallGap = 0.07;

    // What hisses between two notes lies so far below them, in dB; a voiced consonant less.
    private const float HissDip = 20;

    // How long the voice is looked for on either side of a dip, in steps of 5 ms, and how long a breath between may be.
    private const int Beside = 30;
    private const int LongestBreath = 80;

    // A gap shorter than this, in seconds, parts no notes of two pitches: lips and tongues that trill stop the voice as briefly again and again.
    private const double ShortestGap = 0.03;

    // Two notes of nearly one pitch, in cents, are parted by a dip of so many dB rather than by their pitch.
    private const double SmallStep = 60;
    private const float ClearDip = 4;

    // From this share of the step on a vibrato is too wide for the glide to be seen by itself.
    private const double WideVibrato = 0.25;

    // How high, in dB, and how fast a voice rises over a ringing room, in steps of 5 ms.
    private const float LeastRise = 8;
    private const int RiseTime = 6;

    // A room that rings for 3 s falls by 20 dB in one; below the voice it is heard for a breath at least, and looked for over 1.5 s.
    private const double SlowestFall = -20;
    private const double LeastFall = 6;
    private const int LeastRoom = 24;
    private const int LeastVoice = 6;
    private const int LongestRoom = 300;

    // A voice that falls as steadily as a room is told from it by what rises, in dB, above what the room would hold, in half of the frames and for so many at least.
    private const float Rises = -4;
    private const int LeastSung = 8;

    // So many frames before a note already hold some of it.
    private const int HalfFrame = 3;

    /// <summary>The onset and the end of each stretch, in seconds.</summary>
    public (double Onset, double End)[] Of(SungSpan[] spans)
    {
        var times = new (double Onset, double End)[spans.Length];
        for (var s = 0; s < spans.Length; s++)
        {
            times[s] = (spans[s].From / (double)PitchTrack.FramesASecond, spans[s].To / (double)PitchTrack.FramesASecond);
        }

        for (var s = 0; s < spans.Length; s++)
        {
            var touches = s > 0 && times[s].Onset - times[s - 1].End < SmallGap;
            if (!touches)
            {
                times[s].Onset = VoiceBegins(times[s].Onset, s > 0 ? times[s - 1].End : 0, times[s].End);
            }
            else
            {
                var (end, onset) = Change(spans[s - 1], spans[s], times[s - 1].Onset, times[s].End, (times[s].Onset + times[s - 1].End) / 2);
                (times[s - 1].End, times[s].Onset) = (end, onset);
            }

            if (s == spans.Length - 1 || (spans[s + 1].From / (double)PitchTrack.FramesASecond) - times[s].End >= SmallGap)
            {
                times[s].End = VoiceEnds(times[s].End, times[s].Onset, s + 1 < spans.Length ? spans[s + 1].From / (double)PitchTrack.FramesASecond : track.Seconds);
            }
        }

        for (var s = 1; isRinging && s < spans.Length; s++)
        {
            if (Leap(times[s].Onset, times[s].End) is { } leap && RoomFrom(times[s - 1].Onset, leap) is { } room)
            {
                (times[s - 1].End, times[s].Onset) = (room, leap);
            }
        }

        return times;
    }

    /// <summary>The time of the steepest rise near an onset, if it is as high as a voice's is over a room that still rings.</summary>
    private double? Leap(double onset, double end)
    {
        var about = (int)(onset * PitchTrack.LowASecond);
        var (best, most) = (about, 0f);
        for (var i = Math.Max(about - Around, 2); i <= Math.Min(about + Around, (int)(end * PitchTrack.LowASecond) - RiseTime); i++)
        {
            var rise = track.Low(i + RiseTime) - track.Low(i - 1);
            (best, most) = rise > most ? (i, rise) : (best, most);
        }

        return most < LeastRise ? null : Crossing(best - 1, 1, (track.Low(best - 1) + track.Low(best + RiseTime)) / 2);
    }

    /// <summary>
    /// From when on the room alone sounds before an onset: there the level parts into one that stays and one that falls steadily. Of all places the one is
    /// taken at which the two lines leave least of the level over.
    /// </summary>
    private double? RoomFrom(double onset, double next)
    {
        var to = (int)(next * PitchTrack.LowASecond) - 1;
        var from = Math.Max((int)(onset * PitchTrack.LowASecond) + 8, to - LongestRoom);
        var (best, least) = (-1, double.PositiveInfinity);
        var (voice, fall) = (new Line(), new Line());
        for (var i = to; i > from; i--)
        {
            fall.Add(i, track.Low(i), 1);
        }

        for (var i = from; i < to - LeastRoom; i++)
        {
            voice.Add(i, track.Low(i), 1);
            fall.Add(i, track.Low(i), i == from ? 0 : -1);
            var left = voice.LeftOfMean + fall.LeftOfLine;
            if (i >= from + LeastVoice && left < least && fall.Slope * PitchTrack.LowASecond < SlowestFall && voice.Mean - fall.Mean > LeastFall)
            {
                (best, least) = (i, left);
            }
        }

        return best < 0 ? null : SungUntil((best + 1) / (double)PitchTrack.LowASecond, next);
    }

    /// <summary>How long it is sung on after a time, without what comes next.</summary>
    private double SungUntil(double time, double next)
    {
        var first = (int)(time * PitchTrack.FramesASecond) + 1;
        var (sung, last) = (0, -1);
        for (var f = first; f < (int)(next * PitchTrack.FramesASecond) - HalfFrame; f++)
        {
            sung += track.Rise(f) > Rises ? 1 : 0;
            last = f - first + 1 >= LeastSung && 2 * sung >= f - first + 1 ? f : last;
        }

        return last < 0 ? time : last / (double)PitchTrack.FramesASecond;
    }

    /// <summary>Levels over time as they come and go: their mean, the line through them, and what each leaves over.</summary>
    private sealed class Line
    {
        private double _n;
        private double _x;
        private double _y;
        private double _xx;
        private double _xy;
        private double _yy;
        private double _first = double.NaN;

        public double Mean => _y / _n;

        public double Slope => (_xy - (_x * _y / _n)) / (_xx - (_x * _x / _n));

        public double LeftOfMean => _yy - (_y * _y / _n);

        public double LeftOfLine => LeftOfMean - (Slope * (_xy - (_x * _y / _n)));

        public void Add(int at, double level, int sign)
        {
            // Times are counted from the first, so that their squares stay small.
            _first = double.IsNaN(_first) ? at : _first;
            var x = at - _first;
            (_n, _x, _y, _xx, _xy, _yy) = (_n + sign, _x + (sign * x), _y + (sign * level), _xx + (sign * x * x), _xy + (sign * x * level), _yy + (sign * level * level));
        }
    }

    /// <summary>Where one note goes over into the next.</summary>
    private (double End, double Onset) Change(SungSpan before, SungSpan after, double from, double to, double about)
    {
        var low = Math.Max((int)(from * PitchTrack.LowASecond) + 8, (int)(about * PitchTrack.LowASecond) - (2 * Around));
        var high = Math.Min((int)(to * PitchTrack.LowASecond) - 8, (int)(about * PitchTrack.LowASecond) + (2 * Around));
        if (high <= low)
        {
            return (about, about);
        }

        var dip = low;
        for (var i = low; i <= high; i++)
        {
            dip = track.Low(i) < track.Low(dip) ? i : dip;
        }

        var (left, right) = (Loudest(Voiced(dip, -1) - Beside, dip - 1), Loudest(dip + 1, Voiced(dip, 1) + Beside));
        var depth = Math.Min(left, right) - track.Low(dip);
        var (heardBefore, heardAfter) = (heardOf(before), heardOf(after));
        var (a, b) = (heardBefore.Cents, heardAfter.Cents);
        var isSilent = (track.Low(dip) < voicing.Threshold && depth > 9) || depth > HissDip;
        if (isSilent)
        {
            var (end, onset) = (Crossing(dip, -1, (track.Low(dip) + left) / 2), Crossing(dip, 1, (track.Low(dip) + right) / 2));
            if (onset - end >= ShortestGap || Math.Abs(a - b) < 20)
            {
                return (end, onset);
            }
        }

        if (Math.Abs(a - b) < 20 || (Math.Abs(a - b) < SmallStep && depth > ClearDip))
        {
            var height = track.Low(dip) + (depth / 2);
            var at = depth > 1 ? (Crossing(dip, -1, height) + Crossing(dip, 1, height)) / 2 : about;
            return (at, at);
        }

        var vibrato = Math.Max(heardBefore.Vibrato, heardAfter.Vibrato);
        var rate = heardBefore.Vibrato > heardAfter.Vibrato ? heardBefore.Rate : heardAfter.Rate;
        var fitted = vibrato > WideVibrato * Math.Abs(a - b)
            ? VibratoStep.Time(track, a, b, rate, (low + 0.5) / PitchTrack.LowASecond, (high + 0.5) / PitchTrack.LowASecond, from, to)
            : null;
        var glide = fitted ?? Glide(a, b, about, from, to);
        return (glide, glide);
    }

    /// <summary>The time at which the course is half-way from one pitch to the other.</summary>
    private double Glide(double a, double b, double about, double from, double to)
    {
        var centre = (int)Math.Round(about * PitchTrack.FramesASecond);
        var low = Math.Max(0, Math.Max(centre - Around, (int)(from * PitchTrack.FramesASecond) + 2));
        var high = Math.Min(track.Count - 1, Math.Min(centre + Around, (int)(to * PitchTrack.FramesASecond) - 2));
        if (high <= low)
        {
            return about;
        }

        // For each frame, how near it is to the one and to the other pitch; the change is where the sum of the two sides is least.
        var share = new double[high - low + 1];
        for (var f = low; f <= high; f++)
        {
            share[f - low] = Share(f, a, b);
        }

        var (sum, best, least) = (0.0, 0, 0.0);
        for (var i = 0; i < share.Length; i++)
        {
            sum += share[i] - 0.5;
            if (sum < least - 1e-9)
            {
                (least, best) = (sum, i + 1);
            }
        }

        // Between the last frame of the one and the first of the other.
        if (best == 0 || best >= share.Length)
        {
            return (low + best - 0.5) / PitchTrack.FramesASecond;
        }

        var (x, y) = (share[best - 1], share[best]);
        var part = y > x ? Math.Clamp((0.5 - x) / (y - x), 0, 1) : 0.5;
        return (low + best - 1 + part) / PitchTrack.FramesASecond;
    }

    /// <summary>How far the course has come from one pitch to the other, 0 to 1.</summary>
    private double Share(int frame, double a, double b)
    {
        var candidates = track.At(frame);
        var (weight, sum) = (0.0, 0.0);
        foreach (var candidate in candidates)
        {
            var t = (candidate.Cents - a) / (b - a);
            var margin = 60 / Math.Abs(b - a);
            if (candidate.Strength > 0.3f * candidates[0].Strength && t > -margin && t < 1 + margin)
            {
                var w = Math.Pow(candidate.Strength, 4);
                weight += w;
                sum += w * Math.Clamp(t, 0, 1);
            }
        }

        return weight > 0 ? sum / weight : 0.5;
    }

    private double VoiceBegins(double about, double notBefore, double end)
    {
        var at = (int)(about * PitchTrack.LowASecond);
        var stop = Math.Min(at + 40, (int)(end * PitchTrack.LowASecond) - 4);
        var first = Math.Max(at - 30, (int)(notBefore * PitchTrack.LowASecond));
        var loud = Loudest(at, stop);
        var quiet = at;
        for (var i = first; i < Math.Min(stop, at + 14); i++)
        {
            quiet = track.Low(i) <= track.Low(quiet) ? i : quiet;
        }

        return loud - track.Low(quiet) < 3 ? about : Crossing(quiet, 1, Math.Max(loud - 12, (track.Low(quiet) + loud) / 2));
    }

    private double VoiceEnds(double about, double onset, double notAfter)
    {
        var at = (int)(about * PitchTrack.LowASecond);
        var start = Math.Max(at - (isRinging ? 120 : 40), (int)(onset * PitchTrack.LowASecond) + 4);
        var loud = Loudest(start, at);
        var quiet = at;
        for (var i = Math.Max(start, at - 14); i < Math.Min(at + (isRinging ? 60 : 30), (int)(notAfter * PitchTrack.LowASecond)); i++)
        {
            quiet = track.Low(i) < track.Low(quiet) ? i : quiet;
        }

        return loud - track.Low(quiet) < 3 ? about : Crossing(quiet, -1, Math.Max(loud - (isRinging ? 4 : 12), (track.Low(quiet) + loud) / 2));
    }

    private float Loudest(int from, int to)
    {
        var loudest = -120f;
        for (var i = from; i <= to; i++)
        {
            loudest = Math.Max(loudest, track.Low(i));
        }

        return loudest;
    }

    /// <summary>The first place, going one way, that is as loud as the voice.</summary>
    private int Voiced(int from, int way)
    {
        var i = from;
        while (Math.Abs(i - from) < LongestBreath && track.Low(i) < voicing.Threshold)
        {
            i += way;
        }

        return i;
    }

    /// <summary>Where the level first passes a height, going one way from a place; in seconds.</summary>
    private double Crossing(int from, int way, double height)
    {
        for (var n = 1; n < 60; n++)
        {
            var i = from + (way * n);
            if (track.Low(i) >= height)
            {
                var (x, y) = (track.Low(i - way), track.Low(i));
                var part = y > x ? (height - x) / (y - x) : 0;
                return (i - way + 0.5 + (way * part)) / PitchTrack.LowASecond;
            }
        }

        return (from + 0.5) / PitchTrack.LowASecond;
    }
}
