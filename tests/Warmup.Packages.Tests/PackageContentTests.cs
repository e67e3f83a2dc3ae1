using System.IO.Compression;
using System.Reflection.Metadata;
using System.Xml.Linq;

namespace Warmup.Packages.Tests;

/// <summary>Source: the fields of a nuspec and the places of files in a package, as NuGet's documentation gives them.</summary>
[Collection<Packed>]
[Trait("Run", "whole")]
public sealed class PackageContentTests(PackedLibraries packed)
{
    private static readonly string[] Frameworks = ["net10.0", "net8.0"];

    public static TheoryData<string> Libraries => [.. PackedLibraries.Names];

    [Fact]
    public void The_libraries_and_the_programs_are_packed_and_nothing_else() => Assert.Equal(
        PackedLibraries.Names.SelectMany(n => new[] { $"{n}.{PackedLibraries.Version}.nupkg", $"{n}.{PackedLibraries.Version}.snupkg" })
            .Concat(PackedLibraries.Programs.Where(_ => WholeCheck.IsAskedFor).Select(p => $"{p.Package}.{PackedLibraries.Version}.nupkg"))
            .Order(StringComparer.Ordinal),
        Directory.GetFiles(packed.Folder).Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal));

    [Fact]
    public void These_are_the_libraries() => Assert.Equal(
        ["Warmup.Audio", "Warmup.Core", "Warmup.Drawing", "Warmup.Midi", "Warmup.MusicXml", "Warmup.Plans", "Warmup.Reading", "Warmup.Sheets", "Warmup.Takes", "Warmup.Testing", "Warmup.Voices"],
        PackedLibraries.Names);

    [Theory]
    [MemberData(nameof(Libraries))]
    public void A_package_says_what_it_is(string name)
    {
        using var package = packed.Open(name);
        var metadata = Metadata(package);
        Assert.Equal(name, Value(metadata, "id"));
        Assert.Equal(PackedLibraries.Version, Value(metadata, "version"));
        Assert.Equal("MIT", Value(metadata, "license"));
        Assert.Equal("expression", Child(metadata, "license")!.Attribute("type")!.Value);
        Assert.Equal("The Warmup authors", Value(metadata, "authors"));
        Assert.True(Value(metadata, "description").Length > 40, "no description of its own");
        Assert.True(Value(metadata, "tags").Split(' ').Length > 5, "no tags of its own");

        // There is no public address of the source; none is made up.
        Assert.Null(Child(metadata, "projectUrl"));
        Assert.Null(Child(metadata, "repository")?.Attribute("url"));
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void A_package_brings_its_README_and_the_icon(string name)
    {
        using var package = packed.Open(name);
        var metadata = Metadata(package);
        using var readme = new StreamReader(package.GetEntry(Value(metadata, "readme"))!.Open());
        var text = readme.ReadToEnd();
        Assert.StartsWith($"# {name}\n", text, StringComparison.Ordinal);

        // A link relative to the repository leads nowhere in a package.
        Assert.DoesNotContain("](", text, StringComparison.Ordinal);

        // The signature and first chunk of PNG (ISO/IEC 15948): width and height are the first eight bytes of IHDR's data.
        using var icon = package.GetEntry(Value(metadata, "icon"))!.Open();
        var head = new byte[24];
        icon.ReadExactly(head);
        Assert.Equal([0x89, (byte)'P', (byte)'N', (byte)'G', 0x0D, 0x0A, 0x1A, 0x0A], head[..8]);
        Assert.Equal([0, 0, 0, 128, 0, 0, 0, 128], head[16..]);
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void A_package_holds_the_library_for_each_framework_with_its_documentation(string name)
    {
        using var package = packed.Open(name);
        Assert.Equal(
            Frameworks.SelectMany(f => new[] { $"lib/{f}/{name}.dll", $"lib/{f}/{name}.xml" }),
            package.Entries.Select(e => e.FullName).Where(e => e.StartsWith("lib/", StringComparison.Ordinal)).Order(StringComparer.Ordinal));
        foreach (var framework in Frameworks)
        {
            using var file = package.GetEntry($"lib/{framework}/{name}.xml")!.Open();
            Assert.NotEmpty(XDocument.Load(file).Descendants("member"));
        }
    }

    [Theory]
    [MemberData(nameof(Libraries))]
    public void The_symbols_hold_the_source(string name)
    {
        using var symbols = packed.Open(name, ".snupkg");
        foreach (var framework in Frameworks)
        {
            using var file = new MemoryStream();
            using (var entry = symbols.GetEntry($"lib/{framework}/{name}.pdb")!.Open())
            {
                entry.CopyTo(file);
            }

            file.Position = 0;
            using var provider = MetadataReaderProvider.FromPortablePdbStream(file, MetadataStreamOptions.PrefetchMetadata);
            var reader = provider.GetMetadataReader();

            // The kind "embedded source" of the portable PDB format's custom debug information.
            var embedded = new Guid("0E8A571B-6926-466E-B4AD-8AB04611F5FE");
            var with = reader.CustomDebugInformation
                .Select(reader.GetCustomDebugInformation)
                .Where(i => reader.GetGuid(i.Kind) == embedded && i.Parent.Kind == HandleKind.Document)
                .Select(i => (DocumentHandle)i.Parent)
                .ToHashSet();
            var files = reader.Documents.Select(d => (Handle: d, Name: reader.GetString(reader.GetDocument(d).Name))).ToList();
            Assert.NotEmpty(files);
            Assert.All(files, f => Assert.True(with.Contains(f.Handle), $"{f.Name} is not embedded"));
        }
    }

    [Fact]
    public void A_package_needs_what_its_project_refers_to_and_nothing_that_only_builds_it()
    {
        var core = ($"Warmup.Core", PackedLibraries.Version);
        var voices = ("Warmup.Voices", PackedLibraries.Version);
        Assert.Empty(Dependencies("Warmup.Core"));
        foreach (var name in new[] { "Warmup.Voices", "Warmup.Midi", "Warmup.MusicXml", "Warmup.Audio", "Warmup.Reading", "Warmup.Sheets" })
        {
            Assert.Equal([core], Dependencies(name));
        }

        Assert.Equal([core, voices], Dependencies("Warmup.Plans"));
        Assert.Equal(["Concentus", "MathNet.Numerics", "NAudio.Core", "NLayer", "NVorbis", "NWaves", "Warmup.Core", "Warmup.Voices"], Dependencies("Warmup.Takes").Select(d => d.Id));

        Assert.Equal(["FsCheck", "Warmup.Core", "Warmup.Voices"], Dependencies("Warmup.Testing").Select(d => d.Id));
        var drawing = Dependencies("Warmup.Drawing");
        Assert.Equal(
            ["HarfBuzzSharp", "HarfBuzzSharp.NativeAssets.Linux", "SkiaSharp", "SkiaSharp.NativeAssets.Linux.NoDependencies", "Warmup.Core", "Warmup.Sheets"],
            drawing.Select(d => d.Id));

        // It draws on what the sheets offer to everybody: a later version will do.
        Assert.Equal(PackedLibraries.Version, drawing[^1].Version);
    }

    private List<(string Id, string Version)> Dependencies(string name)
    {
        using var package = packed.Open(name);
        var groups = Child(Metadata(package), "dependencies")!.Elements().ToList();
        Assert.Equal(Frameworks, groups.Select(g => g.Attribute("targetFramework")!.Value).Order(StringComparer.Ordinal));
        var lists = groups
            .Select(g => g.Elements().Select(d => (Id: d.Attribute("id")!.Value, Version: d.Attribute("version")!.Value)).OrderBy(d => d.Id, StringComparer.Ordinal).ToList())
            .ToList();

        // NAudio.Core 3 has no build for .NET 8, so that framework takes the last of version 2.
        Assert.Equal(lists[0].Select(d => d.Id), lists[1].Select(d => d.Id));
        Assert.Equal(lists[0].Where(d => d.Id != "NAudio.Core"), lists[1].Where(d => d.Id != "NAudio.Core"));
        return lists[0];
    }

    private static XElement Metadata(ZipArchive package)
    {
        using var nuspec = package.Entries.Single(e => e.FullName.EndsWith(".nuspec", StringComparison.Ordinal)).Open();
        return XDocument.Load(nuspec).Root!.Elements().Single(e => e.Name.LocalName == "metadata");
    }

    private static XElement? Child(XElement element, string name) => element.Elements().SingleOrDefault(e => e.Name.LocalName == name);

    private static string Value(XElement element, string name) => Child(element, name)?.Value ?? throw new InvalidOperationException($"the nuspec has no {name}");
}
