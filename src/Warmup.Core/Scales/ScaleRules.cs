using System.Globalization;

namespace Warmup;

/// <content>Scales built from other scales, and from semitones.</content>
public sealed partial record Scale
{
    /// <summary>A scale of semitones above the tonic, the same both ways; its svaras are chosen so that each keeps a letter of its own where it can.</summary>
    /// <param name="name">The name: 1 to 100 characters without control characters.</param>
    /// <param name="semitones">2 to 12 different numbers from 0 to 11 in rising order, 0 first; a last 12 is the upper tonic and may be left out.</param>
    /// <exception cref="ArgumentException">The numbers are too few, out of range or not rising, or 0 is missing.</exception>
    public static Scale FromSemitones(string name, params ReadOnlySpan<int> semitones)
    {
        ArgumentNullException.ThrowIfNull(name);
        var body = semitones.Length > 0 && semitones[^1] == 12 ? semitones[..^1] : semitones;
        if (body.IsEmpty || body[0] != 0)
        {
            throw new ArgumentException("the semitones of a scale must begin with 0, the tonic", nameof(semitones));
        }

        for (var i = 0; i < body.Length; i++)
        {
            if (body[i] is < 0 or > 11 || (i > 0 && body[i] <= body[i - 1]))
            {
                throw new ArgumentException(
                    string.Create(CultureInfo.InvariantCulture, $"the semitones of a scale must rise from 0 to at most 11, not reach {body[i]} at position {i + 1}"),
                    nameof(semitones));
            }
        }

        return new Scale(name, TonesOf(body));
    }

    /// <summary>The svaras of rising semitones from 0 to 11, and the upper tonic after them; a last 12 is that tonic.</summary>
    internal static ValueList<ScaleTone> TonesOf(ReadOnlySpan<int> semitones)
    {
        var body = semitones[^1] == 12 ? semitones[..^1] : semitones;
        var tones = new ScaleTone[body.Length + 1];
        var degrees = SemitoneSpelling.Spell(body);
        for (var i = 0; i < degrees.Length; i++)
        {
            tones[i] = new ScaleTone(degrees[i]);
        }

        tones[^1] = new ScaleTone(default, 1);
        return ValueList.Adopt(tones);
    }

    /// <summary>The chosen notes of this scale, both ways: five notes of a parent, say. The tonic is always kept.</summary>
    /// <param name="name">The name of the new scale.</param>
    /// <param name="degrees">The notes to keep.</param>
    /// <exception cref="ArgumentException">A note is not in this scale, or too few are left.</exception>
    public Scale Only(string name, params ReadOnlySpan<Degree> degrees)
    {
        foreach (var degree in degrees)
        {
            RequireNote(degree);
        }

        var kept = ValueList.Create(degrees);
        return Filtered(name, t => t.Degree == default || kept.AsSpan().Contains(t.Degree));
    }

    /// <summary>This scale without one of its notes.</summary>
    /// <param name="name">The name of the new scale.</param>
    /// <param name="degree">The note to leave out; not the tonic.</param>
    /// <exception cref="ArgumentException">The note is the tonic or not in this scale, or too few are left.</exception>
    public Scale Without(string name, Degree degree)
    {
        RequireNote(degree);
        return degree == default
            ? throw new ArgumentException($"{Name}: the tonic S cannot be left out", nameof(degree))
            : Filtered(name, t => t.Degree != degree);
    }

    /// <summary>All notes of two scales in the order of their pitch: the ascents together and the descents together.</summary>
    /// <param name="name">The name of the new scale.</param>
    /// <param name="other">The other scale.</param>
    /// <exception cref="ArgumentException">One of the scales ends below the upper tonic, or the notes are more than twelve.</exception>
    public Scale Union(string name, Scale other)
    {
        ArgumentNullException.ThrowIfNull(other);
        RequireUpperTonic();
        other.RequireUpperTonic();
        var falling = Merged(Turned(Descent), Turned(other.Descent));
        return new Scale(name, Merged(Ascent, other.Ascent), Turned(falling));
    }

    /// <summary>
    /// The same notes heard from another tonic (graha bheda, the modes of a scale): the lists begin and end on the new home note.
    /// Each note keeps the letter it has, counted from the new tonic; where that would take more than two alterations the svaras are
    /// chosen by pitch.
    /// </summary>
    /// <param name="name">The name of the new scale.</param>
    /// <param name="home">A note of both lists, the new tonic.</param>
    /// <exception cref="ArgumentException">
    /// <paramref name="home"/> is missing from the ascent or the descent, or the scale ends below the upper tonic.
    /// </exception>
    public Scale Rotated(string name, Degree home)
    {
        RequireUpperTonic();
        var rising = Octave(_rising, home);
        var falling = Octave(_falling, home);
        var ascent = new ScaleTone[rising.Length];
        var descent = new ScaleTone[falling.Length];
        if (!TryRelate(rising, ascent) || !TryRelate(falling, descent))
        {
            // Both lists must write a pitch alike, so the svaras are chosen for all pitches together.
            var spelled = SpellByPitch(rising, falling);
            Relate(rising, ascent, spelled);
            Relate(falling, descent, spelled);
        }

        Array.Reverse(descent);
        return new Scale(name, ValueList.Adopt(ascent), ValueList.Adopt(descent));
    }

    private static bool TryRelate(ScaleTone[] tones, ScaleTone[] related)
    {
        for (var i = 0; i < tones.Length; i++)
        {
            var letters = tones[i].LetterIndex - tones[0].LetterIndex;
            var octave = Math.DivRem(letters, 7, out var letter);
            if (letter < 0)
            {
                letter += 7;
                octave--;
            }

            var alteration = tones[i].Semitones - tones[0].Semitones - (12 * octave) - new Degree(letter + 1).Semitones;
            if (Math.Abs(alteration) > -Degree.LowestAlteration || (letter == 0 && alteration != 0))
            {
                return false;
            }

            related[i] = new ScaleTone(new Degree(letter + 1, alteration), octave);
        }

        return true;
    }

    private static Degree[] SpellByPitch(ScaleTone[] rising, ScaleTone[] falling)
    {
        var set = 0;
        foreach (var tone in (ReadOnlySpan<ScaleTone>)[.. rising, .. falling])
        {
            set |= 1 << ((tone.Semitones - rising[0].Semitones + 144) % 12);
        }

        var pitches = PitchSets.ToValueList(set);
        var byPitch = new Degree[12];
        var degrees = SemitoneSpelling.Spell(pitches.AsSpan());
        for (var i = 0; i < degrees.Length; i++)
        {
            byPitch[pitches[i]] = degrees[i];
        }

        return byPitch;
    }

    private static void Relate(ScaleTone[] tones, ScaleTone[] related, Degree[] byPitch)
    {
        for (var i = 0; i < tones.Length; i++)
        {
            var above = tones[i].Semitones - tones[0].Semitones;
            var pitch = ((above % 12) + 12) % 12;
            related[i] = new ScaleTone(byPitch[pitch], (above - pitch) / 12);
        }
    }

    private static ValueList<ScaleTone> Merged(ValueList<ScaleTone> a, ValueList<ScaleTone> b) =>
        a.Concat(b)
            .Where(t => t.CompareTo(default) >= 0 && t.CompareTo(new ScaleTone(default, 1)) <= 0)
            .Distinct()
            .Order()
            .ToValueList();

    private ScaleTone[] Octave(ScaleList list, Degree home)
    {
        for (var step = 0; step < list.Top; step++)
        {
            if (list[step]!.Value.Degree == home)
            {
                var first = step;
                return [.. Enumerable.Range(first, list.Top + 1).Select(i => list[i]!.Value)];
            }
        }

        throw new ArgumentException($"{Name} has no {home} in its {(list.Direction == ScaleDirection.Ascent ? "ascent" : "descent")}; the new tonic must be a note of both", nameof(home));
    }

    private Scale Filtered(string name, Func<ScaleTone, bool> keep) =>
        new(name, Ascent.Where(keep).ToValueList(), Descent.Where(keep).ToValueList());

    private void RequireNote(Degree degree)
    {
        if (!Contains(degree))
        {
            throw new ArgumentException($"{Name} has no {degree}; its notes are {string.Join(' ', Degrees)}", nameof(degree));
        }
    }

    private void RequireUpperTonic()
    {
        if (!HasUpperTonic)
        {
            throw new ArgumentException($"{Name} ends below the upper tonic, so it has no other octaves to build from");
        }
    }
}
