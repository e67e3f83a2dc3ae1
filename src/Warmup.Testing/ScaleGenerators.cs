using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>Generators of svaras, tones and scales of all kinds.</summary>
/// <remarks>
/// The shares in <see cref="Scales"/> are the project's own settings: at least 30 % of the scales differ up and down, and at least 20 % zigzag, so
/// that no law passes for lack of cases.
/// </remarks>
public static class ScaleGenerators
{
    private static readonly Degree[] Svaras =
    [
        .. from letter in Enumerable.Range(1, 7)
           from alteration in Enumerable.Range(-2, 5)
           let degree = new Degree(letter, alteration)
           where degree.IsSvara
           select degree,
    ];

    /// <summary>One of the sixteen svaras.</summary>
    public static Gen<Degree> Svara => Gen.Elements(Svaras);

    /// <summary>A svara from two octaves below the middle one to two above.</summary>
    public static Gen<ScaleTone> Tone => from degree in Svara
                                         from octave in Gen.Choose(-2, 2)
                                         select new ScaleTone(degree, octave);

    /// <summary>A scale of 2 to 12 notes that is the same both ways and does not zigzag.</summary>
    public static Gen<Scale> Symmetric => from list in Rising select Make(list, null);

    /// <summary>A scale whose descent has other notes than its ascent; neither zigzags.</summary>
    public static Gen<Scale> Asymmetric => from up in Rising
                                           from down in Rising
                                           where !up.SequenceEqual(down)
                                           select Make(up, down);

    /// <summary>A scale whose ascent, descent or both zigzag.</summary>
    public static Gen<Scale> Vakra => from up in Rising.Where(l => l.Length >= 3)
                                      from down in Gen.OneOf(Gen.Constant(up), Rising)
                                      from bent in Bend(up)
                                      from which in Gen.Choose(0, 2)
                                      from bentDown in down.Length >= 3 ? Bend(down) : Gen.Constant(WithTop(down))
                                      let ascent = which == 1 ? WithTop(up) : bent
                                      let descent = which == 0 ? WithTop(down) : bentDown
                                      where Bends(ascent) || Bends(descent)
                                      select new Scale("generated", ascent.ToValueList(), Enumerable.Reverse(descent).ToValueList());

    /// <summary>A scale without an upper tonic, from the tonic or the note below it to its highest note and back.</summary>
    public static Gen<Scale> WithoutUpperTonic => from list in Rising.Where(l => l.Length >= 3)
                                                  let low = list[^1].Raised(-1)
                                                  select new Scale(
                                                      "generated",
                                                      list.ToValueList(),
                                                      [.. Enumerable.Reverse(list), low]);

    /// <summary>A scale of the catalogue.</summary>
    public static Gen<Scale> Named => Gen.Elements(Catalogue.Default.Entries.ConvertAll(e => e.Scale).AsSpan().ToArray());

    /// <summary>A scale of any kind.</summary>
    public static Gen<Scale> Scales => Gen.Frequency(
        (25, Symmetric), (30, Asymmetric), (27, Vakra), (3, WithoutUpperTonic), (15, Named));

    /// <summary>Simpler scales than a given one: fewer notes, the same both ways, the plain seven notes.</summary>
    /// <param name="scale">The scale.</param>
    public static IEnumerable<Scale> Shrink(Scale scale)
    {
        ArgumentNullException.ThrowIfNull(scale);
        return Smaller(scale);
    }

    private static IEnumerable<Scale> Smaller(Scale scale)
    {
        if (!scale.IsSymmetric)
        {
            yield return new Scale("generated", scale.Ascent, Enumerable.Reverse(scale.Ascent).ToValueList());
        }

        for (var i = 0; i < Math.Max(scale.Ascent.Count, scale.Descent.Count); i++)
        {
            if (Without(scale, i, i) is { } both)
            {
                yield return both;
            }

            if (!scale.IsSymmetric && Without(scale, i, -1) is { } up)
            {
                yield return up;
            }

            if (!scale.IsSymmetric && Without(scale, -1, i) is { } down)
            {
                yield return down;
            }
        }
    }

    private static Gen<ScaleTone[]> Rising => from semitones in Gen.SubListOf(Enumerable.Range(1, 11))
                                              where semitones.Count > 0
                                              from degrees in Gen.CollectToArray(semitones.Order(), SvaraAt)
                                              select (ScaleTone[])[default, .. degrees.Select(d => new ScaleTone(d))];

    private static Gen<Degree> SvaraAt(int semitones) => Gen.Elements(Svaras.Where(d => d.Semitones == semitones).ToArray());

    // One note is left and come back to: S R G M becomes S R M G M.
    private static Gen<ScaleTone[]> Bend(ScaleTone[] rising)
    {
        var list = WithTop(rising);
        return from at in Gen.Choose(1, list.Length - 3)
               select (ScaleTone[])[.. list[..at], list[at + 1], .. list[at..]];
    }

    private static Scale Make(ScaleTone[] up, ScaleTone[]? down) =>
        new("generated", WithTop(up).ToValueList(), down is null ? null : Enumerable.Reverse(WithTop(down)).ToValueList());

    private static ScaleTone[] WithTop(ScaleTone[] list) => [.. list, new ScaleTone(default, 1)];

    private static bool Bends(ScaleTone[] rising) => rising.Zip(rising.Skip(1)).Any(pair => pair.Second.CompareTo(pair.First) < 0);

    private static Scale? Without(Scale scale, int ascentAt, int descentFromEnd)
    {
        try
        {
            var ascent = scale.Ascent.AsSpan().ToArray().ToList();
            var descent = Enumerable.Reverse(scale.Descent).ToList();
            if (ascentAt >= 0)
            {
                ascent.RemoveAt(ascentAt);
            }

            if (descentFromEnd >= 0)
            {
                descent.RemoveAt(descentFromEnd);
            }

            return new Scale("generated", ascent.ToValueList(), Enumerable.Reverse(descent).ToValueList());
        }
        catch (ArgumentException)
        {
            // The note was the tonic, the last but one, or beyond the shorter list's end.
            return null;
        }
    }
}
