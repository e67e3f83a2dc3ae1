namespace Warmup;

/// <summary>Reads tables of tab-separated text that lie in an assembly.</summary>
internal static class EmbeddedTable
{
    /// <summary>The rows of a table, without comments and header.</summary>
    /// <param name="inAssemblyOf">A type of the assembly that holds the table.</param>
    /// <param name="name">The table's resource name.</param>
    public static IEnumerable<string[]> Rows(Type inAssemblyOf, string name)
    {
        using var stream = inAssemblyOf.Assembly.GetManifestResourceStream(name)
            ?? throw new InvalidOperationException($"the table {name} is missing from the assembly");
        using var reader = new StreamReader(stream);
        var header = true;
        while (reader.ReadLine() is { } line)
        {
            if (line.Length == 0 || line[0] == '#')
            {
                continue;
            }

            if (header)
            {
                header = false;
                continue;
            }

            yield return line.Split('\t');
        }
    }
}
