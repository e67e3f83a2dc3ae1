using System.Globalization;

namespace Warmup;

/// <summary>
/// The words for time and scale on what is printed: those of the talas where a tala is counted, those of solfege where a time signature is.
/// </summary>
/// <param name="IsTala">Whether a tala is counted.</param>
/// <param name="IsSolfege">Whether the scale is named as solfege names it: with a time signature, or where solfa syllables are written.</param>
internal readonly record struct MeterWords(bool IsTala, bool IsSolfege)
{
    /// <summary>One beat.</summary>
    public string Beat => IsTala ? "akshara" : "beat";

    /// <summary>All beats of one count.</summary>
    public string Bar => IsTala ? "avartana" : "bar";

    /// <summary>A part of a bar.</summary>
    public string Group => IsTala ? "anga" : "group";

    /// <summary>The scale going up.</summary>
    public string Ascent => IsSolfege ? "up" : "arohana";

    /// <summary>The scale going down.</summary>
    public string Descent => IsSolfege ? "down" : "avarohana";

    /// <summary>The words for a meter.</summary>
    /// <param name="meter">The meter; free rhythm has the words of the talas unless solfa is written.</param>
    /// <param name="isSolfa">Whether solfa syllables are written.</param>
    public static MeterWords Of(Meter meter, bool isSolfa = false) => new(IsCountedAsTala(meter, isSolfa), isSolfa || !IsCountedAsTala(meter, isSolfa));

    /// <summary>A word with its article.</summary>
    public static string An(string word) => (word[0] is 'a' ? "an " : "a ") + word;

    /// <summary>The name of the tonic and its note: <c>S = G3</c> or <c>do = C4</c>.</summary>
    public string Tonic(NoteName name) => $"{TonicSyllable} = {name}";

    /// <summary>What the tonic is called: <c>S</c> or <c>do</c>.</summary>
    public string TonicSyllable => IsSolfege ? "do" : "S";

    /// <summary>How many notes a beat has.</summary>
    public string Speed(Speed speed)
    {
        if (IsTala)
        {
            return speed.ToString();
        }

        var notes = speed.NotesPerAkshara;
        var count = string.Create(CultureInfo.InvariantCulture, $"{notes.Numerator} {(notes.Numerator == 1 ? "note" : "notes")}");
        return notes.IsInteger ? $"{count} a beat" : string.Create(CultureInfo.InvariantCulture, $"{count} in {notes.Denominator} beats");
    }

    /// <summary>How lines follow each other.</summary>
    public string Delivery(Delivery delivery) =>
        delivery.ToString().Replace("avartana", Bar, StringComparison.Ordinal).Replace("anga", Group, StringComparison.Ordinal);

    private static bool IsCountedAsTala(Meter meter, bool isSolfa) => meter.IsFree ? !isSolfa : !meter.Gestures.IsEmpty;
}
