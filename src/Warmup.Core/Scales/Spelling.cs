using System.Globalization;

namespace Warmup;

/// <summary>
/// Note names for a scale on a tonic: each degree keeps its letter (R is always the second letter above the tonic's), so R2 and G1 are
/// written differently although they sound alike.
/// </summary>
public static class Spelling
{
    private const int NearLetters = 7;

    /// <summary>
    /// The written name of the tonic: the one the user typed, otherwise the one with the least sum of alterations over the scale, then
    /// the fewest double accidentals, then flats. Never one that needs a triple accidental.
    /// </summary>
    /// <param name="tonic">The tonic.</param>
    /// <param name="scale">The scale.</param>
    /// <param name="respelled">Whether a typed name had to be replaced because it would need a triple accidental.</param>
    /// <exception cref="ArgumentNullException">An argument is <see langword="null"/>.</exception>
    public static NoteName ChooseTonic(Tonic tonic, Scale scale, out bool respelled)
    {
        ArgumentNullException.ThrowIfNull(tonic);
        ArgumentNullException.ThrowIfNull(scale);
        respelled = false;
        var degrees = scale.Degrees;
        if (tonic.TypedName is { } typed)
        {
            if (Weigh(typed, degrees, int.MaxValue) is not null)
            {
                return typed;
            }

            respelled = true;
        }

        NoteName? best = null;
        var least = (Sum: int.MaxValue, Doubles: int.MaxValue, Sharp: int.MaxValue, Letter: int.MaxValue);

        // Seven letters for twelve semitones: those that two accidentals reach lie near. The nearest come first, since a small sum rules out the
        // others after a few degrees.
        var near = (7 * ((tonic.Midi / 12) - 1)) + (tonic.Midi % 12 * 7 / 12);
        for (var i = 0; i < NearLetters; i++)
        {
            var letter = near + (i % 2 == 0 ? i / 2 : -((i + 1) / 2));
            if (NoteName.AlterationOf(letter, tonic.Midi) is not (>= -2 and <= 2)
                || !NoteName.TrySpell(letter, tonic.Midi, out var name)
                || Weigh(name, degrees, least.Sum) is not { } weight)
            {
                continue;
            }

            var rank = (weight.Sum, weight.Doubles, Math.Max(0, name.Alteration), letter);
            if (rank.CompareTo(least) < 0)
            {
                (best, least) = (name, rank);
            }
        }

        // Twelve letters and two accidentals always leave a name whose degrees need at most two accidentals for any scale of at most
        // two alterations a degree; a scale written with wilder degrees falls back on the typed or the keyboard name.
        return best ?? tonic.TypedName ?? NoteName.FromMidi(tonic.Midi);
    }

    /// <summary>The written name of a tone.</summary>
    /// <param name="tone">The tone.</param>
    /// <param name="tonicName">The tonic's written name.</param>
    /// <exception cref="ArgumentOutOfRangeException">The name would need more than three accidentals or leave the octaves -2 to 10.</exception>
    public static NoteName Name(ScaleTone tone, NoteName tonicName) =>
        NoteName.TrySpell((7 * tonicName.Octave) + tonicName.LetterIndex + tone.LetterIndex, tonicName.Midi + tone.Semitones, out var name)
        ? name
        : throw new ArgumentOutOfRangeException(
            nameof(tone), tone, string.Create(CultureInfo.InvariantCulture, $"{tone} on {tonicName} cannot be written with at most three accidentals"));

    /// <summary>
    /// A simpler name of the same pitch: no double accidentals, and the natural name on the white keys, so no E#, Cb, B# and Fb. A black key
    /// keeps the direction of its accidental. Two degrees may then share a letter, which the theory's spelling never does.
    /// </summary>
    /// <param name="name">The theory's name.</param>
    public static NoteName Simpler(NoteName name)
    {
        // The letter one or two steps nearer to the pitch, the natural one where there is one.
        var letter = (7 * name.Octave) + name.LetterIndex;
        var sign = Math.Sign(name.Alteration);
        NoteName? best = null;
        for (var steps = 0; steps <= 2; steps++)
        {
            if (NoteName.TrySpell(letter + (sign * steps), name.Midi, out var other)
                && Math.Sign(other.Alteration) != -sign
                && Math.Abs(other.Alteration) < Math.Abs((best ?? name).Alteration))
            {
                best = other;
            }
        }

        return best ?? name;
    }

    /// <summary>The alterations of a scale on a tonic; none where one is triple, or where their sum is above a bound.</summary>
    private static (int Sum, int Doubles)? Weigh(NoteName tonic, ValueList<Degree> degrees, int most)
    {
        var (sum, doubles) = (0, 0);
        var (letter, midi) = ((7 * tonic.Octave) + tonic.LetterIndex, tonic.Midi);
        foreach (ref readonly var degree in degrees.AsSpan())
        {
            var alteration = midi + degree.Semitones - NoteName.NaturalOf(letter + degree.Letter - 1);
            sum += Math.Abs(alteration);
            if (alteration is < -2 or > 2 || sum > most)
            {
                return null;
            }

            doubles += Math.Abs(alteration) == 2 ? 1 : 0;
        }

        return (sum, doubles);
    }
}
