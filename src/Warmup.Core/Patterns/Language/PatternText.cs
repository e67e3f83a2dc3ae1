using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>
/// Reads the patterns' text: primitives, written lines in brackets, words after dots in the order in which they are applied, sums and
/// parentheses, such as <c>(ladder + [S R G , / R G M ,]).ends.repeat(2)</c>.
/// </summary>
internal ref struct PatternText
{
    public const int LongestText = 10_000;

    private readonly PatternLanguage _language;
    private TextCursor _cursor;
    private int _open;
    private TextError? _error;

    private PatternText(PatternLanguage language, string text)
    {
        _language = language;
        _cursor = new TextCursor(text);
        _open = 0;
        _error = null;
    }

    public static bool TryRead(PatternLanguage language, string text, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error)
    {
        pattern = null;
        if (text.Length > LongestText)
        {
            error = new TextCursor(text).ErrorAt(
                LongestText, string.Create(CultureInfo.InvariantCulture, $"a pattern must be at most {LongestText} characters long, not {text.Length}"));
            return false;
        }

        if (WrittenText.Begins(new TextCursor(text)))
        {
            return WrittenText.TryRead(new TextCursor(text), out pattern, out error);
        }

        var reader = new PatternText(language, text);
        var read = reader.Sum();
        reader.Peek();
        if (read is not null && !reader._cursor.IsAtEnd) // the end of the text, not a null character in it
        {
            reader.Fail($"unexpected {TextError.Quote(reader._cursor.Rest)}; expected '.', '+' or the end");
        }

        error = reader._error;
        pattern = error is null ? read : null;
        return error is null;
    }

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

        var start = _cursor.Position;
        var parts = new List<Pattern> { first };
        while (Peek() == '+')
        {
            _cursor.Position++;
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
            _cursor.Position++;
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
        if (++_open > PatternLimits.Levels)
        {
            return Fail(string.Create(CultureInfo.InvariantCulture, $"parentheses must be nested at most {PatternLimits.Levels} deep"));
        }

        _cursor.Position++;
        if (Sum() is not { } inner)
        {
            return null;
        }

        if (Peek() != ')')
        {
            return Fail("a '(' is not closed; expected ')'");
        }

        _cursor.Position++;
        _open--;
        return inner;
    }

    private Pattern? Brackets()
    {
        var length = _cursor.Rest.IndexOf(']');
        if (length < 0)
        {
            return Fail("a '[' is not closed; expected ']' after the written lines");
        }

        var lines = _cursor.Before(_cursor.Position + length);
        lines.Position++;
        _cursor.Position += length + 1;
        if (WrittenText.TryRead(lines, out var written, out var error))
        {
            return written;
        }

        _error ??= error;
        return null;
    }

    private Pattern? Word(Pattern? before)
    {
        _ = Peek();
        var start = _cursor.Position;
        var name = _cursor.TakeWhile(static c => char.IsAsciiLetter(c) || c == '-');
        var word = _language.Find(name);
        if (word is null || word.IsPrimitive != before is null)
        {
            _cursor.Position = start;
            return Fail(Misplaced(name, word, before is not null));
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
            _ => Numbers(word) is not { } numbers ? null : word.Rule(numbers) is { } fault ? FailAt(start, fault) : Guard(start, () => word.Build(new WordParts(before, numbers))),
        };
    }

    private readonly string Misplaced(ReadOnlySpan<char> name, PatternWord? word, bool afterDot)
    {
        if (word is not null)
        {
            return afterDot
                ? $"'{word.Name}' begins a pattern and cannot follow a dot; join it with '+'"
                : $"'{word.Name}' needs a pattern before it, such as ladder.{word.Name}";
        }

        if (!name.IsEmpty)
        {
            return _language.Unknown(name, w => w.IsPrimitive != afterDot);
        }

        var found = !_cursor.IsAtEnd ? "unexpected " + TextError.Quote(UpToClose(_cursor.Rest)) : "the text ends";
        return afterDot
            ? $"{found}; expected a combinator after the dot: {_language.Names(w => !w.IsPrimitive)}"
            : $"{found}; expected a pattern: {_language.Names(w => w.IsPrimitive)}, written lines in [ ] or a sum in ( )";
    }

    private static string Wanted(PatternWord word) => word.Takes switch
    {
        WordTakes.Pattern => "a pattern",
        WordTakes.Texts => string.Create(CultureInfo.InvariantCulture, $"1 to {Pattern.MostTexts} words to sing, separated by spaces"),
        _ => word.Numbers.Most == 1 ? word.Wanted : $"{word.Wanted}, separated by spaces",
    };

    private ValueList<int>? Numbers(PatternWord word)
    {
        var form = _cursor;
        _cursor.Position++;
        var numbers = new List<int>();
        while (Peek() != ')')
        {
            var start = _cursor.Position;
            var isNumber = _cursor.TryTakeInteger(out var number);
            if (isNumber && number == 0 && (word.CountsPlaces || word.Numbers is { Lowest: 1, Fewest: 2, Most: 2 }))
            {
                _cursor.Position = start;
                var end = form.Rest.IndexOf(')');
                var text = $"{word.Name}{form.Rest[..(end < 0 ? form.Rest.Length : end + 1)]}";
                Fail(word.CountsPlaces ? Place.NoZero(text) : $"'{word.Name}' counts from 1, so there is no 0; what counted from 0 is now {Place.Recounted(text)}");
                return null;
            }

            number = word.CountsPlaces ? Place.ToStep(number) : number;
            if (!isNumber
                || numbers.Count == word.Numbers.Most
                || number < word.Numbers.Lowest
                || number > word.Numbers.Highest)
            {
                _cursor.Position = start;
                Fail($"'{word.Name}' needs {Wanted(word)}, not {(start < _cursor.End ? TextError.Quote(UpToClose(_cursor.Rest)) : "the end of the text")}");
                return null;
            }

            numbers.Add(number);
            Comma();
        }

        if (numbers.Count < word.Numbers.Fewest)
        {
            Fail($"'{word.Name}' needs {Wanted(word)}, not {numbers.Count}");
            return null;
        }

        _cursor.Position++;
        return numbers.ToValueList();
    }

    private ValueList<string>? Texts(PatternWord word)
    {
        _cursor.Position++;
        var texts = new List<string>();
        while (Peek() != ')')
        {
            var start = _cursor.Position;
            var text = _cursor.TakeWhile(static c => !char.IsWhiteSpace(c) && c is not (',' or ')')).ToString();
            if (texts.Count == Pattern.MostTexts || !SungPattern.IsSung(text))
            {
                _cursor.Position = start;
                Fail($"'{word.Name}' needs {Wanted(word)}, not {(start < _cursor.End ? TextError.Quote(UpToClose(_cursor.Rest)) : "the end of the text")}");
                return null;
            }

            texts.Add(text);
            Comma();
        }

        if (texts.Count == 0)
        {
            Fail($"'{word.Name}' needs {Wanted(word)}, not none");
            return null;
        }

        _cursor.Position++;
        return texts.ToValueList();
    }

    private void Comma()
    {
        _cursor.SkipWhiteSpace();
        _cursor.TryTake(',');
    }

    /// <summary>Builds a part; a bound that it breaks becomes an error at its place.</summary>
    private Pattern? Guard(int at, Func<Pattern> build)
    {
        try
        {
            return build();
        }
        catch (PatternTooLargeException refused)
        {
            return FailAt(at, refused.Reason);
        }
    }

    private char Peek() => _cursor.PeekPastWhiteSpace();

    private Pattern? FailAt(int at, string message)
    {
        _cursor.Position = at;
        return Fail(message);
    }

    private Pattern? Fail(string message)
    {
        _error ??= _cursor.Error(message);
        return null;
    }

    /// <summary>What is quoted of a number that cannot be read: up to the parenthesis that closes it.</summary>
    private static ReadOnlySpan<char> UpToClose(ReadOnlySpan<char> rest) => rest.IndexOf(')') is var end and > 0 ? rest[..end] : rest;
}
