using System.Globalization;
using System.Text;

namespace Warmup.Research;

/// <summary>Compares lines by what is heard.</summary>
internal static class Sound
{
    public static bool Alike(ReadOnlySpan<Line> one, ReadOnlySpan<Line> other)
    {
        if (one.Length != other.Length)
        {
            return false;
        }

        for (var i = 0; i < one.Length; i++)
        {
            if (!one[i].SoundsAs(other[i]))
            {
                return false;
            }
        }

        return true;
    }

    /// <summary>A text that is equal for lines that sound alike, and for no others.</summary>
    public static string KeyOf(ReadOnlySpan<Line> lines)
    {
        var key = new StringBuilder();
        foreach (var line in lines)
        {
            foreach (var note in line.Notes)
            {
                key.Append(CultureInfo.InvariantCulture, $"{note.Tone}:{note.Length}:{note.Rest}:{note.Sung}:{(int)note.Joining}{(int)note.Loudness} ");
            }

            key.Append('/');
        }

        return key.ToString();
    }

    /// <summary>A number that is equal for notes that sound alike.</summary>
    public static ulong HashOf(LineNote note) => unchecked(
        (((((ulong)(uint)note.Tone.GetHashCode() * 31) + (ulong)note.Length.Numerator) * 31) + (ulong)note.Length.Denominator + ((ulong)note.Rest.Numerator * 7919) + 1)
        * 0x9E3779B97F4A7C15UL);

    public static ulong HashOf(ReadOnlySpan<LineNote> notes)
    {
        var hash = 14695981039346656037UL;
        foreach (var note in notes)
        {
            hash = unchecked((hash ^ HashOf(note)) * 1099511628211UL);
            hash ^= hash >> 29;
        }

        return hash;
    }

    public static ulong HashOf(ReadOnlySpan<Line> lines)
    {
        var hash = (ulong)lines.Length;
        foreach (var line in lines)
        {
            hash = unchecked((hash ^ HashOf(line.Notes.AsSpan())) * 1099511628211UL);
            hash ^= hash >> 29;
        }

        return hash;
    }
}
