using System.Globalization;
using System.Security.Cryptography;
using System.Text.Json;

namespace Warmup.Plans;

/// <summary>The file of a plan: <c>{"schema": "urn:warmup:plan:1", ...}</c>, described by <c>docs/schemas/plan-1.json</c>.</summary>
/// <remarks>A plan that is read back equals the one that was written, and so gives the same scores.</remarks>
public static class PlanFile
{
    private const int FingerprintBytes = 8;

    /// <summary>The name of the format and its version: <c>urn:warmup:plan:1</c>.</summary>
    public static string Schema => "urn:warmup:plan:1";

    /// <summary>The largest file that is read: 64,000,000 bytes.</summary>
    public static int LargestFile => 64_000_000;

    /// <summary>Writes a plan. Equal plans give equal bytes.</summary>
    /// <param name="plan">The plan.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    public static void Write(WarmupPlan plan, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(plan);
        Write(plan, plan.Days, destination);
    }

    /// <summary>Writes a plan whose days are drawn while it is written. The bytes are those of the plan that holds them.</summary>
    /// <param name="plan">The plan; its own days are not read.</param>
    /// <param name="days">The days in order; each is let go as soon as it is written.</param>
    /// <param name="destination">Where the bytes go; it is not closed.</param>
    public static void Write(WarmupPlan plan, IEnumerable<PlanDay> days, Stream destination)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(days);
        ArgumentNullException.ThrowIfNull(destination);
        JsonSerializer.Serialize(new WithoutReturns(destination), PlanWriting.ToDto(plan, days), PlanJson.Default.PlanDto);
        destination.WriteByte((byte)'\n');
    }

    /// <summary>
    /// A name of 16 hexadecimal digits for a plan, from the bytes of its file: another plan has another one, but a plan that was renewed keeps it
    /// (<see cref="WarmupPlan.Renew"/>). So a calendar can tell whose event it has.
    /// </summary>
    /// <param name="plan">The plan; its own days are not read.</param>
    /// <param name="days">The days in order; each is let go as soon as it is read.</param>
    public static string Fingerprint(WarmupPlan plan, IEnumerable<PlanDay> days)
    {
        ArgumentNullException.ThrowIfNull(plan);
        ArgumentNullException.ThrowIfNull(days);
        if (plan.Origin is { } origin)
        {
            return origin;
        }

        using var hash = SHA256.Create();
        using (var bytes = new CryptoStream(Stream.Null, hash, CryptoStreamMode.Write))
        {
            Write(plan, days, bytes);
        }

        return Convert.ToHexString(hash.Hash.AsSpan(0, FingerprintBytes)).ToLowerInvariant();
    }

    /// <summary>Reads a plan.</summary>
    /// <param name="json">The file's text in UTF-8, at most 64,000,000 bytes.</param>
    /// <exception cref="WarmupFormatException">The text is not a plan: the error names the place, the value and the fix.</exception>
    public static WarmupPlan Read(ReadOnlySpan<byte> json)
    {
        if (json.Length > LargestFile)
        {
            throw Fail(string.Create(CultureInfo.InvariantCulture, $"a plan must be at most {LargestFile} bytes long, not {json.Length}"));
        }

        json = JsonText.WithoutMark(json);
        PlanDto? file;
        try
        {
            JsonText.RefuseRepeatedMembers(json);
            file = JsonSerializer.Deserialize(json, PlanJson.Default.PlanDto);
        }
        catch (JsonException broken)
        {
            throw new WarmupFormatException(new TextError(
                (int)(broken.LineNumber ?? 0) + 1,
                (int)(broken.BytePositionInLine ?? 0) + 1,
                $"the text is not the JSON of a plan at {TextError.Quote(broken.Path ?? "$")}; take a file that was written as a plan"));
        }

        return file?.Schema == Schema
            ? PlanReading.ToPlan(file)
            : throw Fail(file?.Schema is { } other ? $"the schema of the plan is {TextError.Quote(other)}; this library reads {Schema}" : $"the plan lacks \"schema\": \"{Schema}\"");
    }

    internal static bool IsFingerprint(string text) => text.Length == 2 * FingerprintBytes && text.All(c => char.IsAsciiDigit(c) || c is >= 'a' and <= 'f');

    internal static WarmupFormatException Fail(string message) => new(TextError.At(1, message));
}
