using System.Collections;
using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Runtime.CompilerServices;
using System.Text;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>
/// An immutable sequence with content equality: two lists are equal when their items are, and so are their hash codes.
/// </summary>
/// <typeparam name="T">The type of an item; its own equality is used.</typeparam>
/// <remarks><c>default</c> is the empty list. Safe to share between threads when the items are.</remarks>
[CollectionBuilder(typeof(ValueList), nameof(ValueList.Create))]
[JsonConverter(typeof(ValueListJsonConverter))]
[SuppressMessage("Naming", "CA1710:Identifiers should have correct suffix", Justification = "It is a list of values, and is named so.")]
public readonly struct ValueList<T> : IReadOnlyList<T>, IEquatable<ValueList<T>>, ValueListJsonConverter.IValueList
{
    // Several lists may each be a part of one array.
    private readonly T[]? _items;
    private readonly int _start;

    internal ValueList(T[] items)
        : this(items, 0, items.Length)
    {
    }

    internal ValueList(T[] items, int start, int count) => (_items, _start, Count) = (items, start, count);

    /// <summary>The number of items.</summary>
    public int Count { get; }

    /// <summary>Whether there are no items.</summary>
    public bool IsEmpty => Count == 0;

    /// <summary>The item at a position.</summary>
    /// <param name="index">0 to <see cref="Count"/> - 1.</param>
    /// <exception cref="IndexOutOfRangeException"><paramref name="index"/> lies outside the list.</exception>
    public T this[int index] => AsSpan()[index];

    /// <summary>Equality of content.</summary>
    /// <param name="left">One list.</param>
    /// <param name="right">The other.</param>
    public static bool operator ==(ValueList<T> left, ValueList<T> right) => left.Equals(right);

    /// <summary>Inequality of content.</summary>
    /// <param name="left">One list.</param>
    /// <param name="right">The other.</param>
    public static bool operator !=(ValueList<T> left, ValueList<T> right) => !left.Equals(right);

    /// <summary>The items as a span, for reading without allocation.</summary>
    public ReadOnlySpan<T> AsSpan() => new(_items, _start, Count);

    /// <summary>A list of each item's image.</summary>
    /// <typeparam name="TResult">The type of an image.</typeparam>
    /// <param name="selector">The function that gives an item's image.</param>
    /// <exception cref="ArgumentNullException"><paramref name="selector"/> is <see langword="null"/>.</exception>
    public ValueList<TResult> ConvertAll<TResult>(Func<T, TResult> selector)
    {
        ArgumentNullException.ThrowIfNull(selector);
        var items = AsSpan();
        var result = new TResult[items.Length];
        for (var i = 0; i < result.Length; i++)
        {
            result[i] = selector(items[i]);
        }

        return new ValueList<TResult>(result);
    }

    /// <summary>The position of the first item that is wanted; -1 where there is none.</summary>
    internal int IndexOf(Func<T, bool> wanted)
    {
        var items = AsSpan();
        for (var i = 0; i < items.Length; i++)
        {
            if (wanted(items[i]))
            {
                return i;
            }
        }

        return -1;
    }

    /// <inheritdoc/>
    public bool Equals(ValueList<T> other) => (ReferenceEquals(_items, other._items) && _start == other._start && Count == other.Count)
        || AsSpan().SequenceEqual(other.AsSpan(), EqualityComparer<T>.Default);

    /// <inheritdoc/>
    public override bool Equals([NotNullWhen(true)] object? obj) => obj is ValueList<T> other && Equals(other);

    /// <inheritdoc/>
    public override int GetHashCode()
    {
        var hash = default(HashCode);
        foreach (var item in AsSpan())
        {
            hash.Add(item);
        }

        return hash.ToHashCode();
    }

    /// <summary>The items in square brackets, separated by commas; cut off after 200 characters.</summary>
    public override string ToString()
    {
        var text = new StringBuilder("[");
        for (var i = 0; i < Count && text.Length <= OneLine.Longest; i++)
        {
            text.Append(i == 0 ? string.Empty : ", ").Append(CultureInfo.InvariantCulture, $"{this[i]}");
        }

        return OneLine.Of(text.Append(']').ToString());
    }

    /// <summary>An enumerator that does not allocate.</summary>
    public Enumerator GetEnumerator() => new(_items, _start, Count);

    IEnumerator<T> IEnumerable<T>.GetEnumerator() => ((IEnumerable<T>)new ArraySegment<T>(_items ?? [], _start, Count)).GetEnumerator();

    IEnumerator IEnumerable.GetEnumerator() => ((IEnumerable<T>)this).GetEnumerator();

    JsonConverter ValueListJsonConverter.IValueList.MakeConverter() => new ValueListJsonConverter.Of<T>();

    /// <summary>Walks the items in order.</summary>
    [SuppressMessage("Performance", "CA1815:Override equals and operator equals on value types", Justification = "An enumerator is not compared.")]
    public struct Enumerator
    {
        private readonly T[]? _items;
        private readonly int _end;
        private int _next;

        internal Enumerator(T[]? items, int start, int count) => (_items, _next, _end) = (items, start, start + count);

        /// <summary>The item walked to.</summary>
        public readonly T Current => _items![_next - 1];

        /// <summary>Walks to the next item.</summary>
        /// <returns>Whether there is one.</returns>
        public bool MoveNext()
        {
            if (_next >= _end)
            {
                return false;
            }

            _next++;
            return true;
        }
    }
}

/// <summary>Makes <see cref="ValueList{T}"/> values.</summary>
[SuppressMessage("Naming", "CA1711:Identifiers should not have incorrect suffix", Justification = "The companion of ValueList<T>.")]
public static class ValueList
{
    /// <summary>A list of a copy of the items.</summary>
    /// <typeparam name="T">The type of an item.</typeparam>
    /// <param name="items">The items.</param>
    public static ValueList<T> Create<T>(ReadOnlySpan<T> items) => new(items.ToArray());

    /// <summary>A list of a copy of the items.</summary>
    /// <typeparam name="T">The type of an item.</typeparam>
    /// <param name="items">The items; enumerated once.</param>
    /// <exception cref="ArgumentNullException"><paramref name="items"/> is <see langword="null"/>.</exception>
    public static ValueList<T> ToValueList<T>(this IEnumerable<T> items)
    {
        ArgumentNullException.ThrowIfNull(items);
        return new(items.ToArray());
    }

    /// <summary>Takes over an array that nobody else will write to.</summary>
    internal static ValueList<T> Adopt<T>(T[] items) => new(items);

    /// <summary>A part of an array that nobody will write to any more.</summary>
    internal static ValueList<T> Part<T>(T[] items, int start, int count) => new(items, start, count);
}
