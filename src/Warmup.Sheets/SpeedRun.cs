namespace Warmup.Sheets;

/// <summary>Lines that follow each other in the same speed and at the same tempo.</summary>
/// <param name="First">The first line.</param>
/// <param name="End">The line behind the last one.</param>
/// <param name="Round">The time through the drill, from 0.</param>
/// <param name="Speed">The speed.</param>
internal readonly record struct SpeedRun(int First, int End, int Round, Speed Speed)
{
    /// <summary>The runs of a section, in order and without gaps.</summary>
    public static List<SpeedRun> Of(Section section)
    {
        var runs = new List<SpeedRun>();
        for (var l = 0; l < section.Lines.Count; l++)
        {
            var line = section.Lines[l];
            if (runs.Count > 0 && runs[^1].Round == line.Round && runs[^1].Speed == line.Speed)
            {
                runs[^1] = runs[^1] with { End = l + 1 };
            }
            else
            {
                runs.Add(new SpeedRun(l, l + 1, line.Round, line.Speed));
            }
        }

        return runs;
    }
}
