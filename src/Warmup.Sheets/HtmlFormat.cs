using System.Globalization;
using System.Text;

namespace Warmup.Sheets;

/// <summary>
/// Writes a score as a practice page: a sheet to read and print, and a player that makes the drone, a guide tone and the beat in the browser.
/// </summary>
/// <remarks>
/// The page is one file that loads nothing: its content policy allows no network, and no script or style but its own. Immutable, safe to share between
/// threads.
/// </remarks>
public sealed class HtmlFormat : IScoreFormat
{
    /// <summary>The format with the default options.</summary>
    public HtmlFormat()
        : this(HtmlOptions.Default)
    {
    }

    /// <summary>The format with options.</summary>
    /// <param name="options">The options.</param>
    public HtmlFormat(HtmlOptions options)
    {
        ArgumentNullException.ThrowIfNull(options);
        Options = options;
    }

    /// <summary>The most notes of a page: 20,000 (the project's own bound; browsers grow slow beyond it).</summary>
    public static int MostNotes => 20_000;

    /// <summary>The options.</summary>
    public HtmlOptions Options { get; }

    /// <inheritdoc/>
    public string Name => "practice page";

    /// <inheritdoc/>
    public ValueList<string> Extensions => [".html"];

    /// <summary>Writes a score as a practice page. Equal scores give equal bytes.</summary>
    /// <param name="score">The score.</param>
    /// <param name="destination">Where the bytes go, UTF-8 without a byte-order mark and with line feeds; it is not closed.</param>
    /// <param name="cancellationToken">Stops the work.</param>
    /// <exception cref="ExportException">The score has no sections, or more than 20,000 notes; then nothing is written.</exception>
    /// <exception cref="OperationCanceledException">The work was stopped.</exception>
    public void Write(Score score, Stream destination, CancellationToken cancellationToken = default)
    {
        ArgumentNullException.ThrowIfNull(score);
        ArgumentNullException.ThrowIfNull(destination);
        if (score.Sections.IsEmpty)
        {
            throw new ExportException("a score must have at least 1 section, not 0");
        }

        if (score.NoteCount > MostNotes)
        {
            throw new ExportException(string.Create(
                CultureInfo.InvariantCulture, $"a practice page holds at most {MostNotes} notes, not {score.NoteCount}; take fewer lines or times"));
        }

        using var writer = new StreamWriter(destination, new UTF8Encoding(false), leaveOpen: true) { NewLine = "\n" };
        try
        {
            new HtmlPage(writer, score, Options).Write(cancellationToken);
        }
        catch (OverflowException overflow)
        {
            throw new ExportException("the times of the score need fractions that do not fit 64 bits; use simpler tempi", overflow);
        }
    }
}
