namespace Warmup.Takes;

/// <summary>How far a note may be off before it is marked. The project's own settings, with the literature that they lean on.</summary>
public static class TakeMarks
{
    /// <summary>
    /// Cents within which no mark is made: about the just noticeable difference of an interval (Hill and Summers 2007, read in abstract).
    /// </summary>
    public static int NoMark => 10;

    /// <summary>
    /// Cents within which a note counts as in tune: listeners' boundary (Larrouy-Maestri 2018, read in abstract); professionals still judged
    /// intervals right that were 20 to 25 cents off (Vurma and Ross 2006, read in abstract).
    /// </summary>
    public static int InTune => 25;

    /// <summary>Cents from which on another note is heard, where it is also the nearer one (the project's own setting).</summary>
    public static int Another => 80;

    /// <summary>The median distance of a note in ordinary singing, in cents (Mauch, Frieler and Dixon 2014, read in abstract).</summary>
    public static int UsualCents => 19;

    /// <summary>The usual drift in 50 s of unaccompanied singing, in cents (Mauch, Frieler and Dixon 2014, read in abstract).</summary>
    public static int UsualDrift => 11;

    /// <summary>What is said of a note: nothing where it lies within <see cref="NoMark"/>.</summary>
    /// <param name="note">The note.</param>
    public static string Words(TakeNote note)
    {
        ArgumentNullException.ThrowIfNull(note);
        return note.Status switch
        {
            NoteStatus.LeftOut => "left out",
            NoteStatus.Unsure => $"unsure: {note.Why}",
            NoteStatus.OtherNote => $"another note: {note.SungTone}",
            _ when Math.Abs(note.Cents ?? 0) <= NoMark => string.Empty,
            _ when Math.Abs(note.Cents ?? 0) <= InTune => "in tune",
            _ => note.Cents > 0 ? "high" : "low",
        };
    }
}
