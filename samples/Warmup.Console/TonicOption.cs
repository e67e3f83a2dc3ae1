namespace Warmup.Cli;

/// <summary><c>--tonic</c>: a note, a kattai or a frequency.</summary>
internal static class TonicOption
{
    public const string Name = "--tonic";
    public const string Forms = "a note (G3), a kattai (5.5) or a frequency (220Hz)";

    /// <exception cref="InputException">The text is not a tonic.</exception>
    public static Tonic Read(string text) => OptionValue.Parsed(Name, text, (string typed, out Tonic? tonic, out TextError? error) => Tonic.TryParse(typed, out tonic, out error));
}
