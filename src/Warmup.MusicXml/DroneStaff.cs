namespace Warmup.MusicXml;

/// <summary>
/// The drone as held notes: its strings' pitches, tied from the beginning of a section to its end. Its strokes keep a clock of their own
/// that no measure has, so they are not written.
/// </summary>
internal sealed class DroneStaff : StaffPart
{
    private readonly List<ScorePitch> _pitches = [];

    public DroneStaff(int number, Drone drone)
        : base(number)
    {
        foreach (var s in drone.Strings)
        {
            if (!_pitches.Exists(p => p.Midi == s.Pitch.Midi))
            {
                _pitches.Add(s.Pitch);
            }
        }

        _pitches.Sort((a, b) => a.Midi.CompareTo(b.Midi));
    }

    public override (string Name, string Sound) Instrument => ("Tambura", "pluck.tambura");

    // General MIDI's reed organ: it has no tambura, and a plucked sound such as its sitar would die away under a held note.
    protected override (int Channel, int Program, int Volume) Midi => (3, 21, 50);

    public override void Check(Score score)
    {
    }

    public override NoteName TonicName(Section section) => section.TonicName;

    public override Clef Clef(Section section, MusicXmlClef wanted) => MusicXml.Clef.Of(_pitches.Sum(p => p.Midi), _pitches.Count);

    public override Action<Measure> Begin(XmlBytes xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals)
    {
        var layout = new MeasureLayout(section, isHeld: true);
        var timing = new Timing(layout.Clock, divisions);

        var pitches = _pitches.ConvertAll(p => WrittenPitch.Of(p, p.Name, options.Microtones));
        return measure =>
        {
            foreach (ref readonly var piece in layout.Next(measure))
            {
                for (var i = 0; i < pitches.Count; i++)
                {
                    xml.Raw(i == 0 ? "      <note>\n"u8 : "      <note>\n        <chord/>\n"u8);
                    pitches[i].Write(xml);
                    timing.Write(xml, piece, pitches[i], piece.IsFirst ? pitches[i].Need(accidentals) : AccidentalNeed.None);
                    Timing.Tied(xml, piece);
                    xml.Raw("      </note>\n"u8);
                }
            }
        };
    }
}
