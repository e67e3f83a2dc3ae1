namespace Warmup;

/// <summary>The generator that draws every choice of a plan and every sample: SplitMix64 (Steele, Lea and Flood 2014, OOPSLA), whose state is one number.</summary>
/// <remarks>
/// The same seed gives the same numbers on every machine. Every plan and every table of a sample holds <see cref="Name"/>; a later library that draws
/// in another way has to take another name. Not safe to share between threads.
/// </remarks>
internal sealed class SeededSource
{
    /// <summary>The name of the algorithm, and the number of the way in which choices are drawn from it.</summary>
    public const string Name = "splitmix64/1";

    private ulong _state;

    /// <summary>A generator.</summary>
    /// <param name="seed">Any number.</param>
    public SeededSource(ulong seed) => _state = seed;

    /// <summary>The next 64 bits.</summary>
    public ulong Next()
    {
        unchecked
        {
            _state += 0x9E3779B97F4A7C15;
            var z = _state;
            z = (z ^ (z >> 30)) * 0xBF58476D1CE4E5B9;
            z = (z ^ (z >> 27)) * 0x94D049BB133111EB;
            return z ^ (z >> 31);
        }
    }

    /// <summary>A number from 0 to one less than a bound, each as likely as the others.</summary>
    /// <param name="bound">At least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bound is below 1.</exception>
    public int Below(int bound) => (int)Below((long)bound);

    /// <summary>A number from 0 to one less than a bound, each as likely as the others.</summary>
    /// <param name="bound">At least 1.</param>
    /// <exception cref="ArgumentOutOfRangeException">The bound is below 1.</exception>
    public long Below(long bound)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(bound, 1);

        // Numbers in the last, incomplete stretch are drawn again, so that no remainder is more likely.
        var limit = ulong.MaxValue - (ulong.MaxValue % (ulong)bound);
        while (true)
        {
            var drawn = Next();
            if (drawn < limit)
            {
                return (long)(drawn % (ulong)bound);
            }
        }
    }

    /// <summary>The numbers from 0 to one less than a count, shuffled.</summary>
    /// <param name="count">At least 0.</param>
    public ValueList<int> Shuffled(int count)
    {
        var order = new int[count];
        for (var i = 0; i < count; i++)
        {
            order[i] = i;
        }

        for (var i = count - 1; i > 0; i--)
        {
            var j = Below(i + 1);
            (order[i], order[j]) = (order[j], order[i]);
        }

        return ValueList.Create<int>(order);
    }
}
