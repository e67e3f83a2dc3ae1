using System.Globalization;

namespace Warmup;

/// <summary>
/// Reads the patterns' text: primitives, words behind dots in the order in which they are applied, sums and parentheses, such as
/// <c>(ladder + ladder.reversed).ends.repeat(2)</c>.
/// </summary>
internal ref struct PatternText
{
    public const int LongestText = 10_000;

    private readonly ReadOnlySpan<char> _text;
    private int _at;
    private int _open;
    private TextError? _error;

    private PatternText(ReadOnlySpan<char> text)
    {
        _text = text;
        _at = 0;
        _open = 0;
        _error = null;
    }

    public static bool TryRead(string text, out Pattern? pattern, out TextError? error)
    {
        pattern = null;
        if (text.Length > LongestText)
        {
            error = TextError.At(
                LongestText + 1, string.Create(CultureInfo.InvariantCulture, $"a pattern must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        var reader = new PatternText(text);
        var read = reader.Sum();
        reader.Peek();
        if (read is not null && reader._at < text.Length) // the end of the text, not a null character in it
        {
            reader.Fail($"unexpected {TextError.Quote(reader.Rest)}; expected '.', '+' or the end");
        }

        error = reader._error;
        pattern = error is null ? read : null;
        return error is null;
    }

    private readonly ReadOnlySpan<char> Rest => _text[_at..];

    private Pattern? Sum()
    {
        var sum = Chain();
        while (sum is not null && Peek() == '+')
        {
            var at = _at++;
            var next = Chain();
            sum = next is null ? null : Guard(at, sum, (first, _) => first!.Then(next), []);
        }

        return sum;
    }

    private Pattern? Chain()
    {
        var pattern = Atom();
        while (pattern is not null && Peek() == '.')
        {
            _at++;
            pattern = Word(pattern);
        }

        return pattern;
    }

    private Pattern? Atom()
    {
        if (Peek() != '(')
        {
            return Word(null);
        }

        if (++_open > Pattern.DeepestNesting)
        {
            return Fail(string.Create(CultureInfo.InvariantCulture, $"parentheses must be nested at most {Pattern.DeepestNesting} deep"));
        }

        _at++;
        var inner = Sum();
        if (inner is null)
        {
            return null;
        }

        if (Peek() != ')')
        {
            return Fail("a '(' is not closed; expected ')'");
        }

        _at++;
        _open--;
        return inner;
    }

    private Pattern? Word(Pattern? before)
    {
        _ = Peek();
        var start = _at;
        while (_at < _text.Length && (char.IsAsciiLetter(_text[_at]) || _text[_at] == '-'))
        {
            _at++;
        }

        var name = _text[start.._at];
        foreach (var word in PatternWord.All)
        {
            if (word.TakesPattern == before is not null && name.Equals(word.Name, StringComparison.OrdinalIgnoreCase))
            {
                return Numbers(word) is { } numbers ? Guard(start, before, word.Build, numbers) : null;
            }
        }

        _at = start;
        return Fail(Unknown(name, before is not null));
    }

    private readonly string Unknown(ReadOnlySpan<char> name, bool behindDot)
    {
        var known = ((IEnumerable<PatternWord>)PatternWord.All).Where(w => w.TakesPattern == behindDot).Select(w => w.Name).ToList();
        var what = behindDot ? "a combinator behind the dot" : "a pattern";
        if (name.IsEmpty)
        {
            return $"{(_at < _text.Length ? "unexpected " + TextError.Quote(Rest) : "the text ends")}; expected {what}: {string.Join(", ", known)}";
        }

        foreach (var word in PatternWord.All)
        {
            if (word.TakesPattern != behindDot && name.Equals(word.Name, StringComparison.OrdinalIgnoreCase))
            {
                return behindDot
                    ? $"'{word.Name}' begins a pattern and cannot stand behind a dot; join it with '+'"
                    : $"'{word.Name}' needs a pattern before it, such as ladder.{word.Name}";
            }
        }

        return $"unknown word {TextError.Quote(name)}; expected {what}: {string.Join(", ", known)}";
    }

    private int[]? Numbers(PatternWord word)
    {
        if (word.MostNumbers == 0)
        {
            if (Peek() == '(')
            {
                Fail($"'{word.Name}' takes no numbers");
                return null;
            }

            return [];
        }

        var wanted = word.MostNumbers == 1
            ? string.Create(CultureInfo.InvariantCulture, $"a number from {word.Lowest} to {word.Highest}")
            : string.Create(CultureInfo.InvariantCulture, $"{word.FewestNumbers} to {word.MostNumbers} numbers from {word.Lowest} to {word.Highest}, separated by spaces");
        if (Peek() != '(')
        {
            Fail($"'{word.Name}' needs {wanted} in parentheses");
            return null;
        }

        _at++;
        var numbers = new List<int>();
        while (true)
        {
            if (Peek() == ')')
            {
                if (numbers.Count < word.FewestNumbers)
                {
                    Fail($"'{word.Name}' needs {wanted}");
                    return null;
                }

                _at++;
                return [.. numbers];
            }

            if (numbers.Count > 0 && Peek() == ',')
            {
                _at++;
                _ = Peek();
            }

            var start = _at;
            while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || (_at == start && _text[_at] == '-')))
            {
                _at++;
            }

            if (numbers.Count == word.MostNumbers
                || !int.TryParse(_text[start.._at], NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
                || number < word.Lowest
                || number > word.Highest)
            {
                _at = start;
                Fail($"'{word.Name}' needs {wanted}, not {(start < _text.Length ? TextError.Quote(Rest) : "the end of the text")}");
                return null;
            }

            numbers.Add(number);
        }
    }

    /// <summary>Builds a part; a bound that it breaks becomes an error at its place.</summary>
    private Pattern? Guard(int at, Pattern? before, Func<Pattern?, int[], Pattern> build, int[] numbers)
    {
        try
        {
            return build(before, numbers);
        }
        catch (ArgumentException refused)
        {
            _at = at;
            return Fail(refused.Message);
        }
    }

    private char Peek()
    {
        while (_at < _text.Length && char.IsWhiteSpace(_text[_at]))
        {
            _at++;
        }

        return _at < _text.Length ? _text[_at] : '\0';
    }

    private Pattern? Fail(string message)
    {
        _error ??= TextError.At(_at + 1, message);
        return null;
    }
}
