namespace Warmup.Voices;

/// <summary>A finding and what clears it. Immutable, value equality.</summary>
public sealed record Advice
{
    internal Advice(Singer singer, Finding finding, ValueList<Remedy> remedies, ValueList<Remedy> alone, string otherwise) =>
        (Singer, Finding, Remedies, Alone, Otherwise) = (singer, finding, remedies, alone, otherwise);

    /// <summary>The singer it was found for.</summary>
    public Singer Singer { get; }

    /// <summary>What was found.</summary>
    public Finding Finding { get; }

    /// <summary>
    /// What clears the finding, and all others of its code for its singer, without bringing a new one for any of the singers, or making one
    /// worse: the smallest change first, at most 3; two changes together only where no single one does it. Where nothing clears all of them,
    /// what clears this one.
    /// </summary>
    public ValueList<Remedy> Remedies { get; }

    /// <summary>Where nothing clears it for all the singers together: what clears it where this singer sings alone.</summary>
    public ValueList<Remedy> Alone { get; }

    /// <summary>What would have to give, where <see cref="Remedies"/> is empty; otherwise empty.</summary>
    public string Otherwise { get; }

    /// <summary>What helps, in words: the remedies, or what would have to give.</summary>
    /// <param name="drill">The drill that the advice was made for.</param>
    public string Help(Drill drill)
    {
        ArgumentNullException.ThrowIfNull(drill);
        return Remedies.IsEmpty ? $"{Otherwise}{(Alone.IsEmpty ? string.Empty : $": {Words(Alone)}")}" : Words(Remedies);

        string Words(ValueList<Remedy> remedies) => string.Join("; or ", remedies.ConvertAll(r => r.Describe(drill)));
    }

    /// <summary>The finding, and what helps, in one line, however long.</summary>
    /// <param name="drill">The drill that the advice was made for.</param>
    public string Describe(Drill drill) => $"{Finding.Describe()}; {Help(drill)}";

    /// <summary>The finding and the remedies, cut to 200 characters.</summary>
    public override string ToString() => OneLine.Of($"{Finding.Describe()}; {(Remedies.IsEmpty ? Otherwise : string.Join("; or ", Remedies))}");
}
