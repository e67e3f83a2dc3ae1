using System.Globalization;

namespace Warmup.Reading;

/// <summary>Chooses the part of a piece and reads its sections.</summary>
internal static class PieceReading
{
    public static ReadMusic Of(RawPiece piece, ReadingOptions options, CancellationToken cancellation)
    {
        var sung = piece.Parts.Where(p => p.Notes.Count > 0).ToList();
        if (sung.Count == 0)
        {
            throw new ReadingException("the file has no notes with a pitch");
        }

        var part = Chosen(sung, options.Part);
        if (part.Notes.Count > ReadingLimits.NotesOfPart)
        {
            throw new ReadingException(
                string.Create(CultureInfo.InvariantCulture, $"the part has {part.Notes.Count} notes; a drill has at most {ReadingLimits.NotesOfPart}: name another part, or divide the file"),
                new PiecePlace(PlaceKind.File, 0, default, part.Name));
        }

        foreach (var other in sung)
        {
            if (other != part && !other.IsDrone)
            {
                piece.Remarks.Add(
                    RemarkKind.FurtherPart,
                    string.Create(CultureInfo.InvariantCulture, $"a part of {other.Notes.Count} notes was left out; name it to read it"),
                    new PiecePlace(PlaceKind.File, 0, default, other.Name));
            }
        }

        if (part.Stretches.Count > 0)
        {
            piece.Unroll(part.Stretches);
        }

        var raw = RawSection.Of(piece, part);
        var sections = new List<ReadSection>();
        foreach (var section in raw)
        {
            cancellation.ThrowIfCancellationRequested();
            sections.Add(new SectionReading(piece, part, section, options, raw.Count).Read());
        }

        return new ReadMusic
        {
            Format = piece.Format,
            Title = piece.Title,
            Part = part.Name,
            Parts = sung.Select(p => p.Name).ToValueList(),
            Sections = sections.ToValueList(),
            Remarks = piece.Remarks.ToValueList(),
        };
    }

    private static RawPart Chosen(List<RawPart> parts, string? wanted)
    {
        if (wanted is null)
        {
            // The first of those with the most syllables.
            return parts.Where(p => !p.IsDrone).DefaultIfEmpty(parts[0]).MaxBy(p => p.Syllables)!;
        }

        return parts.Find(p => p.Name.Equals(wanted, StringComparison.OrdinalIgnoreCase))
            ?? (int.TryParse(wanted, NumberStyles.None, CultureInfo.InvariantCulture, out var number) && number >= 1 && number <= parts.Count ? parts[number - 1] : null)
            ?? throw new ReadingException($"there is no part {TextError.Quote(wanted)}; the parts are {string.Join(", ", parts.Take(20).Select((p, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1} {TextError.Quote(p.Name)}")))}");
    }
}
