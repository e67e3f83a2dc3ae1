namespace Warmup.MusicXml;

/// <summary>How loud a section begins.</summary>
public enum MusicXmlDynamics
{
    /// <summary>Nothing is said.</summary>
    None,

    /// <summary>Very soft, pp.</summary>
    Pianissimo,

    /// <summary>Soft, p.</summary>
    Piano,

    /// <summary>Rather soft, mp.</summary>
    MezzoPiano,

    /// <summary>Rather loud, mf.</summary>
    MezzoForte,

    /// <summary>Loud, f.</summary>
    Forte,

    /// <summary>Very loud, ff.</summary>
    Fortissimo,
}
