using System.Globalization;

namespace Warmup;

/// <summary>The different pitches of a section and their syllables.</summary>
internal sealed class Palette(Tonic tonic, NoteName tonicName, Tuning tuning, Syllables syllables, VariantLetters letters, bool hasSimplerSpelling)
{
    private const int UsualPitches = 8;

    private readonly List<ScorePitch> _pitches = new(UsualPitches);
    private readonly List<string> _syllables = new(UsualPitches);
    private readonly double _tonicHz = tonic.Hz;

    // One more than each tone's index, octave by octave as they are met: notes are many and ask for theirs one by one.
    private readonly short[]?[] _indexes = new short[]?[(2 * ScaleTone.HighestOctave) + 1];

    public ValueList<ScorePitch> Pitches => ValueList.Adopt(_pitches.ToArray());

    public string Syllable(int index) => _syllables[index];

    public int IndexOf(ScaleTone tone, int line)
    {
        var octave = _indexes[tone.Octave + ScaleTone.HighestOctave] ??= new short[Degree.Count];
        ref var index = ref octave[tone.Degree.Ordinal];
        if (index == 0)
        {
            Add(tone, line);
            index = (short)_pitches.Count;
        }

        return index - 1;
    }

    private void Add(ScaleTone tone, int line)
    {
        var midi = tonic.Midi + tone.Semitones;
        if (midi is < 0 or > 127)
        {
            throw new PatternException(new Finding(
                FindingCode.OutsideMidi,
                Severity.Error,
                string.Create(CultureInfo.InvariantCulture, $"{tone} on the tonic {tonic} would be MIDI note {midi}; it must lie from 0 to 127"),
                "choose another tonic or fewer octaves")
            { Place = new ScorePlace(1, line + 1) });
        }

        var pitch = ScorePitch.Of(tone, tonic, _tonicHz, tuning, tonicName);
        _pitches.Add(hasSimplerSpelling ? pitch with { Name = Spelling.Simpler(pitch.Name) } : pitch);
        _syllables.Add(letters.Contains(tone.Degree) ? syllables.SyllableWithVariant(tone) : syllables.SyllableOf(tone));
    }
}
