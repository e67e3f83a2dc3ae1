using FsCheck;
using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>
/// Whatever is typed, the readers of scales, notes, tunings, syllables and tonics give a value or an error with its place, never another
/// exception: made-up text, and good text with made-up text put into it.
/// </summary>
public class ScalesFuzzTests
{
    private static readonly string[] Good =
    [
        "S R2 G3 P D2 S'", "vakra: S M1 G3 M1 P N3 S' / S' N3 P M1 G3 R2 S", "do re mi sol la do'", "semitones: 0 2 4 7 9", "1 b3 4 b5 5 b7 1'",
        "15", "Mohanam", "just: 10/9 27/16", "vowel: oo", "C#3", "5.5 kattai", "220Hz", "audava-sampurna",
    ];

    [Property(MaxTest = 500)]
    public bool Readers_give_a_value_or_an_error(NonNull<string> junk, byte which, byte where)
    {
        var good = Good[which % Good.Length];
        var at = where % (good.Length + 1);
        return Read(junk.Get) && Read(good[..at] + junk.Get + good[at..]) && Read(good[..at]) && Read(good[at..] + good);
    }

    [Fact]
    public void Very_long_texts_are_refused_at_once()
    {
        // The first text loads the catalogue.
        Assert.True(Read("Mohanam"));
        foreach (var text in (string[])[new('S', 1_000_000), new(' ', 1_000_000), string.Concat(Enumerable.Repeat("S R2 ", 200_000)), "semitones:" + new string('0', 1_000_000)])
        {
            // Each text is 2 MB in memory and goes to eight readers: a trimmed copy in some of them is fine, a list of its 400,000 words is not.
            Assert.InRange(Allocation.Of(() => Assert.True(Read(text))), 0, 10_000_000);
        }
    }

    private static bool Read(string text)
    {
        var scale = Catalogue.Default.TryRead(text, out var s, out var scaleError);
        var written = Scale.TryParse(text, out var w, out var writtenError);
        var degrees = Degree.TryParseList(text, out _, out var degreesError);
        var tuning = Tuning.TryParse(text, out var t, out var tuningError);
        var syllables = Syllables.TryParse(text, out var y, out var syllablesError);
        var tonic = Tonic.TryParse(text, out var n, out var tonicError);
        var kind = ScaleKind.TryParse(text, out var k, out var kindError);
        try
        {
            Katapayadi.NumberOf(text);
        }
        catch (WarmupFormatException)
        {
        }

        return Sound(scale, s, scaleError)
            && Sound(written, w, writtenError)
            && degrees == degreesError is null
            && Sound(tuning, t, tuningError)
            && Sound(syllables, y, syllablesError)
            && Sound(tonic, n, tonicError)
            && Sound(kind, k, kindError)
            && (w is null || Scale.Parse(w.ToText()).Ascent == w.Ascent);
    }

    private static bool Sound(bool read, object? value, TextError? error) =>
        read ? value is not null && error is null : value is null && error is { Line: > 0, Column: > 0, Message.Length: > 0 and < 1000 };
}
