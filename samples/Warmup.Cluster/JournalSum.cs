namespace Warmup.ManyMachines;

/// <summary>Adds up what a journal says, and holds the parts against it.</summary>
internal sealed class JournalSum
{
    // More differences than this are only counted.
    private const int MostShown = 10;

    private readonly List<string> _differences = [];
    private readonly string? _parts;
    private PatternWork? _work;
    private RangeLedger<int>? _ledger;

    private JournalSum(string? parts) => _parts = parts;

    /// <summary>The sum of the results that count.</summary>
    public Tally Sum { get; private set; } = Tally.Empty;

    /// <summary>How many results came for a range that was done already.</summary>
    public int Repeated { get; private set; }

    /// <summary>The bytes of all parts that count.</summary>
    public long PartBytes { get; private set; }

    public int Done => _ledger?.Done ?? 0;

    public int Ranges => _ledger?.Ranges ?? 0;

    /// <summary>How many parts are not what the journal says.</summary>
    public int Different { get; private set; }

    /// <summary>The first of them, each as a sentence.</summary>
    public IReadOnlyList<string> Differences => _differences;

    /// <summary>Whether every range is done, and every part is what the journal says.</summary>
    public bool IsWhole => _ledger is { IsComplete: true } && Different == 0;

    /// <summary>Reads a journal, and the parts where their folder is given.</summary>
    /// <exception cref="InvalidOperationException">The journal holds no job that this program can read.</exception>
    public static async Task<JournalSum> ReadAsync(JobJournal journal, string? parts, CancellationToken stop)
    {
        var sum = new JournalSum(parts);
        await journal.ReadAsync(sum.Read, stop);
        return sum._work is null ? throw new InvalidOperationException("the journal is empty") : sum;
    }

    private void Read(IRecord record)
    {
        switch (record)
        {
            case Begun { Job: var job } when _work is null:
                _work = new PatternWork(job.Problem() is { } problem ? throw new InvalidOperationException(problem) : job);
                _ledger = new RangeLedger<int>(_work.Ranges);
                break;
            case Done { Ranges: var ranges } when _work is not null:
                foreach (var finished in ranges)
                {
                    Add(finished, _work, _ledger!);
                }

                break;
            default:
                throw new InvalidOperationException("the journal does not begin with one job");
        }
    }

    private void Add(Finished finished, PatternWork work, RangeLedger<int> ledger)
    {
        if (!ledger.Accept(finished.Range))
        {
            Repeated++;
            return;
        }

        Sum += finished.Tally;
        if (_parts is null)
        {
            return;
        }

        try
        {
            var name = PartFile.NameOf(work.FirstOf(finished.Range));
            if (PartFile.Read(_parts, work, finished.Range) != finished.Tally)
            {
                throw new InvalidDataException($"{name} has another sum");
            }

            PartBytes += new FileInfo(Path.Combine(_parts, name)).Length;
        }
        catch (InvalidDataException wrong)
        {
            Different++;
            if (_differences.Count < MostShown)
            {
                _differences.Add(wrong.Message);
            }
        }
    }
}
