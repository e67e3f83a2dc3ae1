using System.CommandLine;

namespace Warmup.Cli;

/// <summary>The options that name singers.</summary>
internal sealed class SingerOptions(bool required)
{
    private readonly Option<string?> _singers = new("--singers")
    {
        Description = "The class: a JSON file, such as the singers.json that 'warmup demo' writes, or a .csv table with the same members as columns.",
        Required = required,
    };

    private readonly Option<string?> _alias = new("--alias") { Description = "Only this singer of the class." };

    public void AddTo(Command command)
    {
        command.Add(_singers);
        command.Add(_alias);
    }

    /// <summary>The singers meant: none without a file, one with an alias, otherwise the class.</summary>
    public ValueList<Singer> Read(ParseResult parsed)
    {
        var alias = parsed.GetValue(_alias);
        if (parsed.GetValue(_singers) is not { } path)
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

        throw new InputException($"--alias: there is no '{alias}' in {path}; its singers are {string.Join(", ", singers.Take(20).Select(s => s.Alias))}");
    }

    private static ValueList<Singer> ReadFile(string path)
    {
        try
        {
            if (new FileInfo(path) is { Exists: true, Length: > SingersFile.LargestFile } large)
            {
                throw new InputException($"--singers: {path} has {large.Length} bytes; the most is {SingersFile.LargestFile}");
            }

            return Path.GetExtension(path).Equals(".csv", StringComparison.OrdinalIgnoreCase) ? SingersCsv.Read(path) : SingersFile.Read(File.ReadAllBytes(path));
        }
        catch (InputException broken) when (!broken.Message.StartsWith("--singers", StringComparison.Ordinal))
        {
            throw new InputException($"--singers: {path}, {broken.Message}");
        }
        catch (WarmupFormatException broken)
        {
            throw new InputException($"--singers: {path}, {broken.Error}");
        }
        catch (Exception unreadable) when (unreadable is IOException or UnauthorizedAccessException)
        {
            throw new InputException($"--singers: {path} cannot be read ({unreadable.Message}); name a JSON file such as the singers.json that 'warmup demo' writes");
        }
    }
}
