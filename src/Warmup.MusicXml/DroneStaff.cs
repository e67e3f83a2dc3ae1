namespace Warmup.MusicXml;

/// <summary>
/// The drone as held notes: the pitches of its strings, tied from the beginning of a section to its end. Its strokes keep their own time, which
/// no measure has, and so are not written.
/// </summary>
internal sealed class DroneStaff : StaffPart
{
    private readonly List<ScorePitch> _pitches = [];

    public DroneStaff(int number, Drone drone)
        : base(number)
    {
        foreach (var s in drone.Strings)
        {
            if (!_pitches.Exists(p => p.Midi == s.Midi))
            {
                _pitches.Add(s);
            }
        }

        _pitches.Sort((a, b) => a.Midi.CompareTo(b.Midi));
    }

    public override (string Name, string Sound) Instrument => ("Tambura", "pluck.tambura");

    // General MIDI's reed organ: there is no tambura, and a plucked sound such as the sitar would die away under a held note.
    protected override (int Channel, int Program, int Volume) Midi => (3, 21, 50);

    public override void Check(Score score)
    {
    }

    public override Section Written(Section section) => section;

    public override Clef Clef(Score score, MusicXmlClef wanted) => MusicXml.Clef.OfDrone(_pitches.Sum(p => p.Midi), _pitches.Count);

    public override Action<Measure> Begin(XmlByteWriter xml, Section section, MusicXmlOptions options, int divisions, Accidentals accidentals)
    {
        var layout = new MeasureLayout(section, isHeld: true);
        var durations = new DurationWriter(layout.Grid, divisions);

        var pitches = _pitches.ConvertAll(p => WrittenPitch.Of(p, options.HasMicrotones));
        return measure =>
        {
            var pieces = layout.Next(measure);
            var anga = AngaLines.IsTala(section.Meter) ? layout.AngaEnd(0) : long.MaxValue;
            foreach (ref readonly var piece in pieces)
            {
                anga = AngaLines.Before(xml, layout, piece.Start, anga);
                for (var i = 0; i < pitches.Count; i++)
                {
                    xml.Raw(i == 0 ? "      <note>\n"u8 : "      <note>\n        <chord/>\n"u8);
                    pitches[i].Write(xml);
                    durations.Write(xml, piece, pitches[i], piece.IsFirst ? pitches[i].Need(accidentals) : AccidentalNeed.None);
                    DurationWriter.Tied(xml, piece);
                    xml.Raw("      </note>\n"u8);
                }
            }
        };
    }
}
