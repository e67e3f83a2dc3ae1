namespace Warmup.Listening.Tests;

/// <summary>A folder for the files of one test, gone afterwards.</summary>
public sealed class Folder : IDisposable
{
    private readonly string _path = Directory.CreateTempSubdirectory("warmup-").FullName;

    public string At(string name) => Path.Combine(_path, name);

    public void Dispose() => Directory.Delete(_path, recursive: true);
}
