using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads lines written out in svara letters or steps, alone or as a bracketed part of a pattern's text.</summary>
internal static class WrittenText
{
    private const string Letters = "SRGMPDN";

    // Movable do, letter by letter: the scale chooses how high mi is, as it does for G.
    private static readonly (string Name, int Letter)[] SolfaNames = [("do", 0), ("re", 1), ("mi", 2), ("fa", 3), ("sol", 4), ("so", 4), ("la", 5), ("ti", 6)];

    /// <summary>Reads written lines.</summary>
    /// <param name="cursor">The lines: a whole text, or the part of one from the cursor's position to its end.</param>
    /// <param name="pattern">The pattern, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, and its place in the whole text; or <see langword="null"/>.</param>
    public static bool TryRead(TextCursor cursor, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error)
    {
        pattern = null;
        var length = cursor.Rest.Length;
        if (length > PatternText.LongestText)
        {
            error = cursor.ErrorAt(
                cursor.Position + PatternText.LongestText,
                string.Create(CultureInfo.InvariantCulture, $"written lines must be at most {PatternText.LongestText} characters long, not {length}"));
            return false;
        }

        var reader = new Reader(cursor);
        error = reader.Read();
        pattern = error is null ? reader.ToPattern() : null;
        return error is null;
    }

    /// <summary>
    /// Whether a text begins as written lines do that stand without brackets: with a svara letter, the name of a svara, solfa or a number, alone.
    /// </summary>
    /// <param name="cursor">The text.</param>
    public static bool Begins(TextCursor cursor)
    {
        cursor.SkipWhiteSpace();
        if (char.IsAsciiDigit(cursor.Peek()) || (cursor.Peek() == '-' && char.IsAsciiDigit(cursor.Peek(1))))
        {
            return true;
        }

        if (cursor.Peek() == '.')
        {
            cursor.Position++;
        }

        if (SolfaOf(cursor) is { } solfa)
        {
            cursor.Position += solfa.Name.Length;
        }
        else if (Letters.Contains(char.ToUpperInvariant(cursor.Peek()), StringComparison.Ordinal))
        {
            cursor.Position += 1 + EndingOf(cursor);
        }
        else
        {
            return false;
        }

        return !char.IsAsciiLetter(cursor.Peek()) && cursor.Peek() is not ('-' or '(' or '+');
    }

    /// <summary>The solfa syllable that stands alone at the cursor, in any case; none where there is no such.</summary>
    private static (string Name, int Letter)? SolfaOf(TextCursor cursor)
    {
        foreach (var syllable in SolfaNames)
        {
            if (cursor.Rest.StartsWith(syllable.Name, StringComparison.OrdinalIgnoreCase) && !char.IsAsciiLetter(cursor.Peek(syllable.Name.Length)))
            {
                return syllable;
            }
        }

        return null;
    }

    /// <summary>The letters that follow a svara letter in its name: one in <c>sa</c>, two in <c>dha</c>, none where it stands alone.</summary>
    private static int EndingOf(TextCursor cursor)
    {
        var first = char.ToUpperInvariant(cursor.Peek());
        var second = char.ToUpperInvariant(cursor.Peek(1));
        var length = first switch
        {
            'S' or 'G' or 'M' or 'P' when second == 'A' => 1,
            'R' when second is 'I' or 'E' => 1,
            'N' when second == 'I' => 1,
            'D' when second == 'A' => 1,
            'D' when second == 'H' && char.ToUpperInvariant(cursor.Peek(2)) == 'A' => 2,
            _ => 0,
        };
        return char.IsAsciiLetter(cursor.Peek(length + 1)) ? 0 : length;
    }

    private ref struct Reader(TextCursor cursor)
    {
        private readonly List<ValueList<WrittenNote>> _lines = [];
        private readonly List<WrittenNote> _notes = [];
        private bool? _byLetter;
        private bool? _capitals;
        private bool _silent;
        private bool _smallTonic;
        private readonly TextCursor _whole = cursor;
        private TextCursor _cursor = cursor;

        public WrittenPattern ToPattern() => new WrittenPattern(_lines.ToValueList(), _byLetter == true);

        public TextError? Read()
        {
            while (!_cursor.IsAtEnd)
            {
                var c = _cursor.Peek();
                if (char.IsWhiteSpace(c) || c == '|')
                {
                    _cursor.Position++;
                    continue;
                }

                var fault = c switch
                {
                    '/' => EndLine(),
                    ',' => Longer(1),
                    ';' => Longer(2),
                    '-' when !char.IsAsciiDigit(_cursor.Peek(1)) => Silence(),
                    '-' or (>= '0' and <= '9') => Step(),
                    _ => Letter(),
                };
                if (fault is not null)
                {
                    return _cursor.Error(fault);
                }
            }

            return EndLine() is { } empty ? _cursor.Error(empty) : null;
        }

        private string? EndLine()
        {
            if (_notes.Count == 0)
            {
                return "a written line has no notes; expected a svara letter such as S or a number such as 1";
            }

            _lines.Add(_notes.ToValueList());
            _notes.Clear();
            _silent = false;
            _cursor.TryTake('/');
            return null;
        }

        private string? Longer(int units)
        {
            if (_notes.Count == 0)
            {
                return $"'{_cursor.Peek()}' holds the note before it, and the line has no note yet; begin the line with a note";
            }

            var note = _notes[^1];
            note = _silent ? note with { Rest = note.Rest + units } : note with { Units = note.Units + units };
            return Keep(note);
        }

        private string? Silence()
        {
            if (_notes.Count == 0)
            {
                return "'-' is a silence after a note, and the line has no note yet; begin the line with a note";
            }

            _silent = true;
            return Keep(_notes[^1] with { Rest = _notes[^1].Rest + 1 });
        }

        private string? Keep(WrittenNote note)
        {
            if (note.Units > Pattern.MostUnits || note.Rest > Pattern.MostUnits)
            {
                return string.Create(CultureInfo.InvariantCulture, $"a written note must last 1 to {Pattern.MostUnits} units, and the silence after it at most {Pattern.MostUnits}");
            }

            _notes[^1] = note;
            _cursor.Position++;
            return null;
        }

        private string? Step()
        {
            var start = _cursor.Position;
            if (_cursor.TryTakeInteger(out var place) && place != 0 && Math.Abs((long)Place.ToStep(place)) <= Pattern.WidestWritten)
            {
                return Add(Place.ToStep(place), false, start);
            }

            _cursor.Position = start + 1;
            _cursor.TakeWhile(char.IsAsciiDigit);
            var typed = TextError.Quote(_cursor.Since(start));
            _cursor.Position = start;
            return place == 0 && typed.Trim('\'').Trim('-', '0').Length == 0
                ? Place.NoZero(_whole.Rest)
                : string.Create(CultureInfo.InvariantCulture, $"a place must be between {-Pattern.WidestWritten} and {Place.FromStep(Pattern.WidestWritten)}, not {typed}");
        }

        private string? Letter()
        {
            var start = _cursor.Position;
            var c = _cursor.Peek();
            var solfa = SolfaOf(_cursor);
            var letter = solfa?.Letter ?? Letters.IndexOf(char.ToUpperInvariant(c), StringComparison.Ordinal);
            if (c == '.')
            {
                return Dot(1);
            }

            if (letter < 0)
            {
                return $"unexpected {TextError.Quote(_cursor.Rest)}; expected a svara letter S R G M P D N or its name such as sa or do, a number, ',' ';' '-' '|' or '/'";
            }

            // A name such as "ri" or "re" says the same in any case; only bare letters tell two traditions apart.
            var octave = 0;
            var ending = solfa is { } name ? name.Name.Length - 1 : EndingOf(_cursor);
            if (ending == 0)
            {
                var isCapital = char.IsAsciiLetterUpper(c);
                if (_capitals == false && c == 'S' && _smallTonic)
                {
                    octave = 1; // s r g m p d n S
                }
                else if (_capitals is { } capitals && capitals != isCapital)
                {
                    return $"'{c}' mixes small and capital letters: small ones mark lowered notes in another tradition; write all letters in capitals, and the scale chooses the variants";
                }
                else
                {
                    _capitals = isCapital;
                }

                // The other tradition writes S and P in capitals always.
                _smallTonic |= c is 's' or 'p';
            }

            _cursor.Position += ending;
            if (char.IsAsciiDigit(_cursor.Peek(1)))
            {
                var variant = TextError.Quote(_cursor.Since(start).ToString() + _cursor.Rest[..2].ToString());
                _cursor.Position = start;
                return $"{variant} has the number of a variant; leave the number out: the scale chooses the variant";
            }

            if (_cursor.Peek(1) == '.')
            {
                _cursor.Position = start;
                return Dot(0);
            }

            for (_cursor.Position++; _cursor.Peek() is '\'' or '\u2019' or '_'; _cursor.Position++)
            {
                var isDown = _cursor.Peek() == '_';
                if (octave != 0 && isDown != octave < 0)
                {
                    _cursor.Position++;
                    var typed = TextError.Quote(_cursor.Since(start));
                    _cursor.Position = start;
                    return $"{typed} goes up and down at once; write ' for each octave up, or _ for each octave down";
                }

                octave += isDown ? -1 : 1;
            }

            return Add(letter + (7 * octave), true, start);
        }

        /// <summary>Why a dot is not read: as a mark of the octave it could be the upper or the lower one.</summary>
        /// <param name="at">Where the letter stands beside it: 1 after the dot, 0 before it.</param>
        private readonly string Dot(int at)
        {
            var rest = _cursor.Rest;
            var word = rest[(at == 1 ? 1 : rest.IndexOf('.') + 1)..];
            if (word.Length > 1 && char.IsAsciiLetterLower(word[0]) && (char.IsAsciiLetterLower(word[1]) || word[1] == '-') && EndingOf(new TextCursor(word)) == 0)
            {
                return $"'.' begins a word that is applied to the lines; put the lines in brackets: [S R G M].{TextError.Quote(word).Trim('\'')}";
            }

            var letter = char.ToUpperInvariant(at == 1 ? _cursor.Peek(1) : _cursor.Peek());
            letter = Letters.Contains(letter, StringComparison.Ordinal) ? letter : 'N';
            return $"a dot beside a letter is the upper octave for some and the lower for others; write {letter}_ for the lower octave, {letter}' for the upper";
        }

        /// <summary>Adds the note that was read; where it is refused, the cursor stands at its beginning again.</summary>
        private string? Add(int position, bool byLetter, int start)
        {
            var typed = _cursor.Since(start);
            if (_byLetter is { } before && before != byLetter)
            {
                _cursor.Position = start;
                return "letters and numbers are mixed; write all notes in letters, or all in numbers";
            }

            if (Math.Abs(position) > Pattern.WidestWritten)
            {
                _cursor.Position = start;
                return $"{TextError.Quote(typed)} lies too far away; written notes are at most {Pattern.WidestWritten} places above or below the tonic";
            }

            _byLetter = byLetter;
            _silent = false;
            _notes.Add(new WrittenNote(position, 1, 0));
            return null;
        }
    }
}
