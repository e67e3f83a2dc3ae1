using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads lines written out in svara letters or steps, alone or as a bracketed part of a pattern's text.</summary>
internal static class WrittenText
{
    private const string Letters = "SRGMPDN";

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

    private ref struct Reader(TextCursor cursor)
    {
        private readonly List<ValueList<WrittenNote>> _lines = [];
        private readonly List<WrittenNote> _notes = [];
        private bool? _byLetter;
        private bool? _capitals;
        private bool _silent;
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
                return "a written line has no notes; expected a svara letter such as S or a step such as 0";
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
            if (_cursor.TryTakeInteger(out var step) && Math.Abs((long)step) <= Pattern.WidestWritten)
            {
                return Add(step, false, start);
            }

            _cursor.Position = start + 1;
            _cursor.TakeWhile(char.IsAsciiDigit);
            var typed = TextError.Quote(_cursor.Since(start));
            _cursor.Position = start;
            return string.Create(CultureInfo.InvariantCulture, $"a step must be between {-Pattern.WidestWritten} and {Pattern.WidestWritten}, not {typed}");
        }

        private string? Letter()
        {
            var start = _cursor.Position;
            var c = _cursor.Peek();
            var letter = Letters.IndexOf(char.ToUpperInvariant(c), StringComparison.Ordinal);
            if (letter < 0)
            {
                return $"unexpected {TextError.Quote(_cursor.Rest)}; expected a svara letter S R G M P D N, a step, ',' ';' '-' '|' or '/'";
            }

            if (_capitals is { } capitals && capitals != char.IsAsciiLetterUpper(c))
            {
                return $"'{c}' mixes small and capital letters: small ones mark lowered notes in another tradition; write all letters in capitals, and the scale chooses the variants";
            }

            _capitals = char.IsAsciiLetterUpper(c);
            if (char.IsAsciiDigit(_cursor.Peek(1)))
            {
                return $"{TextError.Quote(_cursor.Rest[..2])} has the number of a variant; leave the number out: the scale chooses the variant";
            }

            var octave = 0;
            for (_cursor.Position++; _cursor.Peek() is '\'' or '\u2019' or '_'; _cursor.Position++)
            {
                octave += _cursor.Peek() == '_' ? -1 : 1;
                if (_cursor.Peek() != (octave < 0 ? '_' : '\'') && _cursor.Peek() != '\u2019')
                {
                    _cursor.Position++;
                    var typed = TextError.Quote(_cursor.Since(start));
                    _cursor.Position = start;
                    return $"{typed} goes up and down at once; write ' for each octave up, or _ for each octave down";
                }
            }

            return Add(letter + (7 * octave), true, start);
        }

        /// <summary>Adds the note that was read; where it is refused, the cursor stands at its beginning again.</summary>
        private string? Add(int position, bool byLetter, int start)
        {
            var typed = _cursor.Since(start);
            if (_byLetter is { } before && before != byLetter)
            {
                _cursor.Position = start;
                return "letters and steps are mixed; write all notes in letters, or all in steps";
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
