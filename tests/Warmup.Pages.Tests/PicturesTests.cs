using System.Text.Json.Nodes;

namespace Warmup.Pages.Tests;

/// <summary>Takes the pictures of the documentation anew: <c>docs/images/page.png</c>, <c>plan.png</c> and <c>report.png</c>. Run by name, since they change with a browser's fonts.</summary>
[Collection<ServedInChromium>]
public sealed class PicturesTests(OpenedInChromium opened, PageServer server) : SungPage(opened, server)
{
    private const string Class = "Wren,G3,E5,18,beginner%0AFinch,F3,D5,20,intermediate%0AOtter,C3,G4,24,intermediate";

    [Fact(Explicit = true)]
    public async Task The_page_the_plan_and_a_report()
    {
        await StartAsync("/");
        await Browser.ResizeAsync(1360, 3000);
        await Browser.SendAsync("Emulation.setScrollbarsHidden", new JsonObject { ["hidden"] = true });
        await Browser.VisitAsync(At($"/?scale=mohanam&from=words&pattern=ladder&tonic=F3&class={Class}"));
        await Browser.WaitAsync("document.querySelector('#fits .finding a') && !document.body.ariaBusy && !location.search.includes('Wren')");
        await TakeAsync("page.png", "0, 0, 1360, 1150");

        await Browser.VisitAsync(At("/plan?start=2026-12-01&day=2026-12-05"));
        await Browser.WaitAsync("document.getElementById('day-heading') && !document.body.ariaBusy");
        await Browser.EvaluateAsync("document.getElementById('sung').click()");
        await TakeAsync("plan.png", "0, 0, 1360, 1450");

        // One note of the take is another than the drill's: R for G at the end of the second line.
        await Browser.VisitAsync(At(Address));
        await Browser.WaitAsync("document.getElementById('take').hidden === false && !document.body.ariaBusy");
        var sung = Sung((new Drill { Scale = Catalogue.Default.Read("mohanam"), Pattern = Pattern.Parse("[S R / S R R / S R G P]"), Tonic = Tonic.Parse("G3"), Tempo = 120 }).ToScore());
        await Browser.EvaluateAsync(
            $"(() => {{ const d = new DataTransfer(); d.items.add(new File([Uint8Array.from(atob('{Convert.ToBase64String(sung)}'), c => c.charCodeAt(0))], 'take.wav')); const f = document.getElementById('take-from'); f.files = d.files; f.dispatchEvent(new Event('change', {{ bubbles: true }})); }})()");
        await Browser.WaitAsync("document.getElementById('report-heading')");
        await Browser.EvaluateAsync("(() => { document.activeElement.blur(); })()");
        await TakeAsync("report.png", "(() => { const r = document.getElementById('take').getBoundingClientRect(); return [r.x - 12 + scrollX, r.y - 12 + scrollY, r.width + 24, r.height + 24]; })()");
    }

    private async Task TakeAsync(string name, string box)
    {
        var at = (await Browser.EvaluateAsync(box.StartsWith('(') ? box : $"[{box}]"))!.AsArray();
        var answer = await Browser.SendAsync("Page.captureScreenshot", new JsonObject
        {
            ["clip"] = new JsonObject { ["x"] = (double)at[0]!, ["y"] = (double)at[1]!, ["width"] = (double)at[2]!, ["height"] = (double)at[3]!, ["scale"] = 1 },
        });
        await File.WriteAllBytesAsync(SourceTree.At("docs/images/" + name), Convert.FromBase64String((string)answer["data"]!));
    }
}
