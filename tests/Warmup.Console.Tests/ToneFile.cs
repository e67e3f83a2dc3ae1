using System.Text;

namespace Warmup.Cli.Tests;

/// <summary>A WAV file with a voice-like tone of two seconds between two silences.</summary>
internal static class ToneFile
{
    private const int Rate = 16_000;

    public static void Write(string path)
    {
        using var writer = new BinaryWriter(File.Create(path));
        const int Frames = 4 * Rate;
        writer.Write(Encoding.ASCII.GetBytes("RIFF"));
        writer.Write(36 + (2 * Frames));
        writer.Write(Encoding.ASCII.GetBytes("WAVEfmt "));
        writer.Write(16);
        writer.Write((short)1);
        writer.Write((short)1);
        writer.Write(Rate);
        writer.Write(2 * Rate);
        writer.Write((short)2);
        writer.Write((short)16);
        writer.Write(Encoding.ASCII.GetBytes("data"));
        writer.Write(2 * Frames);
        for (var i = 0; i < Frames; i++)
        {
            var x = 2 * Math.PI * 262 * i / Rate;
            writer.Write(i is < Rate or > 3 * Rate ? (short)0 : (short)((9_000 * Math.Sin(x)) + (5_000 * Math.Sin(2 * x)) + (2_500 * Math.Sin(3 * x))));
        }
    }
}
