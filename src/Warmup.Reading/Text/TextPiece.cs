using System.Globalization;
using System.Text;

namespace Warmup.Reading;

/// <summary>Reads lines of svaras, solfa or scale numbers as people type them, with what else such a text says.</summary>
internal sealed class TextPiece
{
    private const int LongestLine = 10_000;

    private readonly RemarkCollector _remarks = new();
    private readonly List<(Pattern Lines, int Number)> _lines = [];
    private readonly List<Degree> _variants = [];
    private readonly ReadingOptions _options;
    private Scale? _scale;
    private Tonic? _tonic;
    private Meter? _meter;
    private Rational? _tempo;
    private Speed? _speed;
    private string _title = string.Empty;
    private bool _isSolfa;

    private TextPiece(ReadingOptions options) => _options = options;

    public static ReadMusic Read(ReadOnlySpan<byte> file, ReadingOptions options, CancellationToken cancellation)
    {
        var text = new TextPiece(options);
        var number = 0;
        foreach (var line in Decoded(file).Split('\n'))
        {
            cancellation.ThrowIfCancellationRequested();
            number++;
            text.Line(line.TrimEnd('\r'), number);
        }

        return text.ToMusic(cancellation);
    }

    /// <summary>UTF-8 or UTF-16 by their marks; what is no UTF-8 is an error with its place.</summary>
    private static string Decoded(ReadOnlySpan<byte> file)
    {
        if (file.StartsWith((ReadOnlySpan<byte>)[0xFF, 0xFE]))
        {
            return Encoding.Unicode.GetString(file[2..]);
        }

        if (file.StartsWith((ReadOnlySpan<byte>)[0xFE, 0xFF]))
        {
            return Encoding.BigEndianUnicode.GetString(file[2..]);
        }

        file = file.StartsWith((ReadOnlySpan<byte>)[0xEF, 0xBB, 0xBF]) ? file[3..] : file;
        if (!System.Text.Unicode.Utf8.IsValid(file))
        {
            var line = 1;
            while (file.IndexOf((byte)'\n') is var end and >= 0 && System.Text.Unicode.Utf8.IsValid(file[..end]))
            {
                file = file[(end + 1)..];
                line++;
            }

            throw new ReadingException("the text is not UTF-8; save it as UTF-8", new PiecePlace(PlaceKind.TextLine, line));
        }

        return Encoding.UTF8.GetString(file);
    }

    private void Line(string line, int number)
    {
        if (line.Length > LongestLine)
        {
            throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"the line has {line.Length} characters; the most is {LongestLine}"), new PiecePlace(PlaceKind.TextLine, number));
        }

        var start = Start(line);
        if (start == line.Length || Said(line[start..], number))
        {
            return;
        }

        var mail = MailText.Of(line, start);
        if (!LooksLikeNotes(mail.Text))
        {
            Words(line[start..], number);
            return;
        }

        try
        {
            _lines.Add((Pattern.Written(mail.Text), number));
        }
        catch (WarmupFormatException fault)
        {
            throw new ReadingException(fault.Error.Message, new PiecePlace(PlaceKind.TextLine, number, mail.ColumnOf(fault.Error.Column - 1)), fault);
        }

        _variants.AddRange(mail.Variants);
        _isSolfa |= mail.Text.Contains("do", StringComparison.OrdinalIgnoreCase) || mail.Text.Contains("mi", StringComparison.OrdinalIgnoreCase);
        if (_lines.Count > LongestLine)
        {
            throw new ReadingException(string.Create(CultureInfo.InvariantCulture, $"there are more than {LongestLine} lines"), new PiecePlace(PlaceKind.TextLine, number));
        }
    }

    /// <summary>Where the notes of a line begin: after white space, the marks of a quoted mail, and a number such as <c>3.</c> or <c>3)</c>.</summary>
    private static int Start(string line)
    {
        var at = 0;
        while (at < line.Length && (char.IsWhiteSpace(line[at]) || line[at] is '>' or '*' or '\u2022'))
        {
            at++;
        }

        var digits = at;
        while (digits < line.Length && char.IsAsciiDigit(line[digits]))
        {
            digits++;
        }

        if (digits > at && digits + 1 < line.Length && line[digits] is '.' or ')' && char.IsWhiteSpace(line[digits + 1]))
        {
            at = digits + 1;
            while (at < line.Length && char.IsWhiteSpace(line[at]))
            {
                at++;
            }
        }

        return at;
    }

    /// <summary>Reads <c>Scale: Mohanam</c>, <c>Tonic: G3</c>, <c>Tala: adi</c>, <c>Tempo: 60</c>, <c>Title: ...</c>.</summary>
    private bool Said(string line, int number)
    {
        var colon = line.IndexOf(':', StringComparison.Ordinal);
        if (colon is <= 0 or > 20)
        {
            return false;
        }

        var value = line[(colon + 1)..].Trim();
        TextError? error = null;
        switch (line[..colon].Trim().ToUpperInvariant())
        {
            case "SCALE" or "RAGA" or "RAAG" or "RAGAM":
                _ = Catalogue.Default.TryRead(value, out _scale, out error);
                break;
            case "TONIC" or "SRUTI" or "SHRUTI" or "KEY" or "DO":
                _ = Tonic.TryParse(value, out _tonic, out error);
                break;
            case "TALA" or "TALAM" or "TAAL" or "METER" or "TIME":
                _ = Meter.TryParse(value, out _meter, out error);
                break;
            case "TEMPO":
                if (Rational.TryParse(value, out var tempo, out error))
                {
                    _tempo = tempo >= Tempo.Slowest && tempo <= Tempo.Fastest
                        ? tempo
                        : throw new ReadingException($"the tempo must be from {Tempo.Slowest} to {Tempo.Fastest}, not {tempo}", new PiecePlace(PlaceKind.TextLine, number));
                }

                break;
            case "SPEED" or "KALAM" or "KALA":
                _speed = Speed.TryParse(value, out var speed, out error) ? speed : null;
                break;
            case "GATI" or "NADAI" or "NADE":
                _speed = Speed.TryParse(value, out var named, out _) || Speed.TryParse($"{value} gati", out named, out error) ? named : null;
                break;
            case "TITLE" or "NAME":
                _title = PlainText.Of(value);
                break;
            default:
                return false;
        }

        return error is null ? true : throw new ReadingException(error.Message, new PiecePlace(PlaceKind.TextLine, number, line.Length - value.Length + error.Column), null);
    }

    /// <summary>Whether half of a line's words or more are notes; otherwise it says something else.</summary>
    private static bool LooksLikeNotes(string text)
    {
        var (notes, words) = (0, 0);
        foreach (var word in text.Split((char[])[' ', '\t', '|', '/', ',', ';', '-', '(', ')'], StringSplitOptions.RemoveEmptyEntries))
        {
            words++;
            notes += IsNotes(word) ? 1 : 0;
        }

        return notes > 0 && 2 * notes >= words;
    }

    /// <summary>Whether a word is a note, or several letters or names written together: <c>SRGM</c>, <c>sarigama</c>.</summary>
    private static bool IsNotes(string word)
    {
        var plain = word.TrimStart('.').Replace("'", string.Empty, StringComparison.Ordinal).Replace("_", string.Empty, StringComparison.Ordinal);
        return plain.Length > 0
            && (plain.All(char.IsAsciiDigit) || Pattern.TryParse($"[{plain}]", out _, out _)
                || (plain.Length <= 16 && plain.All(c => "SRGMPDN".Contains(c, StringComparison.Ordinal))));
    }

    private void Words(string words, int number)
    {
        if (_lines.Count == 0 && _title.Length == 0)
        {
            _title = PlainText.Of(words);
            return;
        }

        _remarks.Add(RemarkKind.Words, $"{TextError.Quote(words)} was left out: these are no notes", new PiecePlace(PlaceKind.TextLine, number));
    }

    private ReadMusic ToMusic(CancellationToken cancellation)
    {
        if (_lines.Count == 0)
        {
            throw new ReadingException("the text has no line of notes; write svaras (S R G M), solfa (do re mi) or scale numbers (1 2 3)");
        }

        var tonic = _options.Tonic ?? _tonic;
        var scale = _options.Scale ?? _scale;
        var proposals = default(ValueList<TonicProposal>);
        if (tonic is null || scale is null)
        {
            proposals = TextScales.Propose(scale, tonic, _variants, _isSolfa);
            tonic ??= proposals[0].Tonic;
            scale ??= proposals[0].Scale;
        }

        var lines = new List<Line>();
        var notes = 0;
        foreach (var (pattern, number) in _lines)
        {
            cancellation.ThrowIfCancellationRequested();
            try
            {
                var expansion = pattern.Expand(scale, cancellation);
                lines.AddRange(expansion.Lines);
                notes += expansion.NoteCount;
            }
            catch (PatternException refused)
            {
                throw new ReadingException(refused.Finding.Describe(), new PiecePlace(PlaceKind.TextLine, number), refused);
            }

            if (notes > ReadingLimits.NotesOfPart)
            {
                throw new ReadingException(
                    string.Create(CultureInfo.InvariantCulture, $"there are more than {ReadingLimits.NotesOfPart} notes up to here, the most that a drill has"), new PiecePlace(PlaceKind.TextLine, number));
            }
        }

        return new ReadMusic
        {
            Format = "text",
            Title = _title,
            Sections =
            [
                new ReadSection(scale, tonic)
                {
                    Number = 1,
                    Title = _title,
                    Proposals = proposals,
                    Meter = _meter ?? Meter.Free,
                    Tempo = _tempo ?? Tempo.Default,
                    Speed = _speed ?? Speed.First,
                    Lines = lines.ToValueList(),
                    LinesFoundBy = LinesFoundBy.TextLines,
                },
            ],
            Remarks = _remarks.ToValueList(),
        };
    }
}
