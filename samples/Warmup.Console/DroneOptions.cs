using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options that say which drone sounds.</summary>
internal sealed class DroneOptions
{
    /// <summary>The words of <c>--drone</c>.</summary>
    public static readonly ValueList<(string Name, DroneStyle? Style)> Styles =
    [
        ("tanpura", DroneStyle.Tanpura),
        ("tanpura-5", DroneStyle.Tanpura with { StringCount = 5 }),
        ("sruti-box", DroneStyle.SrutiBox),
        ("none", null),
    ];

    private readonly Option<string> _drone = new("--drone")
    {
        Description = "Drone: tanpura, tanpura-5 (five strings), sruti-box (held) or none.",
        DefaultValueFactory = _ => "tanpura",
    };

    private readonly Option<string?> _string = new("--drone-string")
    {
        Description = "The drone's first string, such as P, M1 or N3; the scale decides by default.",
    };

    /// <summary>Whether a drone was named.</summary>
    public bool IsNamed(ParseResult parsed) => parsed.GetResult(_drone) is { Implicit: false };

    public void AddTo(Command command)
    {
        command.Add(_drone);
        command.Add(_string);
    }

    /// <summary>A drill with the drone that the options describe.</summary>
    /// <exception cref="InputException">An option's value cannot be used; the message names the option.</exception>
    public Drill Read(ParseResult parsed, Drill drill)
    {
        var style = OptionValue.Choice("--drone", parsed.GetValue(_drone)!, [.. Styles]);
        var first = parsed.GetValue(_string);
        if (style is null)
        {
            return first is null
                ? drill with { HasDrone = false }
                : throw new InputException("--drone-string needs a drone; leave it out, or choose another --drone");
        }

        return drill with { HasDrone = true, DroneStyle = first is null ? style : style with { First = ReadString(first) } };
    }

    private static Degree ReadString(string text) => Degree.TryParse(text.Trim(), out var degree, out _)
        ? degree
        : throw new InputException($"--drone-string must be a svara such as P, M1 or N3, not {TextError.Quote(text)}");
}
