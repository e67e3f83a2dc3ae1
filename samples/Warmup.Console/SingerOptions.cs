using System.CommandLine;
using Warmup.Samples;

namespace Warmup.Cli;

/// <summary>The options that name singers.</summary>
internal sealed class SingerOptions(bool required)
{
    public const string AliasName = "--alias";

    public Option<string?> File { get; } = new("--singers")
    {
        Description = "The class: a JSON file such as the singers.json that 'warmup demo' writes, or a .csv table whose columns have the same names.",
        Required = required,
    };

    public Option<string?> Alias { get; } = new(AliasName) { Description = "Only this singer of the class." };

    public void AddTo(Command command)
    {
        command.Add(File);
        command.Add(Alias);
    }

    /// <summary>The singers meant: none without a file, one with an alias, otherwise the class.</summary>
    public ValueList<Singer> Read(ParseResult parsed) => Chosen(parsed, ReadClass(parsed));

    /// <summary>All singers of the class, whichever one is meant; none without a file.</summary>
    public ValueList<Singer> ReadClass(ParseResult parsed) => parsed.GetValue(File) is { } path
        ? ReadFile(path)
        : parsed.GetValue(Alias) is null ? [] : throw new InputException("--alias needs the class it is in; add --singers FILE");

    /// <summary>The singers meant, of a class that is read already.</summary>
    public ValueList<Singer> Chosen(ParseResult parsed, ValueList<Singer> singers)
    {
        var alias = parsed.GetValue(Alias);
        if (alias is null)
        {
            return singers;
        }

        foreach (var singer in singers)
        {
            if (singer.Alias.Equals(alias, StringComparison.OrdinalIgnoreCase))
            {
                return [singer];
            }
        }

        throw new InputException($"--alias: there is no {TextError.Quote(alias)} in {parsed.GetValue(File)}; its singers are {string.Join(", ", singers.Take(20).Select(s => s.Alias))}");
    }

    private static ValueList<Singer> ReadFile(string path)
    {
        var isTable = Path.GetExtension(path).Equals(".csv", StringComparison.OrdinalIgnoreCase);
        return InputFile.Read(
            "--singers",
            path,
            SingersFile.LargestFile,
            "a JSON file such as the singers.json that 'warmup demo' writes",
            bytes => isTable ? SingersCsv.Read(bytes) : SingersFile.Read(bytes));
    }
}
