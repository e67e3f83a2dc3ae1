using System.ComponentModel;
using System.Diagnostics;
using System.Runtime.InteropServices;

namespace Warmup.Takes;

/// <summary>A recording that the program ffmpeg decodes: what phones and browsers record, for which there is no well-kept decoder in .NET.</summary>
internal sealed class FfmpegSource : SoundSource
{
    private const int Rate = 48_000;
    private readonly Process _process;
    private readonly Task<string> _said;
    private bool _hasSound;

    private FfmpegSource(Process process)
        : base(Rate, 2)
    {
        _process = process;
        _said = process.StandardError.ReadToEndAsync();
    }

    public static FfmpegSource Open(string path, string? ffmpeg)
    {
        const string Convert = "the recording is M4A or WebM; install ffmpeg, or convert it where ffmpeg is: ffmpeg -i FILE -ac 1 take.wav";
        if (ffmpeg is null)
        {
            throw new SoundException(Convert);
        }

        var start = new ProcessStartInfo(ffmpeg) { RedirectStandardOutput = true, RedirectStandardError = true, RedirectStandardInput = true, UseShellExecute = false };
        foreach (var argument in (string[])["-v", "error", "-nostdin", "-i", "file:" + Path.GetFullPath(path), "-map", "0:a:0", "-f", "f32le", "-ac", "2", "-ar", "48000", "-"])
        {
            start.ArgumentList.Add(argument);
        }

        try
        {
            return new FfmpegSource(Process.Start(start) ?? throw new SoundException(Convert));
        }
        catch (Win32Exception missing)
        {
            throw new SoundException(Convert, missing);
        }
    }

    public override int Read(Span<float> buffer)
    {
        var bytes = MemoryMarshal.AsBytes(buffer[..(buffer.Length / 2 * 2)]);
        var count = _process.StandardOutput.BaseStream.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        if (count < bytes.Length)
        {
            _process.WaitForExit();
            if (_process.ExitCode != 0 || (count == 0 && !_hasSound))
            {
                throw new SoundException($"the recording is broken ({OneLine.Cut(OneLine.Of(_said.GetAwaiter().GetResult().Trim()), 200)}); record or convert it again");
            }
        }

        _hasSound |= count > 0;
        return count / 8 * 2;
    }

    protected override void Dispose(bool disposing)
    {
        if (!_process.HasExited)
        {
            _process.Kill();
        }

        _process.Dispose();
        base.Dispose(disposing);
    }
}
