using System.Globalization;
using System.Runtime.InteropServices;

namespace Warmup;

/// <summary>The different pitches of a section and their syllables.</summary>
internal sealed class Palette(Drill drill, NoteName tonicName)
{
    private readonly List<ScorePitch> _pitches = [];
    private readonly List<string> _syllables = [];
    private readonly Dictionary<ScaleTone, int> _indexes = [];

    public ValueList<ScorePitch> Pitches => _pitches.ToValueList();

    public string Syllable(int index) => _syllables[index];

    public int IndexOf(ScaleTone tone, int line)
    {
        ref var index = ref CollectionsMarshal.GetValueRefOrAddDefault(_indexes, tone, out var known);
        if (known)
        {
            return index;
        }

        var midi = drill.Tonic.Midi + tone.Semitones;
        if (midi is < 0 or > 127)
        {
            throw new PatternException(new Finding(
                FindingCode.OutsideMidi,
                Severity.Error,
                string.Create(CultureInfo.InvariantCulture, $"{tone} on the tonic {drill.Tonic} would be MIDI note {midi}; it must lie from 0 to 127"),
                "choose another tonic or fewer octaves")
            { Line = line + 1 });
        }

        index = _pitches.Count;
        var pitch = ScoreBuilder.Pitch(tone, drill.Tonic, drill.Tuning, tonicName);
        _pitches.Add(drill.HasSimplerSpelling ? pitch with { Name = Spelling.Simpler(pitch.Name) } : pitch);
        _syllables.Add(drill.Syllables.SyllableOf(tone));
        return index;
    }
}
