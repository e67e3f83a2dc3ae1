namespace Warmup.TestSupport;

/// <summary>The folder of sources whose build this is.</summary>
public static class SourceTree
{
    public static string Root { get; } = FindRoot();

    /// <summary>The path of a file or folder that is given from the root.</summary>
    public static string At(string part) => Path.Combine(Root, part);

    /// <summary>The names of the files that lie in the root itself.</summary>
    public static IEnumerable<string> RootFiles => Directory.EnumerateFiles(Root).Select(f => Path.GetFileName(f)).Where(f => f != ".git");

    /// <summary>Copies a file or folder without what builds leave behind, so that a build of the copy disturbs no other.</summary>
    public static void Copy(string part, string to)
    {
        foreach (var file in File.Exists(At(part)) ? [At(part)] : Directory.EnumerateFiles(At(part), "*", SearchOption.AllDirectories))
        {
            var name = Path.GetRelativePath(Root, file);
            if (!name.Split(Path.DirectorySeparatorChar).Any(p => p is "bin" or "obj"))
            {
                var target = Path.Combine(to, name);
                Directory.CreateDirectory(Path.GetDirectoryName(target)!);
                File.Copy(file, target);
            }
        }
    }

    private static string FindRoot()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "Warmup.Core.sln")))
        {
            folder = folder.Parent;
        }

        return folder?.FullName ?? throw new DirectoryNotFoundException($"no repository above {AppContext.BaseDirectory}");
    }
}
