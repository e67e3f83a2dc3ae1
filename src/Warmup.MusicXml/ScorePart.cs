namespace Warmup.MusicXml;

/// <summary>A part of the file: a staff, and how it sounds.</summary>
/// <param name="number">Its number, from 1.</param>
internal abstract class ScorePart(int number)
{
    /// <summary>Its number. What stands once above all parts is written in the first.</summary>
    public int Number { get; } = number;

    /// <summary>The part's name and its abbreviation on later systems.</summary>
    public required (string Full, string Short) Name { get; init; }

    /// <summary>The instrument's name and its identifier in the standard's list of sounds.</summary>
    public abstract (string Name, string Sound) Instrument { get; }

    /// <summary>Refuses what the part cannot hold, before anything is written.</summary>
    public abstract void Check(Score score);

    /// <summary>Writes the measures of the part.</summary>
    public abstract void Write(XmlByteWriter xml, Score score, MusicXmlOptions options, int divisions, CancellationToken cancellation);

    /// <summary>Writes how MIDI plays it; channels, programs and keys count from 1.</summary>
    public abstract void WriteMidi(XmlByteWriter xml);

    /// <summary>The parts of a file: voices from high to low, the drone, the beat.</summary>
    public static List<ScorePart> Of(Score score, MusicXmlOptions options)
    {
        var parts = new List<ScorePart>();
        var second = options.SecondVoiceSemitones;
        if (second == 0)
        {
            parts.Add(new VoicePart(1, 0) { Name = ("Voice", "V.") });
        }
        else
        {
            parts.Add(new VoicePart(1, Math.Max(second, 0)) { Name = ("High voices", "High") });
            parts.Add(new VoicePart(2, Math.Min(second, 0)) { Name = ("Low voices", "Low") });
        }

        if (options.HasDrone && score.Drone is { } drone)
        {
            parts.Add(new DroneStaff(parts.Count + 1, drone) { Name = ("Drone", "Dr.") });
        }

        if (options.Beat != MusicXmlBeat.None)
        {
            parts.Add(new BeatPart(parts.Count + 1) { Name = ("Beat", "Beat") });
        }

        return parts;
    }
}
