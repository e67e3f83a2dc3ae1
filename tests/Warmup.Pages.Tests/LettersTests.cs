namespace Warmup.Pages.Tests;

/// <summary>
/// The letters of a practice page as a browser sets them, measured: no syllable touches the next or a bar, no syllable is broken, no label runs into what it
/// labels; at the width of a desk and of a phone.
/// </summary>
[Collection<FilesInChromium>]
public class LettersTests(OpenedInChromium opened)
{
    // The least distance in pixels between the texts of neighbouring cells, and from the last text of an akshara to the akshara's end.
    private const string Gaps = """
        (() => {
          const box = element => { const range = document.createRange(); range.selectNodeContents(element); return range.getBoundingClientRect(); };
          const gaps = [...document.querySelectorAll('.rows .a')].flatMap(akshara => {
            const texts = [...akshara.children].filter(cell => cell.textContent).map(box);
            const ends = texts.length ? [akshara.getBoundingClientRect().right - texts.at(-1).right, texts[0].left - akshara.getBoundingClientRect().left] : [];
            return [...texts.slice(1).map((text, i) => text.left - texts[i].right), ...ends];
          });
          return Math.min(...gaps);
        })()
        """;

    private const string Lines = """
        Math.max(...[...document.querySelectorAll('.rows .a > span')].map(cell => {
          const range = document.createRange(); range.selectNodeContents(cell); return new Set([...range.getClientRects()].map(box => Math.round(box.top))).size;
        }))
        """;

    private const string Labels = """
        Math.min(...[...document.querySelectorAll('dl > div')].map(row => {
          const range = document.createRange(); range.selectNodeContents(row.querySelector('dt'));
          return row.querySelector('dd').getBoundingClientRect().left - range.getBoundingClientRect().right;
        }))
        """;

    public static TheoryData<string, string, int> Letters =>
    [
        .. WholeCheck.OneIn(3, new[]
        {
            ("svara", "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S", 3),
            ("svara", "S R2 G2 M1 P D2 N2 S' / S' N2 D1 P M1 G2 R2 S", 1),
            ("solfa", "S R2 G3 M1 P D2 N3 S'", 2),
            ("malayalam", "S R1 G3 M1 P D1 N3 S'", 3),
            ("numbers", "S R1 G2 M2 P D1 N3 S'", 2),
            ("tamil", "S R1 G3 M1 P D1 N3 S'", 3),
            ("telugu", "S R1 G3 M1 P D1 N3 S'", 3),
        }),
    ];

    [Theory]
    [MemberData(nameof(Letters))]
    public async Task Letters_keep_apart_from_each_other_and_from_bars_and_labels_from_their_texts(string syllables, string scale, int kalam)
    {
        var score = new Drill
        {
            Scale = Scale.Parse(scale), Pattern = Pattern.Parse("ladder.there-and-back"), Tonic = Tonic.Parse("G3"), Syllables = Syllables.Parse(syllables), Speeds = [new Speed(kalam)],
        }.ToScore();
        foreach (var width in (int[])[1000, 400])
        {
            await opened.OpenAsync(score);
            await opened.Browser.ResizeAsync(width, 900);
            Assert.Equal(1, (int)(await opened.Browser.EvaluateAsync(Lines))!);
            Assert.InRange((double)(await opened.Browser.EvaluateAsync(Gaps))!, 0.5, 100);
            Assert.InRange((double)(await opened.Browser.EvaluateAsync(Labels))!, 4, 200);
        }
    }
}
