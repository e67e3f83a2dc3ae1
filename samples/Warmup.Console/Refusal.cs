using System.Text.RegularExpressions;

namespace Warmup.Cli;

/// <summary>What an exception says to a person: without the runtime's additions, without names of temporary files.</summary>
internal static partial class Refusal
{
    private const int UnixNoSpace = 28;
    private const int WindowsNoSpace = unchecked((int)0x80070070);
    private const int UnixQuota = 122;

    public static string Words(Exception refused) => refused switch
    {
        WarmupFormatException format => format.Error.ToString(),
        ArgumentException argument => WithoutAdditions(argument),
        IOException { HResult: UnixNoSpace or WindowsNoSpace or UnixQuota } => "the disk is full; nothing half-written is left; make room, or write to another disk",
        _ => Temporary().Replace(refused.Message, "${name}").TrimEnd('.'),
    };

    private static string WithoutAdditions(ArgumentException argument)
    {
        var message = argument.Message;
        if (argument.ParamName is { } name && message.IndexOf($" (Parameter '{name}')", StringComparison.Ordinal) is var end and > 0)
        {
            message = message[..end];
        }

        return message;
    }

    [GeneratedRegex(@"\.(?<name>[^/\\']+?)(\.[0-9]+)?\.partial")]
    private static partial Regex Temporary();
}
