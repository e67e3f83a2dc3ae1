using FsCheck.Xunit;

namespace Warmup.Tests;

/// <summary>Source: the definition of equality of content, as an ordinary array has it item by item.</summary>
public class ValueListTests
{
    [Property]
    public void Lists_are_equal_when_their_items_are(int[] a, int[] b)
    {
        Assert.Equal(a.SequenceEqual(b), ValueList.Create<int>(a) == ValueList.Create<int>(b));
        Assert.Equal(a.SequenceEqual(b), ValueList.Create<int>(a).Equals((object)b.ToValueList()));
        Assert.Equal(!a.SequenceEqual(b), ValueList.Create<int>(a) != ValueList.Create<int>(b));
        Assert.Equal(ValueList.Create<int>(a), a.ToList().ToValueList());
        Assert.Equal(ValueList.Create<int>(a).GetHashCode(), a.ToList().ToValueList().GetHashCode());
        Assert.Equal(a.ToList(), a.ToValueList().ToList());
        Assert.Equal((a.Length, a.Length == 0), (a.ToValueList().Count, a.ToValueList().IsEmpty));
    }

    [Property]
    public void Changing_one_item_changes_the_list(int[] a, FsCheck.NonNegativeInt at, int to)
    {
        if (a.Length == 0)
        {
            return;
        }

        var changed = (int[])a.Clone();
        var place = at.Get % a.Length;
        changed[place] = to == a[place] ? to ^ 1 : to;
        Assert.NotEqual(a.ToValueList(), changed.ToValueList());
    }

    [Property]
    public void A_list_keeps_a_copy(int[] a)
    {
        var list = ValueList.Create<int>(a);
        var before = a.ToArray();
        Array.Fill(a, 7);
        Assert.Equal(before, list.ToArray());
    }

    [Property]
    public void Lists_of_lists_compare_by_content(int[] a, int[] b) => Assert.Equal(
        new[] { a.ToValueList(), b.ToValueList() }.ToValueList(),
        new[] { a.ToValueList(), b.ToValueList() }.ToValueList());

    [Property]
    public void Converting_keeps_number_and_order(int[] a) =>
        Assert.Equal(a.Select(x => (long)x * 2), a.ToValueList().ConvertAll(x => (long)x * 2));

    [Fact]
    public void Default_is_the_empty_list()
    {
        ValueList<string> none = default;
        Assert.Equal(ValueList.Create<string>([]), none);
        Assert.Equal(ValueList.Create<string>([]).GetHashCode(), none.GetHashCode());
        Assert.Equal((0, true, "[]"), (none.Count, none.IsEmpty, none.ToString()));
        Assert.Empty(none);
        Assert.True(none.AsSpan().IsEmpty);
        Assert.Empty(none.ConvertAll(s => s.Length));
        Assert.Throws<IndexOutOfRangeException>(() => none[0]);
    }

    [Fact]
    public void Order_and_length_count()
    {
        ValueList<int> a = [1, 2, 3];
        Assert.NotEqual(a, ValueList.Create([3, 2, 1]));
        Assert.NotEqual(a, ValueList.Create([1, 2]));
        Assert.Equal(a, ValueList.Create([1, 2, 3]));
        Assert.Equal("[1, 2, 3]", a.ToString());
        Assert.Throws<IndexOutOfRangeException>(() => a[3]);
        Assert.Throws<IndexOutOfRangeException>(() => a[-1]);
    }
}
