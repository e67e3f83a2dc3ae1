using System.Diagnostics.CodeAnalysis;
using System.Globalization;

namespace Warmup;

/// <summary>Reads lines written out in svara letters or steps, alone or as a bracketed part of a pattern's text.</summary>
internal static class WrittenText
{
    private const string Letters = "SRGMPDN";

    /// <summary>Reads the written lines between two positions of a text.</summary>
    public static bool TryRead(string text, int from, int to, [NotNullWhen(true)] out Pattern? pattern, [NotNullWhen(false)] out TextError? error)
    {
        pattern = null;
        if (to - from > PatternText.LongestText)
        {
            error = TextError.At(
                from + PatternText.LongestText + 1,
                string.Create(CultureInfo.InvariantCulture, $"written lines must be at most {PatternText.LongestText} characters long, not {to - from}"));
            return false;
        }

        var reader = new Reader(text, from, to);
        error = reader.Read();
        pattern = error is null ? reader.ToPattern() : null;
        return error is null;
    }

    private sealed class Reader(string text, int from, int to)
    {
        private readonly List<ValueList<WrittenNote>> _lines = [];
        private readonly List<WrittenNote> _notes = [];
        private bool? _byLetter;
        private bool? _capitals;
        private bool _silent;
        private int _at = from;

        public WrittenPattern ToPattern() => new WrittenPattern(_lines.ToValueList(), _byLetter == true);

        public TextError? Read()
        {
            while (_at < to)
            {
                var c = text[_at];
                if (char.IsWhiteSpace(c) || c == '|')
                {
                    _at++;
                    continue;
                }

                var fault = c switch
                {
                    '/' => EndLine(),
                    ',' => Longer(1),
                    ';' => Longer(2),
                    '-' when _at + 1 == to || !char.IsAsciiDigit(text[_at + 1]) => Silence(),
                    '-' or (>= '0' and <= '9') => Step(),
                    _ => Letter(),
                };
                if (fault is not null)
                {
                    return TextError.At(_at + 1, fault);
                }
            }

            return EndLine() is { } empty ? TextError.At(to + 1, empty) : null;
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
            _at++;
            return null;
        }

        private string? Longer(int units)
        {
            if (_notes.Count == 0)
            {
                return $"'{text[_at]}' holds the note before it, and the line has no note yet; begin the line with a note";
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
            _at++;
            return null;
        }

        private string? Step()
        {
            var end = _at + 1;
            while (end < to && char.IsAsciiDigit(text[end]))
            {
                end++;
            }

            if (!int.TryParse(text.AsSpan(_at, end - _at), NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out var step)
                || Math.Abs((long)step) > Pattern.WidestWritten)
            {
                return string.Create(
                    CultureInfo.InvariantCulture, $"a step must be between {-Pattern.WidestWritten} and {Pattern.WidestWritten}, not {TextError.Quote(text.AsSpan(_at, end - _at))}");
            }

            return Add(step, false, end);
        }

        private string? Letter()
        {
            var c = text[_at];
            var letter = Letters.IndexOf(char.ToUpperInvariant(c), StringComparison.Ordinal);
            if (letter < 0)
            {
                return $"unexpected {TextError.Quote(text.AsSpan(_at, to - _at))}; expected a svara letter S R G M P D N, a step, ',' ';' '-' '|' or '/'";
            }

            if (_capitals is { } capitals && capitals != char.IsAsciiLetterUpper(c))
            {
                return $"'{c}' mixes small and capital letters: small ones mark lowered notes in another tradition; write all letters in capitals, and the scale chooses the variants";
            }

            _capitals = char.IsAsciiLetterUpper(c);
            var end = _at + 1;
            if (end < to && char.IsAsciiDigit(text[end]))
            {
                return $"{TextError.Quote(text.AsSpan(_at, 2))} has the number of a variant; leave the number out: the scale chooses the variant";
            }

            var octave = 0;
            for (; end < to && text[end] is '\'' or '\u2019' or '_'; end++)
            {
                octave += text[end] == '_' ? -1 : 1;
                if (text[end] != (octave < 0 ? '_' : '\'') && text[end] != '\u2019')
                {
                    return $"{TextError.Quote(text.AsSpan(_at, end + 1 - _at))} goes up and down at once; write ' for each octave up, or _ for each octave down";
                }
            }

            return Add(letter + (7 * octave), true, end);
        }

        private string? Add(int position, bool byLetter, int end)
        {
            if (_byLetter is { } before && before != byLetter)
            {
                return "letters and steps are mixed; write all notes in letters, or all in steps";
            }

            if (Math.Abs(position) > Pattern.WidestWritten)
            {
                return $"{TextError.Quote(text.AsSpan(_at, end - _at))} lies too far away; written notes are at most {Pattern.WidestWritten} places above or below the tonic";
            }

            _byLetter = byLetter;
            _silent = false;
            _notes.Add(new WrittenNote(position, 1, 0));
            _at = end;
            return null;
        }
    }
}
