using System.Globalization;
using System.Text;
using System.Text.Json;

namespace Warmup.Voices;

/// <summary>The file of a class: <c>{"schema": "urn:warmup:singers:1", "singers": [...]}</c>.</summary>
/// <remarks>
/// <para>Each singer has <c>alias</c>, <c>low</c>, <c>high</c> (note names), <c>sustainedSeconds</c> and, if wanted, <c>experience</c>
/// (beginner, intermediate or advanced; beginner by default).</para>
/// <para>In place of <c>sustainedSeconds</c> there may be <c>trials</c>, a list of seconds, and <c>trialRule</c> (best or median; best by
/// default). <c>voice</c> names a voice type; if it is a comfortable one, <c>low</c> and <c>high</c> may be left out, and the range counts
/// as assumed. <c>fullLow</c> and <c>fullHigh</c> are the ends of the full range. Seconds are kept to the thousandth. The schema is
/// <c>docs/schemas/singers-1.json</c>.</para>
/// <para>These numbers have no date. <c>measurements</c>, beside them or in their place, is a list of dated ones: <c>date</c> (2026-12-01) with the
/// same members. The newest counts; numbers without a date count as older than all others.</para>
/// </remarks>
public static class SingersFile
{
    /// <summary>The name of the format and its version.</summary>
    public const string Schema = "urn:warmup:singers:1";

    /// <summary>The largest file that is read, in bytes: 8,000,000 (the project's own bound).</summary>
    public static int LargestFile => 8_000_000;

    /// <summary>The most singers of a class: 20,000 (the project's own bound).</summary>
    public static int MostSingers => 20_000;

    /// <summary>Reads a class.</summary>
    /// <param name="json">The file's text in UTF-8, at most 8,000,000 bytes.</param>
    /// <returns>The singers in the file's order; each alias is there once.</returns>
    /// <exception cref="WarmupFormatException">The text is not a class: the error names the place, the value and the fix.</exception>
    public static ValueList<Singer> Read(ReadOnlySpan<byte> json)
    {
        if (json.Length > LargestFile)
        {
            throw Fail(1, 1, string.Create(CultureInfo.InvariantCulture, $"a class must be at most {LargestFile} bytes long, not {json.Length}"));
        }

        json = JsonText.WithoutMark(json);
        ClassDto? file;
        try
        {
            if (SingersMembers.FirstUnknown(json) is { } unknown)
            {
                throw Fail(unknown.Line, unknown.Column, $"unknown member {TextError.Quote(unknown.Name)}; {unknown.Known}");
            }

            JsonText.RefuseRepeatedMembers(json);
            file = JsonSerializer.Deserialize(json, SingersJson.Default.ClassDto);
        }
        catch (JsonException broken)
        {
            throw Fail((int)(broken.LineNumber ?? 0) + 1, (int)(broken.BytePositionInLine ?? 0) + 1, Explain(broken));
        }

        if (file?.Schema is not Schema)
        {
            throw Fail(1, 1, file?.Schema is { } other
                ? $"the schema of the class is {TextError.Quote(other)}; this library reads {Schema}"
                : $"the class lacks \"schema\": \"{Schema}\" at its beginning");
        }

        if (file.Singers is not { Count: > 0 } rows)
        {
            throw Fail(1, 1, "the class has no \"singers\"; list at least one");
        }

        if (rows.Count > MostSingers)
        {
            throw Fail(1, 1, string.Create(CultureInfo.InvariantCulture, $"a class must have at most {MostSingers} singers, not {rows.Count}"));
        }

        var seen = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var singers = new Singer[rows.Count];
        for (var i = 0; i < singers.Length; i++)
        {
            singers[i] = SingerRows.ToSinger(rows[i], i + 1);
            if (!seen.Add(singers[i].Alias))
            {
                throw Fail(1, 1, string.Create(CultureInfo.InvariantCulture, $"singer {i + 1}: the alias {TextError.Quote(singers[i].Alias)} is given twice; give each singer an alias of their own"));
            }
        }

        return singers.ToValueList();
    }

    /// <summary>
    /// Writes a class; <see cref="Read"/> gives equal singers back, their tones to a thousandth of a second. An empty class and
    /// aliases given twice are written as they are, though reading refuses them.
    /// </summary>
    /// <param name="singers">The singers.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    public static void Write(ValueList<Singer> singers, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(destination);
        List<SingerDto?> rows = [.. singers.ConvertAll(SingerRows.ToRow)];

        // The indenting writer ends lines as the system does; inside JSON strings a line break is always escaped, so this is safe.
        destination.Write(Encoding.UTF8.GetBytes(JsonText.Of(new ClassDto { Schema = Schema, Singers = rows }, SingersJson.Default.ClassDto)));
    }

    private static string Explain(JsonException broken)
    {
        var place = string.IsNullOrEmpty(broken.Path) || broken.Path == "$" ? string.Empty : $" at {TextError.Quote(broken.Path)}";
        return $"the text is not the JSON of a class{place}: check brackets, commas, quotes and that numbers are numbers";
    }

    internal static WarmupFormatException Fail(int line, int column, string message) => new(new TextError(line, column, message));
}
