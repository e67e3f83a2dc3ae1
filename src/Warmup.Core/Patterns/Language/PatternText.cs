using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>
/// Reads the patterns' text: primitives, written lines in brackets, words behind dots in the order in which they are applied, sums and
/// parentheses, such as <c>(ladder + [S R G , / R G M ,]).ends.repeat(2)</c>.
/// </summary>
internal ref struct PatternText
{
    public const int LongestText = 10_000;

    // No word is nearly as long; what is longer is no slip of the finger.
    private const int LongestNear = 32;

    private readonly string _text;
    private int _at;
    private int _open;
    private TextError? _error;

    private PatternText(string text)
    {
        _text = text;
        _at = 0;
        _open = 0;
        _error = null;
    }

    public static bool TryRead(string text, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error)
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

    private readonly ReadOnlySpan<char> Rest => _text.AsSpan(_at);

    private Pattern? Sum()
    {
        if (Chain() is not { } first)
        {
            return null;
        }

        if (Peek() != '+')
        {
            return first;
        }

        var start = _at;
        var parts = new List<Pattern> { first };
        while (Peek() == '+')
        {
            _at++;
            if (Chain() is not { } next)
            {
                return null;
            }

            parts.Add(next);
        }

        return Guard(start, () => Pattern.Sum([.. parts]));
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

    private Pattern? Atom() => Peek() switch
    {
        '(' => Parenthesis(),
        '[' => Brackets(),
        _ => Word(null),
    };

    private Pattern? Parenthesis()
    {
        if (++_open > Pattern.DeepestNesting)
        {
            return Fail(string.Create(CultureInfo.InvariantCulture, $"parentheses must be nested at most {Pattern.DeepestNesting} deep"));
        }

        _at++;
        if (Sum() is not { } inner)
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

    private Pattern? Brackets()
    {
        var end = _text.IndexOf(']', _at);
        if (end < 0)
        {
            return Fail("a '[' is not closed; expected ']' behind the written lines");
        }

        var start = _at;
        _at = end + 1;
        try
        {
            if (WrittenText.TryRead(_text, start + 1, end, out var written, out var error))
            {
                return written;
            }

            _error ??= error;
            return null;
        }
        catch (ArgumentException refused)
        {
            _at = start;
            return Fail(refused.Message);
        }
    }

    private Pattern? Word(Pattern? before)
    {
        _ = Peek();
        var start = _at;
        while (_at < _text.Length && (char.IsAsciiLetter(_text[_at]) || _text[_at] == '-'))
        {
            _at++;
        }

        var word = PatternWord.Find(_text.AsSpan(start, _at - start));
        if (word is null || word.TakesPattern == before is null)
        {
            var name = _text.AsSpan(start, _at - start);
            _at = start;
            return Fail(Unknown(name, word, before is not null));
        }

        if (word.Takes == WordTakes.Nothing)
        {
            return Peek() == '(' ? Fail($"'{word.Name}' takes no parentheses") : Guard(start, () => word.Build(new WordParts(before)));
        }

        if (Peek() != '(')
        {
            return Fail($"'{word.Name}' needs {Wanted(word)} in parentheses");
        }

        return word.Takes switch
        {
            WordTakes.Pattern => Parenthesis() is { } operand ? Guard(start, () => word.Build(new WordParts(before, default, operand))) : null,
            WordTakes.Texts => Texts(word) is { } texts ? Guard(start, () => word.Build(new WordParts(before, default, null, texts))) : null,
            _ => Numbers(word) is { } numbers ? Guard(start, () => word.Build(new WordParts(before, numbers))) : null,
        };
    }

    private readonly string Unknown(ReadOnlySpan<char> name, PatternWord? word, bool behindDot)
    {
        if (word is not null)
        {
            return behindDot
                ? $"'{word.Name}' begins a pattern and cannot stand behind a dot; join it with '+'"
                : $"'{word.Name}' needs a pattern before it, such as ladder.{word.Name}";
        }

        var known = string.Join(", ", ((IEnumerable<PatternWord>)PatternWord.All).Where(w => w.TakesPattern == behindDot).Select(w => w.Name));
        var what = behindDot ? $"a combinator behind the dot: {known}" : $"a pattern: {known}, written lines in [ ] or a sum in ( )";
        return name.IsEmpty
            ? $"{(_at < _text.Length ? "unexpected " + TextError.Quote(Rest) : "the text ends")}; expected {what}"
            : Near(name, behindDot) is { } near ? $"unknown word {TextError.Quote(name)}, perhaps {near}"
            : $"unknown word {TextError.Quote(name)}; expected {what}";
    }

    /// <summary>The word that a mistyped one is nearest to, at most a third of its letters away; none where none is near.</summary>
    private static string? Near(ReadOnlySpan<char> name, bool behindDot)
    {
        if (name.Length > LongestNear)
        {
            return null;
        }

        var typed = name.ToString().ToLowerInvariant();
        return ((IEnumerable<PatternWord>)PatternWord.All).Where(w => w.TakesPattern == behindDot)
            .Select(w => (w.Name, Distance: ScaleName.Distance(typed, w.Name)))
            .Where(w => w.Distance <= Math.Max(1, w.Name.Length / 3))
            .OrderBy(w => w.Distance).ThenBy(w => w.Name, StringComparer.Ordinal)
            .FirstOrDefault().Name;
    }

    private static string Wanted(PatternWord word) => word.Takes switch
    {
        WordTakes.Pattern => "a pattern",
        WordTakes.Texts => string.Create(CultureInfo.InvariantCulture, $"1 to {word.Most} words to sing, separated by spaces"),
        _ when word.Most == 1 => string.Create(CultureInfo.InvariantCulture, $"a number from {word.Lowest} to {word.Highest}"),
        _ when word.Most == word.Fewest => string.Create(CultureInfo.InvariantCulture, $"{word.Most} numbers from {word.Lowest} to {word.Highest}, separated by spaces"),
        _ => string.Create(CultureInfo.InvariantCulture, $"{word.Fewest} to {word.Most} numbers from {word.Lowest} to {word.Highest}, separated by spaces"),
    };

    private ValueList<int>? Numbers(PatternWord word)
    {
        _at++;
        var numbers = new List<int>();
        while (Peek() != ')')
        {
            var start = _at;
            while (_at < _text.Length && (char.IsAsciiDigit(_text[_at]) || (_at == start && _text[_at] == '-')))
            {
                _at++;
            }

            if (numbers.Count == word.Most
                || !int.TryParse(_text.AsSpan(start, _at - start), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var number)
                || number < word.Lowest
                || number > word.Highest)
            {
                _at = start;
                Fail($"'{word.Name}' needs {Wanted(word)}, not {(start < _text.Length ? TextError.Quote(Rest) : "the end of the text")}");
                return null;
            }

            numbers.Add(number);
            Comma();
        }

        if (numbers.Count < word.Fewest)
        {
            Fail($"'{word.Name}' needs {Wanted(word)}, not {numbers.Count}");
            return null;
        }

        _at++;
        return numbers.ToValueList();
    }

    private ValueList<string>? Texts(PatternWord word)
    {
        _at++;
        var texts = new List<string>();
        while (Peek() != ')')
        {
            var start = _at;
            while (_at < _text.Length && !char.IsWhiteSpace(_text[_at]) && _text[_at] is not (',' or ')'))
            {
                _at++;
            }

            var text = _text[start.._at];
            if (texts.Count == word.Most || !SungPattern.IsSung(text))
            {
                _at = start;
                Fail($"'{word.Name}' needs {Wanted(word)}, not {(start < _text.Length ? TextError.Quote(Rest) : "the end of the text")}");
                return null;
            }

            texts.Add(text);
            Comma();
        }

        if (texts.Count < word.Fewest)
        {
            Fail($"'{word.Name}' needs {Wanted(word)}, not none");
            return null;
        }

        _at++;
        return texts.ToValueList();
    }

    private void Comma()
    {
        if (Peek() == ',')
        {
            _at++;
        }
    }

    /// <summary>Builds a part; a bound that it breaks becomes an error at its place.</summary>
    private Pattern? Guard(int at, Func<Pattern> build)
    {
        try
        {
            return build();
        }
        catch (ArgumentException refused)
        {
            _at = at;
            return Fail(refused.Message.Split(" (Parameter", 2)[0]);
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
