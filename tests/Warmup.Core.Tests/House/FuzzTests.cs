using FsCheck;
using FsCheck.Fluent;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Source: the promise that text people type never throws: whatever it is, it is read or refused with a place and a one-line message.
/// Half of the texts are random, half are made of the grammars' own words, which come much nearer to being right.
/// </summary>
[Properties(Arbitrary = [typeof(Typed)], MaxTest = 400)]
public class FuzzTests
{
    private static void Fair(bool read, object? value, TextError? error, string text)
    {
        Assert.Equal(read, error is null);
        Assert.Equal(read, value is not null);
        if (error is null)
        {
            return;
        }

        Assert.True(error.Line >= 1 && error.Column >= 1, error.ToString());
        Assert.True(error.Line > 1 || error.Column <= text.Length + 1, $"column {error.Column} of {text.Length}");
        Assert.False(string.IsNullOrWhiteSpace(error.Message));
        Assert.DoesNotContain(error.ToString(), c => char.IsControl(c) || c is '\u2028' or '\u2029' || (c >= '\u202A' && c <= '\u202E'));
        Assert.True(error.Message.Length < 600);
    }

    [Property]
    public void Patterns(Typed typed)
    {
        var read = Pattern.TryParse(typed.Text, out var pattern, out var error);
        Fair(read, pattern, error, typed.Text);
        if (read)
        {
            Assert.Equal(pattern, Pattern.Parse(pattern!.ToString()));
        }
    }

    [Property]
    public void Scales(Typed typed)
    {
        var read = Scale.TryParse(typed.Text, out var scale, out var error);
        Fair(read, scale, error, typed.Text);
        if (read)
        {
            var again = Scale.Parse(scale!.ToText());
            Assert.Equal((scale.Ascent, scale.Descent), (again.Ascent, again.Descent));
        }
    }

    [Property]
    public void Names_of_scales(Typed typed)
    {
        Fair(Catalogue.Default.TryRead(typed.Text, out var scale, out var error), scale, error, typed.Text);
        Catalogue.Default.Find(typed.Text);
        Catalogue.Default.Search(typed.Text);
    }

    [Property]
    public void Tonics(Typed typed)
    {
        var read = Tonic.TryParse(typed.Text, out var tonic, out var error);
        Fair(read, tonic, error, typed.Text);
        if (read)
        {
            Assert.InRange(tonic!.Midi, Tonic.LowestMidi, Tonic.HighestMidi);
        }
    }

    [Property]
    public void Notes_degrees_tones_and_numbers(Typed typed)
    {
        if (NoteName.TryParse(typed.Text, out var name, out _))
        {
            Assert.True(NoteName.TryParse(name.ToString(), out var again, out _) && again == name);
        }

        if (Degree.TryParse(typed.Text, out var degree, out _))
        {
            Assert.True(Degree.TryParse(degree.ToString(), out var again, out _) && again == degree);
        }

        if (ScaleTone.TryParse(typed.Text, out var tone, out _))
        {
            Assert.True(ScaleTone.TryParse(tone.ToString(), out var again, out _) && again == tone);
        }

        if (Rational.TryParse(typed.Text, out var number, out _))
        {
            Assert.True(Rational.TryParse(number.ToString(), out var again, out _) && again == number);
        }
    }

    [Property]
    public void Any_number_as_a_kattai(int n, PositiveInt d)
    {
        var number = new Rational(n, d.Get);
        if (Tables.Kattais.Any(r => Rational.Parse(r["kattai"]) == number))
        {
            Assert.Equal(number, Rational.Parse(Tonic.FromKattai(number).KattaiNumber));
        }
        else
        {
            Assert.Throws<ArgumentOutOfRangeException>(() => Tonic.FromKattai(number));
        }
    }

    [Property]
    public void Any_letter_and_variant_as_a_svara(char letter, int variant)
    {
        if (Degree.TryParse(string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{letter}{variant}"), out var degree, out _) && degree.IsSvara)
        {
            Assert.Contains(Tables.Svaras, r => r["svara"] == degree.ToString());
        }
    }

    [Property]
    public void Any_name_as_a_scale_an_alias_or_a_title_is_taken_or_refused(Typed typed)
    {
        foreach (Action make in new Action[]
        {
            () => _ = new Scale(typed.Text, Catalogue.Default.Parent(15).Scale.Ascent),
            () => _ = new Singer(typed.Text, NoteName.FromMidi(50), NoteName.FromMidi(70), 10),
            () => _ = new Tuning(typed.Text, Tuning.Just.Intervals),
            () => _ = Syllables.Vowel(typed.Text),
        })
        {
            try
            {
                make();
            }
            catch (ArgumentException refused)
            {
                Assert.DoesNotContain(refused.Message, c => c != '\n' && c != '\r' && char.IsControl(c));
            }
        }
    }

    [Fact]
    public void Enough_of_the_texts_are_read()
    {
        // A fuzz whose texts are all refused at their first letter would test little.
        var typed = Gen.Sample(Typed.Any, 3_000, 30).Select(t => t.Text).ToList();
        Assert.True(typed.Count(t => Pattern.TryParse(t, out _, out _)) >= 30, "patterns");
        Assert.True(typed.Count(t => Scale.TryParse(t, out _, out _)) >= 30, "scales");
        Assert.True(typed.Count(t => Tonic.TryParse(t, out _, out _)) >= 30, "tonics");
    }
}

/// <summary>A text somebody might type.</summary>
public sealed record Typed(string Text)
{
    private static readonly string[] PatternWords =
    [
        "ladder", "run", "grow", "figure", "empty", ".", "+", "(", ")", " ", "reversed", "ends", "mirrored", "backwards", "there-and-back",
        "swapped", "up-down", "take", "drop", "repeat", "0", "1", "-1", "3", "99999", ".reversed", "ladder.", "(1)", "(0 1 2 3)", " + ladder", "\n", ",",
    ];

    private static readonly string[] ScaleWords =
    [
        "S", "R1", "R2", "G2", "G3", "M1", "M2", "P", "D1", "D2", "N2", "N3", "S'", "/", "vakra:", "N3_", "1", "b3", "#4", "b5", "1'", "R", "r2", "S''", "|", ",",
    ];

    private static readonly string[] TonicWords = ["C", "4", "#", "b", "x", "♭", "5.5", "kattai", "Hz", "220", " ", "-", ".", "3", "A", "/", "1e3", "E4", "6.5", "220Hz"];

    public static Gen<Typed> Any { get; } = Gen.Frequency(
        (3, ArbMap.Default.GeneratorFor<string>().Select(s => new Typed(s ?? string.Empty))),
        (1, Gen.ArrayOf(Gen.Choose(0, 0xFFFF).Select(c => (char)c)).Select(c => new Typed(new string(c)))),
        (3, Words(PatternWords, string.Empty)),
        (2, Gen.Elements("ladder", "figure(1 3)", "(ladder + empty)").SelectMany(p => Gen.ArrayOf(Gen.Elements(".ends", ".reversed", ".take(2)", " + ladder", ".up-down", ".repeat(2)")).Select(w => new Typed(p + string.Concat(w))))),
        (2, Words(ScaleWords, " ")),
        (2, Gen.SubListOf("R2", "G3", "M1", "P", "D1", "N3").Select(s => new Typed($"S {string.Join(' ', s)} S'"))),
        (2, Words(TonicWords, string.Empty)),
        (1, from letter in Gen.Elements("A", "b", "C", "G") from accidental in Gen.Elements(string.Empty, "#", "bb", "♯", "x") from octave in Gen.Choose(-3, 11) select new Typed($"{letter}{accidental}{octave}")),
        (1, Gen.Elements(Catalogue.Default.Entries.AsSpan().ToArray()).SelectMany(e => Gen.Elements(" ", "x", "ā", string.Empty).Select(w => new Typed(e.Scale.Name + w)))));

    public static Arbitrary<Typed> Arbitrary() => Any.ToArbitrary();

    private static Gen<Typed> Words(string[] words, string between) =>
        Gen.ArrayOf(Gen.Elements(words)).Select(w => new Typed(string.Join(between, w)));
}
