using Microsoft.Data.Sqlite;

namespace Warmup.ManyMachines.Tests;

/// <summary>A folder of a test's own, with the certificates of two nodes.</summary>
public sealed class TestFolder : IDisposable
{
    public TestFolder() => NodeCertificate.Make(At("certificates"), ["coordinator", "worker"]);

    public string Path { get; } = Directory.CreateTempSubdirectory("warmup-cluster-test").FullName;

    internal NodeCertificate Coordinator => NodeCertificate.Read(At("certificates/coordinator.pem"));

    internal NodeCertificate Worker => NodeCertificate.Read(At("certificates/worker.pem"));

    internal JobJournal Journal => JobJournal.InFile(At("journal.db"));

    public string At(string name) => System.IO.Path.Combine(Path, name);

    /// <summary>Makes a folder within.</summary>
    public string Folder(string name) => Directory.CreateDirectory(At(name)).FullName;

    public void Dispose()
    {
        SqliteConnection.ClearAllPools();
        Directory.Delete(Path, true);
    }
}
