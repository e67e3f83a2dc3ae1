using System.IO.Compression;
using System.Reflection;
using System.Text.Json;
using System.Xml.Linq;

namespace Warmup.Packages.Tests;

/// <summary>Tests of what is packed: they share the packages, which take long to make.</summary>
[CollectionDefinition]
public sealed class Packed : ICollectionFixture<PackedLibraries>;

/// <summary>The libraries as built, and in the whole check the programs, packed once into a folder of their own that goes when the tests end.</summary>
public sealed class PackedLibraries : IAsyncLifetime
{
    /// <summary>Nobody has a package of this version, so that no other folder of packages can answer for ours.</summary>
    public const string Suffix = "check";

    private readonly DirectoryInfo _folder = Directory.CreateTempSubdirectory("warmup-packages-");

    /// <summary>The top folder of the source.</summary>
    public static string Repository { get; } = Path.GetFullPath(Metadata("Repository"));

    /// <summary>The names of the libraries: the projects under src.</summary>
    public static IReadOnlyList<string> Names { get; } =
        [.. Directory.GetFiles(Path.Combine(Repository, "src"), "*.csproj", SearchOption.AllDirectories).Select(f => Path.GetFileNameWithoutExtension(f)!).Order(StringComparer.Ordinal)];

    /// <summary>The programs that are packed, by their projects and their packages.</summary>
    public static IReadOnlyList<(string Project, string Package)> Programs { get; } = [("Warmup.Web", "Warmup.Page"), ("Warmup.Console", "Warmup.Tool")];

    /// <summary>The folder with the packages.</summary>
    public string Folder => Path.Combine(_folder.FullName, "packages");

    /// <summary>A folder for a project that uses them.</summary>
    public string Work => Path.Combine(_folder.FullName, "work");

    /// <summary>The version they all have.</summary>
    public static string Version { get; } =
        $"{XDocument.Load(Path.Combine(Repository, "Directory.Build.props")).Descendants("VersionPrefix").Single().Value}-{Suffix}";

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(Work);

        // A tenth of the solution's projects are packed; going through all of them, and compressing the programs, takes three times as long.
        var filter = Path.Combine(_folder.FullName, "packed.slnf");
        File.WriteAllText(filter, JsonSerializer.Serialize(new { solution = new { path = Path.Combine(Repository, "Warmup.Core.sln"), projects = Projects() } }));
        await DotnetCommand.Run(
            Repository, "pack", filter, "--no-build", "--configuration", Metadata("Configuration"), "--version-suffix", Suffix, "--output", Folder);
    }

    public ValueTask DisposeAsync()
    {
        _folder.Delete(recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>A package, or its symbols.</summary>
    public ZipArchive Open(string name, string ending = ".nupkg") => ZipFile.OpenRead(Path.Combine(Folder, $"{name}.{Version}{ending}"));

    /// <summary>The folders in which the build found the packages that the libraries need; a new project looks there as well.</summary>
    public static IReadOnlyList<string> PackageFolders()
    {
        using var assets = JsonDocument.Parse(File.ReadAllText(Path.Combine(Repository, "src", "Warmup.Drawing", "obj", "project.assets.json")));
        return [.. assets.RootElement.GetProperty("packageFolders").EnumerateObject().Select(f => f.Name)];
    }

    private static IEnumerable<string> Projects()
    {
        var libraries = Names.Select(n => Path.Combine("src", n, $"{n}.csproj"));
        return WholeCheck.IsAskedFor ? libraries.Concat(Programs.Select(p => Path.Combine("samples", p.Project, $"{p.Project}.csproj"))) : libraries;
    }

    private static string Metadata(string key) =>
        typeof(PackedLibraries).Assembly.GetCustomAttributes<AssemblyMetadataAttribute>().Single(a => a.Key == key).Value!;
}
