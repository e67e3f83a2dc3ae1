using System.Globalization;
using System.Text;

namespace Warmup.Readers.Tests;

/// <summary>A page as a grey picture: its size in dots, and how many rows of dots are printed over half the page: the lines of the staves.</summary>
internal sealed record Page(int Width, int Height, int StaffLines)
{
    /// <summary>Reads a binary portable grey map (Netpbm's PGM, P5), 8 bits a dot.</summary>
    public static Page Read(string path)
    {
        var bytes = File.ReadAllBytes(path);
        var at = 0;
        string Word()
        {
            var start = at;
            while (!char.IsWhiteSpace((char)bytes[at]))
            {
                at++;
            }

            return Encoding.ASCII.GetString(bytes, start, at++ - start);
        }

        Assert.Equal("P5", Word());
        var width = int.Parse(Word(), CultureInfo.InvariantCulture);
        var height = int.Parse(Word(), CultureInfo.InvariantCulture);
        Assert.Equal("255", Word());
        Assert.Equal(width * height, bytes.Length - at);
        var lines = 0;
        for (; at < bytes.Length; at += width)
        {
            var printed = 0;
            foreach (var dot in bytes.AsSpan(at, width))
            {
                printed += dot < 230 ? 1 : 0;
            }

            lines += 2 * printed > width ? 1 : 0;
        }

        return new Page(width, height, lines);
    }
}
