using System.Globalization;

namespace Warmup;

/// <summary>
/// A place in a text that somebody typed. It moves forward as the text is read, and makes errors that say where they are.
/// </summary>
/// <remarks>
/// Every reader of the library uses this cursor. A part of a text (<see cref="Before"/>, <see cref="Word"/>) is read by a cursor of its
/// own, whose errors still count from the beginning of the whole text.
/// </remarks>
internal ref struct TextCursor
{
    // From the beginning of the whole text to the end of the part that this cursor reads.
    private readonly ReadOnlySpan<char> _text;

    /// <summary>A cursor at the beginning of a text.</summary>
    /// <param name="text">The whole text.</param>
    public TextCursor(ReadOnlySpan<char> text)
        : this(text, 0)
    {
    }

    private TextCursor(ReadOnlySpan<char> text, int position)
    {
        _text = text;
        Position = position;
    }

    /// <summary>Characters from the beginning of the whole text.</summary>
    public int Position { get; set; }

    /// <summary>Where the text, or the part that this cursor reads, ends.</summary>
    public readonly int End => _text.Length;

    /// <summary>Whether nothing is left.</summary>
    public readonly bool IsAtEnd => Position >= _text.Length;

    /// <summary>What is left.</summary>
    public readonly ReadOnlySpan<char> Rest => _text[Position..];

    /// <summary>The next character, or one after it; the null character at the end, which a text may hold too: see <see cref="IsAtEnd"/>.</summary>
    /// <param name="ahead">Characters to pass over.</param>
    public readonly char Peek(int ahead = 0) => Position + ahead < _text.Length ? _text[Position + ahead] : '\0';

    /// <summary>What was read since a position.</summary>
    /// <param name="start">The position.</param>
    public readonly ReadOnlySpan<char> Since(int start) => _text[start..Position];

    /// <summary>Passes over white space.</summary>
    public void SkipWhiteSpace()
    {
        while (Position < _text.Length && char.IsWhiteSpace(_text[Position]))
        {
            Position++;
        }
    }

    /// <summary>Passes over white space and tells the character after it, as <see cref="Peek"/> does.</summary>
    public char PeekPastWhiteSpace()
    {
        SkipWhiteSpace();
        return Peek();
    }

    /// <summary>Takes a character if it comes next.</summary>
    public bool TryTake(char character)
    {
        if (IsAtEnd || _text[Position] != character)
        {
            return false;
        }

        Position++;
        return true;
    }

    /// <summary>Takes a word if it comes next, in capital or small letters.</summary>
    public bool TryTake(ReadOnlySpan<char> word)
    {
        if (!Rest.StartsWith(word, StringComparison.OrdinalIgnoreCase))
        {
            return false;
        }

        Position += word.Length;
        return true;
    }

    /// <summary>Takes the characters that are wanted; none where the next one is not.</summary>
    /// <param name="isWanted">Whether a character is wanted.</param>
    public ReadOnlySpan<char> TakeWhile(Func<char, bool> isWanted)
    {
        var start = Position;
        while (Position < _text.Length && isWanted(_text[Position]))
        {
            Position++;
        }

        return _text[start..Position];
    }

    /// <summary>Takes what stands before the next white space or comma.</summary>
    public ReadOnlySpan<char> TakeWord() => TakeWhile(static c => !char.IsWhiteSpace(c) && c != ',');

    /// <summary>Passes over white space and commas, and takes a word.</summary>
    /// <param name="word">A cursor that reads the word alone.</param>
    /// <returns>Whether there was a word left.</returns>
    public bool TryTakeWord(out TextCursor word)
    {
        TakeWhile(static c => char.IsWhiteSpace(c) || c == ',');
        var start = Position;
        TakeWord();
        word = Word(start);
        return Position > start;
    }

    /// <summary>Takes the next line and passes over its end: <c>\n</c>, <c>\r\n</c> or <c>\r</c>.</summary>
    /// <param name="line">A cursor that reads the line without its end.</param>
    /// <returns>Whether there was a line left.</returns>
    public bool TryTakeLine(out TextCursor line)
    {
        var wasAtEnd = IsAtEnd;
        var start = Position;
        TakeWhile(static c => c is not ('\n' or '\r'));
        line = Word(start);
        TryTake('\r');
        TryTake('\n');
        return !wasAtEnd;
    }

    /// <summary>Takes a whole number: digits, with a minus before them or without.</summary>
    /// <param name="number">The number, or 0.</param>
    /// <returns>Whether there was one that fits 32 bits; if not, nothing is taken.</returns>
    public bool TryTakeInteger(out int number)
    {
        var start = Position;
        TryTake('-');
        TakeWhile(char.IsAsciiDigit);
        if (int.TryParse(Since(start), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out number))
        {
            return true;
        }

        Position = start;
        return false;
    }

    /// <summary>A cursor that reads what was read since a position once more, and nothing after it.</summary>
    /// <param name="start">The position.</param>
    public readonly TextCursor Word(int start) => new(_text[..Position], start);

    /// <summary>A cursor that reads on from here up to a position, and nothing after it.</summary>
    /// <param name="end">The position.</param>
    public readonly TextCursor Before(int end) => new(_text[..end], Position);

    /// <summary>A cursor that reads what is left without the white space around it.</summary>
    public readonly TextCursor Trimmed()
    {
        var rest = Rest.TrimStart();
        return new(_text[..(End - rest.Length + rest.TrimEnd().Length)], End - rest.Length);
    }

    /// <summary>What is wrong here.</summary>
    /// <param name="message">What was found and what was expected.</param>
    public readonly TextError Error(string message) => ErrorAt(Position, message);

    /// <summary>What is wrong at a position.</summary>
    /// <param name="position">Characters from the beginning of the whole text.</param>
    /// <param name="message">What was found and what was expected.</param>
    public readonly TextError ErrorAt(int position, string message)
    {
        // Lines end with \n, \r\n or \r.
        var (line, begin) = (1, 0);
        for (var i = 0; i < position; i++)
        {
            if (_text[i] == '\n' || (_text[i] == '\r' && (i + 1 >= _text.Length || _text[i + 1] != '\n')))
            {
                (line, begin) = (line + 1, i + 1);
            }
        }

        return new TextError(line, position - begin + 1, message);
    }
}
