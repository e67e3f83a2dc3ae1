namespace Warmup.Samples;

/// <summary>A column of a table: its name, its unit and what it means. A cell may be empty.</summary>
/// <param name="Name">The name, in small letters with underscores.</param>
/// <param name="Unit">The unit; empty for texts and truth values.</param>
/// <param name="Meaning">What it means, in one sentence without a full stop.</param>
internal abstract record TableColumn(string Name, string Unit, string Meaning)
{
    /// <summary>The type as Table Schema names it.</summary>
    public abstract string Type { get; }
}

/// <summary>A column of texts.</summary>
internal sealed record TextColumn(string Name, string Meaning, Func<TableRow, string?> Of) : TableColumn(Name, string.Empty, Meaning)
{
    public override string Type => "string";
}

/// <summary>A column of whole numbers.</summary>
internal sealed record WholeColumn(string Name, string Unit, string Meaning, Func<TableRow, int?> Of) : TableColumn(Name, Unit, Meaning)
{
    public override string Type => "integer";
}

/// <summary>A column of whole numbers that can exceed 32 bits.</summary>
internal sealed record LongColumn(string Name, string Unit, string Meaning, Func<TableRow, long?> Of) : TableColumn(Name, Unit, Meaning)
{
    public override string Type => "integer";
}

/// <summary>A column of numbers.</summary>
internal sealed record NumberColumn(string Name, string Unit, string Meaning, Func<TableRow, double?> Of) : TableColumn(Name, Unit, Meaning)
{
    public override string Type => "number";
}

/// <summary>A column of truth values.</summary>
internal sealed record TruthColumn(string Name, string Meaning, Func<TableRow, bool?> Of) : TableColumn(Name, string.Empty, Meaning)
{
    public override string Type => "boolean";
}
