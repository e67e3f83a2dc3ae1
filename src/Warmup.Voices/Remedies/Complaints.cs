namespace Warmup.Voices;

/// <summary>Which finding: of which singer, which code, and on which line of the pattern, whatever time and speed it is sung in.</summary>
/// <param name="Singer">The index of the singer.</param>
/// <param name="Code">The finding's code.</param>
/// <param name="Line">The index of the pattern's line; -1 where the finding concerns the whole drill.</param>
internal readonly record struct Complaint(int Singer, string Code, int Line);

/// <summary>The complaints about a drill as it is, each once and with a number, and how far each goes.</summary>
internal sealed class Complaints
{
    // Amounts are doubles, made of exact fractions: what is the same differs in the last digits only.
    private const double Noise = 1e-9;

    private readonly Dictionary<Complaint, int> _numbers = [];
    private readonly List<Complaint> _all = [];
    private readonly List<double> _excess = [];

    /// <summary>The complaints by their numbers.</summary>
    public IReadOnlyList<Complaint> All => _all;

    /// <summary>The number of a complaint; nothing where there is no such complaint.</summary>
    public int? NumberOf(Complaint complaint) => _numbers.TryGetValue(complaint, out var number) ? number : null;

    /// <summary>Adds a complaint; of the same one the worst counts.</summary>
    public void Add(Complaint complaint, double excess)
    {
        if (_numbers.TryGetValue(complaint, out var number))
        {
            _excess[number] = Math.Max(excess, _excess[number]);
            return;
        }

        _numbers[complaint] = _all.Count;
        _all.Add(complaint);
        _excess.Add(excess);
    }

    /// <summary>Notes that a complaint is still there after a change.</summary>
    /// <returns>Whether it was there before, and no less.</returns>
    public bool Keep(Complaint complaint, double excess, ComplaintSet left)
    {
        if (!_numbers.TryGetValue(complaint, out var number) || excess > _excess[number] + Noise)
        {
            return false;
        }

        left.Add(number);
        return true;
    }
}

/// <summary>Some of the complaints, by their numbers.</summary>
internal sealed class ComplaintSet(int count)
{
    private readonly ulong[] _bits = new ulong[(count + 63) / 64];

    public bool Contains(int number) => (_bits[number / 64] & (1UL << (number % 64))) != 0;

    public void Add(int number) => _bits[number / 64] |= 1UL << (number % 64);

    /// <summary>Adds others.</summary>
    /// <returns>Whether there is a set to add: there is none after a change that does harm.</returns>
    public bool AddAll(ComplaintSet? others)
    {
        for (var i = 0; others is not null && i < _bits.Length; i++)
        {
            _bits[i] |= others._bits[i];
        }

        return others is not null;
    }

    /// <summary>Whether it has any of the others.</summary>
    public bool ContainsAny(ComplaintSet others)
    {
        for (var i = 0; i < _bits.Length; i++)
        {
            if ((_bits[i] & others._bits[i]) != 0)
            {
                return true;
            }
        }

        return false;
    }

    /// <summary>Whether it has all of the others.</summary>
    public bool ContainsAll(ComplaintSet others)
    {
        for (var i = 0; i < _bits.Length; i++)
        {
            if ((_bits[i] & others._bits[i]) != others._bits[i])
            {
                return false;
            }
        }

        return true;
    }
}

/// <summary>All complaints of one singer and one code, and what was found to clear them.</summary>
internal sealed class ComplaintKind(int singer, string code, int count)
{
    public int Singer => singer;

    public string Code => code;

    /// <summary>The complaints.</summary>
    public ComplaintSet Complaints { get; } = new(count);

    /// <summary>What clears all of them, the smallest change first.</summary>
    public List<Remedy> Remedies { get; } = [];
}
