namespace Warmup.WholeCatalogue;

/// <summary>The sums over the drills of a run, with a checksum that depends on their order.</summary>
internal sealed class Totals : IEquatable<Totals>
{
    // The multiplier of Knuth's MMIX generator (The Art of Computer Programming, volume 2, 3.3.4): odd, so that nothing is lost.
    private const ulong Multiplier = 6364136223846793005;

    private readonly Dictionary<string, int> _refusals = [];

    public int Made { get; private set; }

    public int Refused => _refusals.Values.Sum();

    public IReadOnlyDictionary<string, int> Refusals => _refusals;

    public long Notes { get; private set; }

    public long MidiBytes { get; private set; }

    public long XmlBytes { get; private set; }

    public ulong Checksum { get; private set; }

    public void Add(Made drill)
    {
        if (drill.Refusal is { } reason)
        {
            _refusals[reason] = _refusals.GetValueOrDefault(reason) + 1;
        }
        else
        {
            Made++;
        }

        Notes += drill.Notes;
        MidiBytes += drill.MidiBytes;
        XmlBytes += drill.XmlBytes;
        Checksum = unchecked(((Checksum + drill.Checksum) * Multiplier) + 1);
    }

    public bool Equals(Totals? other) =>
        other is not null && Made == other.Made && Refused == other.Refused && Notes == other.Notes && MidiBytes == other.MidiBytes
        && XmlBytes == other.XmlBytes && Checksum == other.Checksum;

    public override bool Equals(object? obj) => Equals(obj as Totals);

    public override int GetHashCode() => Checksum.GetHashCode();
}
