using Deque.AxeCore.Commons;

namespace Warmup.Pages.Tests;

/// <summary>The rules of accessibility as axe-core checks them in a page.</summary>
internal static class Axe
{
    private static readonly string Script = new BundledAxeScriptProvider().GetScript();

    /// <summary>The rules that the page breaks, as JSON: each with the elements that break it.</summary>
    public static async Task<string> ViolationsAsync(Browser browser)
    {
        await browser.EvaluateAsync($"(() => {{ {Script}\n; return typeof axe; }})()");
        return (string)(await browser.EvaluateAsync("axe.run({ resultTypes: ['violations'] }).then(found => JSON.stringify(found.violations.map(v => [v.id, v.nodes.map(n => n.html)])))"))!;
    }
}
