using System.Globalization;
using System.Text;

namespace Warmup.Readers.Tests;

/// <summary>A page as a grey picture: its size in dots and the share of them that is not white.</summary>
internal sealed record Page(int Width, int Height, double Ink)
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
        return new Page(width, height, bytes.AsSpan(at).ToArray().Count(b => b < 200) / (double)(width * height));
    }
}
