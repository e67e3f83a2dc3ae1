using Warmup.Sheets;

namespace Warmup.Drawing;

/// <summary>Puts the student's sheet on pages of A4, upright.</summary>
internal sealed class SheetDrawing(Score score, SungLetters letters, TextShaper shaper)
{
    private const double Label = 52;

    private readonly Flow _flow = new(shaper);

    public PageSet Draw(CancellationToken cancellation)
    {
        _flow.Paragraph("title", score.Title, 19, most: 4);
        foreach (var section in score.Sections)
        {
            cancellation.ThrowIfCancellationRequested();
            _flow.Need(180);
            _flow.Y += 6;
            if (score.Sections.Count > 1)
            {
                _flow.Add(new StrokeMark("section", _flow.Left, _flow.Y, _flow.Right, _flow.Y, 1, Flow.Ink));
                _flow.Y += 5;
                _flow.Paragraph("section-title", section.Title, 13.5, most: 3);
            }

            Head(section);
            var breaths = new Dictionary<int, Breath>(section.Breaths.Count);
            foreach (var breath in section.Breaths)
            {
                breaths[breath.AfterNote] = breath;
            }

            var runs = SpeedRun.Of(section);
            foreach (var run in runs)
            {
                cancellation.ThrowIfCancellationRequested();
                if (runs.Count > 1)
                {
                    _flow.Need(64);
                    _flow.Y += 4;
                    _flow.Paragraph("run", SheetHeader.Of(section, run), 9, Flow.Soft);
                }

                new SheetLines(_flow, section, run, letters, breaths).Draw(cancellation);
            }
        }

        Close();
        _flow.Feet(score.Title, TextSheetFormat.NotTheRaga);
        return new PageSet(score.Title, $"A sheet to sing from: the lines in svara letters under the aksharas. {TextSheetFormat.NotTheRaga}", _flow.Pages);
    }

    private void Head(Section section)
    {
        Row("Scale", section.Scale.Name);
        Tones("up", section.Scale.Ascent);
        Tones("down", section.Scale.Descent);
        foreach (var (label, text) in SheetHeader.Rows(section))
        {
            Row(label, text);
        }

        _flow.Y += 8;
    }

    private void Row(string label, string text)
    {
        var lines = _flow.Broken(text, 9.5, _flow.Right - _flow.Left - Label, 12);
        for (var l = 0; l < lines.Count; l++)
        {
            _flow.Need(14);
            _flow.Y += 13.5;
            if (l == 0)
            {
                _flow.Put("label", _flow.Left, _flow.Y - 3, label, 8.5, Flow.Soft);
            }

            _flow.Put("head", _flow.Left + Label, _flow.Y - 3, lines[l], 9.5);
        }
    }

    private void Tones(string label, ValueList<ScaleTone> tones)
    {
        const double size = 12.5;
        _flow.Need(22);
        _flow.Y += 21;
        _flow.Put("label", _flow.Left + 8, _flow.Y - 6, label, 8.5, Flow.Soft);
        var x = _flow.Left + Label;
        foreach (var tone in tones)
        {
            var width = shaper.Width(letters.Of(tone), size) + shaper.Width(letters.VariantOf(tone), size * 0.62);
            if (x + width > _flow.Right)
            {
                _flow.Need(22);
                _flow.Y += 21;
                x = _flow.Left + Label;
            }

            x += _flow.Tone($"scale-{label}", x, _flow.Y - 6, tone, letters, size, variant: true) + 13;
        }
    }

    /// <summary>The signs, the remarks and the cautions below the last line.</summary>
    private void Close()
    {
        _flow.Y += 10;
        var fast = ((IEnumerable<Section>)score.Sections).Any(s => ((IEnumerable<ScoreLine>)s.Lines).Any(l => l.Speed.Kalam > 1));
        var answers = ((IEnumerable<Section>)score.Sections).Any(s => ((IEnumerable<ScoreLine>)s.Lines).Any(l => l.Answer.Sign > 0));
        _flow.Paragraph(
            "legend",
            $"Signs:  {SvaraCells.Hold} hold one more unit;  {SvaraCells.Breath} (raised) breathe;  {SvaraCells.Silence} one unit of silence;  a thin line ends an anga, a double line an "
            + "avartana;  a dot above a letter is the upper octave, a dot below the lower one; small numbers over the letters count the aksharas, those before or under them the lines"
            + (fast ? ";  one line over the letters of an akshara is the second speed, two the third, three the fourth" : string.Empty)
            + (answers ? ";  in a grey field the class answers." : "."),
            8,
            Flow.Soft);
        foreach (var finding in score.Findings)
        {
            _flow.Paragraph("finding", $"Note: {finding.Describe()}.", 8.5);
        }

        // The cautions stay together where a page can hold them.
        _flow.Need(130);
        _flow.Y += 6;
        foreach (var caution in Cautions.All)
        {
            _flow.Paragraph("caution", $"{caution.Text} ({caution.Source})", 8);
        }
    }
}
