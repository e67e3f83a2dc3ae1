using System.Collections;

namespace Warmup.Plans;

/// <summary>The drawn days of a plan as rows of numbers, some thirty bytes a day, from which they are read as often as they are asked for.</summary>
internal sealed class DayRows : IEnumerable<PlanDay>
{
    private readonly WarmupPlan _plan;
    private readonly byte[] _rows;

    /// <summary>Goes through the days once.</summary>
    /// <param name="plan">The plan, whose drills the days have; its own days are not read.</param>
    /// <param name="days">The days in order; each is let go as soon as its row is written.</param>
    public DayRows(WarmupPlan plan, IEnumerable<PlanDay> days)
    {
        _plan = plan;
        var places = new Dictionary<PlanDrill, int>(ReferenceEqualityComparer.Instance);
        foreach (var drill in plan.Drills)
        {
            places.Add(drill, places.Count);
        }

        using var rows = new MemoryStream();
        using var writer = new BinaryWriter(rows);
        foreach (var day in days)
        {
            Write(writer, day, places);
        }

        writer.Flush();
        _rows = rows.ToArray();
    }

    public IEnumerator<PlanDay> GetEnumerator()
    {
        using var reader = new BinaryReader(new MemoryStream(_rows, writable: false));
        while (reader.BaseStream.Position < reader.BaseStream.Length)
        {
            yield return Read(reader);
        }
    }

    IEnumerator IEnumerable.GetEnumerator() => GetEnumerator();

    private static void Write(BinaryWriter writer, PlanDay day, Dictionary<PlanDrill, int> places)
    {
        writer.Write7BitEncodedInt(day.Date.DayNumber);
        Write(writer, day.Seconds);
        Write(writer, day.Drills, planned =>
        {
            writer.Write7BitEncodedInt(places[planned.Drill]);
            writer.Write7BitEncodedInt(planned.Tempo);
            writer.Write7BitEncodedInt(planned.Times);
        });
        Write(writer, day.LeftOut, drill => writer.Write7BitEncodedInt(places[drill]));
        Write(writer, day.Shortfall is { } why ? [why.Unfit, why.AboveCeiling, why.Waiting, why.OutOfOrder] : default(ValueList<int>), writer.Write7BitEncodedInt);
    }

    private PlanDay Read(BinaryReader reader)
    {
        var date = DateOnly.FromDayNumber(reader.Read7BitEncodedInt());
        var seconds = ReadRational(reader);
        var drills = ReadList(reader, () => new DayDrill(_plan.Drills[reader.Read7BitEncodedInt()], reader.Read7BitEncodedInt(), reader.Read7BitEncodedInt()));
        var leftOut = ReadList(reader, () => _plan.Drills[reader.Read7BitEncodedInt()]);
        var why = ReadList(reader, reader.Read7BitEncodedInt);
        return new PlanDay(date, drills, seconds, leftOut)
        {
            Shortfall = why.IsEmpty ? null : new Shortfall { Unfit = why[0], AboveCeiling = why[1], Waiting = why[2], OutOfOrder = why[3] },
        };
    }

    private static void Write<T>(BinaryWriter writer, ValueList<T> items, Action<T> write)
    {
        writer.Write7BitEncodedInt(items.Count);
        foreach (var item in items)
        {
            write(item);
        }
    }

    private static void Write(BinaryWriter writer, Rational value)
    {
        writer.Write7BitEncodedInt64(value.Numerator);
        writer.Write7BitEncodedInt64(value.Denominator);
    }

    private static ValueList<T> ReadList<T>(BinaryReader reader, Func<T> read)
    {
        var items = new T[reader.Read7BitEncodedInt()];
        for (var i = 0; i < items.Length; i++)
        {
            items[i] = read();
        }

        return ValueList.Create<T>(items);
    }

    private static Rational ReadRational(BinaryReader reader) => new(reader.Read7BitEncodedInt64(), reader.Read7BitEncodedInt64());
}
