using System.Globalization;
using Warmup.Audio;

namespace Warmup.Web;

/// <summary>Sound of at most five minutes (the project's own setting): an answer is held in memory.</summary>
internal sealed class SoundFormat : IScoreFormat
{
    /// <summary>The longest sound, in seconds.</summary>
    public const int MostSeconds = 300;

    private readonly WavFormat _format = new();

    public string Name => _format.Name;

    public ValueList<string> Extensions => _format.Extensions;

    /// <exception cref="ExportException">The sound is too long.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        if (score.Seconds > MostSeconds)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture, $"the sound would last {score.Seconds.ToDouble():0} seconds and must last at most {MostSeconds}: take fewer lines or a faster tempo, or use the practice page, which plays without a limit"));
        }

        _format.Write(score, destination, cancellationToken);
    }
}
