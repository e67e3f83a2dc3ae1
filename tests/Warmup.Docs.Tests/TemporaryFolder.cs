namespace Warmup.Docs.Tests;

/// <summary>A test's own folder: the current one while the test runs, deleted afterwards.</summary>
public abstract class TemporaryFolder : IDisposable
{
    private readonly string _before = Directory.GetCurrentDirectory();

    protected TemporaryFolder() => Begin();

    protected string Folder { get; private set; } = string.Empty;

    /// <summary>The names of the files, sorted.</summary>
    protected string[] Files => [.. Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(Folder, f).Replace('\\', '/')).Order(StringComparer.Ordinal)];

    /// <summary>Changes to a new, empty folder.</summary>
    protected void Begin()
    {
        End();
        Folder = Directory.CreateTempSubdirectory("warmup-docs-").FullName;
        Directory.SetCurrentDirectory(Folder);
    }

    public void Dispose()
    {
        End();
        GC.SuppressFinalize(this);
    }

    private void End()
    {
        Directory.SetCurrentDirectory(_before);
        if (Folder.Length > 0)
        {
            Directory.Delete(Folder, recursive: true);
        }
    }
}
