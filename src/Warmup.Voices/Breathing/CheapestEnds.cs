namespace Warmup.Voices;

/// <summary>
/// The ends of spans that a breath reaches, while the note with which it begins goes back: earlier ends come to it and the latest leave it.
/// Only those that are still the cheapest once the later ones have left are kept, so that each end costs the same little.
/// </summary>
internal sealed class CheapestEnds(int most)
{
    // From the cheapest, which is the latest one, to the dearest and earliest.
    private readonly (int End, long Worth)[] _kept = new (int, long)[most];
    private int _first;
    private int _count;

    public bool IsEmpty => _count == 0;

    /// <summary>The cheapest end, and of equally cheap ones the earliest.</summary>
    public (int End, long Worth) Cheapest => _kept[_first];

    /// <summary>Adds an end that comes before all others.</summary>
    public void Add(int end, long worth)
    {
        while (_count > 0 && _kept[_first + _count - 1].Worth >= worth)
        {
            _count--;
        }

        _kept[_first + _count] = (end, worth);
        _count++;
    }

    /// <summary>Leaves out all ends after one.</summary>
    public void KeepTo(int end)
    {
        while (_count > 0 && _kept[_first].End > end)
        {
            (_first, _count) = (_first + 1, _count - 1);
        }
    }

    /// <summary>Leaves out all ends.</summary>
    public void Clear() => _count = 0;
}
