using System.Diagnostics.CodeAnalysis;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// A scale: a name, an ascent (arohana) and a descent (avarohana), which may differ in number, notes and order.
/// </summary>
/// <remarks>
/// The ascent goes from the middle S to the upper S', the descent back. A list that zigzags is vakra. A scale whose lists both lack
/// the upper S' (Nadanamakriya) never goes beyond its highest note. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Scale>))]
public sealed partial record Scale : ITextForm<Scale>, IWritesText
{
    private readonly ScaleList _rising;
    private readonly ScaleList _falling;

    /// <summary>Makes a scale.</summary>
    /// <param name="name">The name: 1 to 100 characters without control characters, and without white space at its ends.</param>
    /// <param name="ascent">The ascent, first note first; 2 to 24 entries.</param>
    /// <param name="descent">The descent, highest note first, or <see langword="null"/> where it is the ascent in reverse.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException">The name is empty or too long or holds what it must not, a list is too short, too long or lacks S, or only one of the two reaches S'.</exception>
    public Scale(string name, ValueList<ScaleTone> ascent, ValueList<ScaleTone>? descent = null)
    {
        Name = Require.Name(name, LongestName);
        Ascent = ascent;
        Descent = descent ?? Turned(ascent);
        if (Fault(Ascent, Descent) is { } fault)
        {
            throw new ArgumentException($"scale {TextError.Quote(name)}: {fault.Message}", fault.IsInDescent ? nameof(descent) : nameof(ascent));
        }

        _rising = new ScaleList(Ascent, ScaleDirection.Ascent);
        _falling = new ScaleList(Turned(Descent), ScaleDirection.Descent);
        Degrees = DegreesOf(Ascent, Descent);
    }

    /// <summary>The most entries a list may have: 24 (the project's own setting).</summary>
    internal static int LongestList => 24;

    /// <summary>The fewest different notes of a list: 2 (the project's own setting).</summary>
    public static int FewestNotes => 2;

    /// <summary>The most different notes of a list: 12, one for each semitone.</summary>
    public static int MostNotes => 12;

    /// <summary>The longest name, in characters: 100 (the project's own setting).</summary>
    public static int LongestName => 100;

    /// <summary>The name.</summary>
    public string Name { get; }

    /// <summary>The ascent (arohana), first note first.</summary>
    public ValueList<ScaleTone> Ascent { get; }

    /// <summary>The descent (avarohana), highest note first.</summary>
    public ValueList<ScaleTone> Descent { get; }

    /// <summary>Whether the descent is the ascent in reverse.</summary>
    public bool IsSymmetric => Descent == Turned(Ascent);

    /// <summary>Whether the ascent or the descent zigzags.</summary>
    public bool IsVakra => Zigzags(Ascent) || Zigzags(Turned(Descent));

    /// <summary>Audava, shadava-sampurna and so on; <see langword="null"/> where a note is not a svara or a list has fewer than four letters.</summary>
    public ScaleKind? Kind => ScaleKind.Of(Ascent, Descent);

    /// <summary>Whether the scale goes on beyond one octave; Nadanamakriya and Punnagavarali do not.</summary>
    public bool HasUpperTonic => _rising.HasUpperTonic;

    /// <summary>The different degrees of both lists, from low to high.</summary>
    public ValueList<Degree> Degrees { get; }

    /// <summary>The lists as the rules walk them: in rising order, one place for adjacent equal notes.</summary>
    internal ScaleList List(ScaleDirection direction) => direction == ScaleDirection.Ascent ? _rising : _falling;

    /// <summary>Whether one of the scale's lists holds a degree.</summary>
    /// <param name="degree">The degree.</param>
    public bool Contains(Degree degree)
    {
        foreach (var tone in Ascent)
        {
            if (tone.Degree == degree)
            {
                return true;
            }
        }

        foreach (var tone in Descent)
        {
            if (tone.Degree == degree)
            {
                return true;
            }
        }

        return false;
    }

    // A name of the greatest length, and two lists of 24 entries with all their accidentals and octave marks.
    static int ITextForm<Scale>.LongestText => 800;

    static string ITextForm<Scale>.What => "a scale";

    /// <summary>
    /// Reads a scale written out in svaras, scale numbers or solfa: <c>S R2 G3 P D2 S'</c>, with a descent after <c>/</c> where it differs,
    /// and with <c>vakra:</c> before it where a list zigzags; or in semitones: <c>semitones: 0 2 4 7 9</c>. A name may stand before it:
    /// <c>Five notes = S R2 G3 P D2 S'</c>; without one the scale is named by its text.
    /// </summary>
    /// <param name="text">The text, at most 800 characters.</param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not such a scale.</exception>
    public static Scale Parse(string text) => TextForm.Parse<Scale>(text);

    /// <summary>Reads a scale as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="scale">The scale, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, or <see langword="null"/>.</param>
    /// <returns>Whether the text was a scale.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Scale? scale, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<Scale>(text, out scale, out error);

    static Scale IParsable<Scale>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Scale>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Scale result) => TryParse(s, out result, out _);

    static Scale ISpanParsable<Scale>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Scale>(s);

    static bool ISpanParsable<Scale>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Scale result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Scale>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out Scale value, [NotNullWhen(false)] out TextError? error) =>
        ScaleText.TryRead(cursor, out value, out error);

    /// <summary>The whole scale, as <see cref="Parse"/> reads it back: <c>Mohanam = S R2 G3 P D2 S'</c>; the notes alone where they are its name.</summary>
    public string ToText() => ToNotesText() is var notes && ScaleText.NameOf(notes) == Name ? notes : $"{Name} = {notes}";

    /// <summary>The lists written out without the name: <c>S R2 G3 P D2 S'</c>.</summary>
    public string ToNotesText() => ScaleText.Write(this);

    /// <summary>Equality of name and both lists.</summary>
    /// <param name="other">The other scale.</param>
    public bool Equals(Scale? other) => ReferenceEquals(this, other) || (other is not null && Name == other.Name && Ascent == other.Ascent && Descent == other.Descent);

    /// <inheritdoc/>
    public override int GetHashCode() => HashCode.Combine(Name, Ascent, Descent);

    /// <summary>The name.</summary>
    public override string ToString() => Name;

    internal static ValueList<ScaleTone> Turned(ValueList<ScaleTone> tones)
    {
        var turned = tones.AsSpan().ToArray();
        Array.Reverse(turned);
        return ValueList.Adopt(turned);
    }

    internal static bool Zigzags(ValueList<ScaleTone> rising)
    {
        for (var i = 1; i < rising.Count; i++)
        {
            if (rising[i].Semitones < rising[i - 1].Semitones)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>The different degrees of two lists from low to high, each put in its place: they are few.</summary>
    private static ValueList<Degree> DegreesOf(ValueList<ScaleTone> first, ValueList<ScaleTone> second)
    {
        var degrees = new Degree[Degree.Count];
        var count = 0;
        for (var i = 0; i < first.Count + second.Count; i++)
        {
            var degree = (i < first.Count ? first[i] : second[i - first.Count]).Degree;
            var place = count;
            while (place > 0 && degree.CompareTo(degrees[place - 1]) < 0)
            {
                place--;
            }

            if (place == 0 || degrees[place - 1] != degree)
            {
                Array.Copy(degrees, place, degrees, place + 1, count - place);
                degrees[place] = degree;
                count++;
            }
        }

        Array.Resize(ref degrees, count);
        return ValueList.Adopt(degrees);
    }

    /// <summary>What is wrong with two lists, and whether it is wrong with the descent; <see langword="null"/> where nothing is.</summary>
    internal static (string Message, bool IsInDescent)? Fault(ValueList<ScaleTone> ascent, ValueList<ScaleTone> descent) =>
        ListFault("the ascent", ascent) is { } up ? (up, false)
        : ListFault("the descent", descent) is { } down ? (down, true)
        : ReachesTop(ascent) && !ReachesTop(descent) ? ("the descent does not reach the upper S' although the ascent does", true)
        : ReachesTop(descent) && !ReachesTop(ascent) ? ("the ascent does not reach the upper S' although the descent does", false)
        : null;

    private static bool ReachesTop(ValueList<ScaleTone> tones) => tones.AsSpan().Contains(new ScaleTone(default, 1));

    private static string? ListFault(string which, ValueList<ScaleTone> tones)
    {
        if (tones.Count < FewestNotes || tones.Count > LongestList)
        {
            return $"{which} must have {FewestNotes} to {LongestList} entries, not {tones.Count}";
        }

        if (!tones.AsSpan().Contains(default))
        {
            return $"{which} must hold the tonic S";
        }

        var degrees = DegreesOf(tones, default).Count;
        return degrees < FewestNotes || degrees > MostNotes
            ? $"{which} must have {FewestNotes} to {MostNotes} different notes, not {degrees}"
            : null;
    }
}
