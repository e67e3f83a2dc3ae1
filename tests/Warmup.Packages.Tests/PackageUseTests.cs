using System.Text;
using System.Text.RegularExpressions;
using System.Xml;
using System.Xml.Linq;

namespace Warmup.Packages.Tests;

/// <summary>
/// A new project that knows nothing but the packages: restored from the folder they were packed into, built with warnings as errors, run.
/// What the packages need besides is taken from where this build found it, so nothing is downloaded.
/// </summary>
[Collection<Packed>]
[Trait("Run", "whole")]
public sealed partial class PackageUseTests(PackedLibraries packed)
{
    [Fact]
    public async Task A_new_project_with_the_packages_runs_the_examples_of_the_READMEs()
    {
        var example = Fence().Matches(File.ReadAllText(Path.Combine(PackedLibraries.Repository, "README.md"))).Single().Groups["code"].Value;
        var parts = PackedLibraries.Names.Select(n => (Name: n, Code: Snippet(n))).ToList();
        File.WriteAllText(In("Program.cs"), $"{example}\nPackageExamples.Run();\n");
        File.WriteAllText(In("PackageExamples.cs"), Examples(parts));
        File.WriteAllText(In("App.csproj"), Project());
        File.WriteAllText(In("nuget.config"), Config().ToString());
        File.Copy(Path.Combine(PackedLibraries.Repository, "global.json"), In("global.json"));

        await DotnetCommand.Run(packed.Work, "build", "App.csproj", "--configuration", "Release");
        Assert.All(PackedLibraries.Names, n => Assert.True(Directory.Exists(In("cache", n.ToLowerInvariant(), PackedLibraries.Version)), $"{n} came from elsewhere"));
        await DotnetCommand.Run(packed.Work, "exec", Path.Combine("bin", "Release", "net10.0", "App.dll"));

        // Each file that an example names is there, and begins as its kind of file does.
        var written = parts.Select(p => p.Code).Append(example).SelectMany(c => FileName().Matches(c)).Select(m => m.Groups["file"].Value).Distinct().ToList();
        foreach (var file in (string[])["mohanam.mid", "mohanam.musicxml", "drill.mid", "drill.musicxml", "drill.txt", "drill.html", "drill.pdf", "drill.wav", "plan.json"])
        {
            Assert.Contains(file, written);
        }

        Assert.All(written, file => IsWhatItsNameSays(In(file)));
    }

    private string In(params string[] names) => Path.Combine([packed.Work, .. names]);

    private static string Snippet(string name) =>
        Fence().Match(File.ReadAllText(Path.Combine(PackedLibraries.Repository, "src", name, "README.md"))).Groups["code"].Value;

    /// <summary>The examples of the packages' own READMEs: the core's makes the score that the others write.</summary>
    private static string Examples(List<(string Name, string Code)> parts)
    {
        var code = new StringBuilder("internal static class PackageExamples\n{\n    public static void Run()\n    {\n");
        code.Append("        var score = Core();\n        var scale = Catalogue.Default.Read(\"Mohanam\");\n");
        code.Append("        var singer = new Singer(\"Wren\", NoteName.FromMidi(55), NoteName.FromMidi(76), 14);\n");
        foreach (var (_, snippet) in parts.Where(p => p.Name != "Warmup.Core"))
        {
            code.Append("        {\n").Append(snippet).Append("        }\n");
        }

        var core = string.Join('\n', parts.Single(p => p.Name == "Warmup.Core").Code.Split('\n').Where(l => !l.StartsWith("using ", StringComparison.Ordinal)));
        return code.Append("    }\n\n    private static Score Core()\n    {\n").Append(core).Append("        return score;\n    }\n}\n").ToString();
    }

    private static string Project() => new XElement(
        "Project",
        new XAttribute("Sdk", "Microsoft.NET.Sdk"),
        new XElement(
            "PropertyGroup",
            new XElement("OutputType", "Exe"),
            new XElement("TargetFramework", "net10.0"),
            new XElement("ImplicitUsings", "enable"),
            new XElement("Nullable", "enable"),
            new XElement("TreatWarningsAsErrors", "true"),
            new XElement("UseAppHost", "false"),
            new XElement("NuGetAudit", "false")),
        new XElement(
            "ItemGroup",
            PackedLibraries.Names.Select(n => new XElement("PackageReference", new XAttribute("Include", n), new XAttribute("Version", PackedLibraries.Version))),
            PackedLibraries.Names.Select(n => new XElement("Using", new XAttribute("Include", n == "Warmup.Core" ? "Warmup" : n))))).ToString();

    private XElement Config() => new(
        "configuration",
        new XElement("config", Add("globalPackagesFolder", In("cache"))),
        new XElement("packageSources", new XElement("clear"), Add("packed", packed.Folder)),
        new XElement("fallbackPackageFolders", new XElement("clear"), PackedLibraries.PackageFolders().Select((f, i) => Add($"built{i}", f))));

    private static XElement Add(string key, string value) => new("add", new XAttribute("key", key), new XAttribute("value", value));

    private static void IsWhatItsNameSays(string path)
    {
        Assert.True(File.Exists(path), $"{path} was not written");
        var bytes = File.ReadAllBytes(path);
        switch (Path.GetExtension(path))
        {
            case ".mid":
                Assert.Equal("MThd"u8, bytes.AsSpan(0, 4));
                break;
            case ".wav":
                Assert.Equal("RIFF"u8, bytes.AsSpan(0, 4));
                break;
            case ".pdf":
                Assert.Equal("%PDF"u8, bytes.AsSpan(0, 4));
                break;
            case ".json":
                using (System.Text.Json.JsonDocument.Parse(bytes))
                {
                    break;
                }

            case ".musicxml":
                using (var reader = XmlReader.Create(new MemoryStream(bytes), new XmlReaderSettings { DtdProcessing = DtdProcessing.Ignore }))
                {
                    Assert.Equal("score-partwise", XDocument.Load(reader).Root!.Name.LocalName);
                    break;
                }

            default:
                Assert.NotEmpty(bytes);
                break;
        }
    }

    [GeneratedRegex("```csharp\\n(?<code>.*?)```", RegexOptions.Singleline)]
    private static partial Regex Fence();

    [GeneratedRegex("\"(?<file>[a-z]+\\.[a-z]+)\"")]
    private static partial Regex FileName();
}
