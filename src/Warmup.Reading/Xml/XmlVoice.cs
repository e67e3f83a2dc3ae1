namespace Warmup.Reading;

/// <summary>The notes of one voice on one staff; tied notes are one.</summary>
internal sealed class XmlVoice(string number, int staff)
{
    private bool _isTied;
    private bool _slides;
    private bool _slurs;

    public string Number => number;

    public int Staff => staff;

    public List<RawNote> Notes { get; } = [];

    public void Rest() => _isTied = false;

    public void Close() => _isTied = false;

    /// <summary>Adds a note, or lengthens the one that is tied to it. Gives what had to be mended.</summary>
    public string? Sing(XmlNote note, Rational onset, Rational length, int chromatic)
    {
        var midi = Math.Clamp(note.Midi + chromatic, 0, 127);
        if (_isTied && note.EndsTie && Notes[^1].Midi == midi && Notes[^1].End == onset)
        {
            var longer = Notes[^1];
            longer.Length += length;
            longer.HasBreath |= note.HasBreath;
            longer.HasFermata |= note.HasFermata;
            longer.Joining = note.BeginsSlide ? Joining.Glide : longer.Joining;
            Notes[^1] = longer;
            (_isTied, _slides) = (note.BeginsTie, note.BeginsSlide);
            _slurs = (_slurs || note.BeginsSlur) && !note.EndsSlur;
            return null;
        }

        string? fault = null;
        if (Notes.Count > 0 && Notes[^1].Onset >= onset)
        {
            // A voice that goes back over its own notes is two; of notes at once the highest stays, as in a chord.
            if (Notes[^1].Onset == onset)
            {
                Raise(note, chromatic);
            }

            return "a voice goes back over its own notes: what it sings there was left out";
        }

        if (Notes.Count > 0 && Notes[^1].End > onset)
        {
            fault = "notes of one voice overlap: the first one ends where the next begins";
            Notes[^1] = Notes[^1] with { Length = onset - Notes[^1].Onset };
        }

        if (_slides && !note.EndsSlide && Notes.Count > 0)
        {
            Notes[^1] = Notes[^1] with { Joining = Joining.Plain };
        }

        Notes.Add(new RawNote
        {
            Onset = onset,
            Length = length,
            Midi = midi,
            Name = chromatic == 0 ? note.Name : null,
            Syllable = note.Syllable ?? (_slurs ? string.Empty : null),
            HasBreath = note.HasBreath,
            HasFermata = note.HasFermata,
            Joining = note.BeginsSlide ? Joining.Glide : note.IsShort ? Joining.Staccato : Joining.Plain,
        });
        (_isTied, _slides) = (note.BeginsTie, note.BeginsSlide);
        _slurs = (_slurs || note.BeginsSlur) && !note.EndsSlur;
        return fault;
    }

    /// <summary>Takes a further note of a chord where it is higher.</summary>
    public void Raise(XmlNote note, int chromatic)
    {
        var midi = Math.Clamp(note.Midi + chromatic, 0, 127);
        if (Notes.Count > 0 && midi > Notes[^1].Midi)
        {
            Notes[^1] = Notes[^1] with { Midi = midi, Name = chromatic == 0 ? note.Name : null, Syllable = Notes[^1].Syllable ?? note.Syllable };
            _isTied = note.BeginsTie;
        }
    }
}
