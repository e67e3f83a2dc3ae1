using System.Xml;

namespace Warmup.TestSupport;

/// <summary>The key signature of a scale that is a church mode; none, and zero fifths, for any other.</summary>
public sealed record PlainKey(int Fifths, string? Mode)
{
    private const string SharpsInOrder = "FCGDAEB";

    public static PlainKey Of(Section section)
    {
        // The semitones of the modes are common knowledge of music theory.
        var mode = string.Join(' ', section.Scale.PitchSet()) switch
        {
            "0 2 4 6 7 9 11" => "lydian",
            "0 2 4 5 7 9 11" => "major",
            "0 2 4 5 7 9 10" => "mixolydian",
            "0 2 3 5 7 9 10" => "dorian",
            "0 2 3 5 7 8 10" => "minor",
            "0 1 3 5 7 8 10" => "phrygian",
            "0 1 3 5 6 8 10" => "locrian",
            _ => null,
        };
        var letters = new Dictionary<char, int>();
        foreach (var pitch in section.Pitches)
        {
            letters[pitch.Name.Letter] = pitch.Name.Alteration;
        }

        // Each letter once: the signature has as many sharps, or flats, as the seven names together.
        var fifths = letters.Values.Sum();
        return mode is not null && letters.Count == 7 && section.Scale.Degrees.Count == 7 && Math.Abs(fifths) <= 7
            ? new PlainKey(fifths, mode)
            : new PlainKey(0, null);
    }

    public int Alteration(char letter)
    {
        var place = SharpsInOrder.IndexOf(letter, StringComparison.Ordinal);
        return place < Fifths ? 1 : 6 - place < -Fifths ? -1 : 0;
    }
}

/// <summary>The accidentals of one measure: each holds for its letter and octave to the bar line.</summary>
public sealed class PlainAccidentals(PlainKey key)
{
    private readonly Dictionary<(char Letter, int Octave), int> _seen = [];

    public void Write(XmlWriter xml, NoteName name)
    {
        var place = (name.Letter, name.Octave);
        var isSeen = _seen.TryGetValue(place, out var holds);
        var isNeeded = name.Alteration != (isSeen ? holds : key.Alteration(name.Letter));

        // A courtesy where the letter sounded otherwise in another octave of the measure.
        var isCourtesy = !isNeeded && !isSeen && _seen.Any(s => s.Key.Letter == name.Letter && s.Value != name.Alteration);
        _seen[place] = name.Alteration;
        if (!isNeeded && !isCourtesy)
        {
            return;
        }

        xml.WriteStartElement("accidental");
        if (isCourtesy)
        {
            xml.WriteAttributeString("cautionary", "yes");
        }

        xml.WriteString(name.Alteration switch { 2 => "double-sharp", 1 => "sharp", 0 => "natural", -1 => "flat", _ => "flat-flat" });
        xml.WriteEndElement();
    }
}
