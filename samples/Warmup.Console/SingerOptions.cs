using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options that name singers.</summary>
internal sealed class SingerOptions(bool required)
{
    public Option<string?> File { get; } = new("--singers")
    {
        Description = "The class: a JSON file such as the singers.json that 'warmup demo' writes, or a .csv table whose columns have the same names.",
        Required = required,
    };

    public Option<string?> Alias { get; } = new("--alias") { Description = "Only this singer of the class." };

    public void AddTo(Command command)
    {
        command.Add(File);
        command.Add(Alias);
    }

    /// <summary>The singers meant: none without a file, one with an alias, otherwise the class.</summary>
    public ValueList<Singer> Read(ParseResult parsed)
    {
        var alias = parsed.GetValue(Alias);
        if (parsed.GetValue(File) is not { } path)
        {
            return alias is null ? [] : throw new InputException("--alias needs the class it is in; add --singers FILE");
        }

        var singers = ReadFile(path);
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

        throw new InputException($"--alias: there is no {TextError.Quote(alias)} in {path}; its singers are {string.Join(", ", singers.Take(20).Select(s => s.Alias))}");
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
