namespace Warmup.Voices;

/// <summary>How a teacher finds a singer's comfortable ends and sustained tone, and when to measure anew. <see cref="Cautions.All"/> goes with it.</summary>
public static class MeasuringSteps
{
    private const string Practice = "common practice";
    private const string Own = "the project's own setting";

    /// <summary>The steps in their order; those of one part follow each other.</summary>
    public static ValueList<MeasuringStep> All { get; } =
    [
        Before("Measure only a voice that is well: not hoarse, not ill, not tired from a long day. Anybody may say no, or stop, without giving a reason.", "NIDCD, Taking Care of Your Voice; common practice"),
        Before(
            "Warm up for five to ten minutes in the middle of the voice, with five-note scales up and down.",
            "Gish and others 2012, J Voice 26(1):e1-e10: 117 singers; what most of them do, not a proof that it is needed"),
        Before(
            "Give everybody the same task in the same words, and do not coach in between.",
            "Revista CEFAC 2018, 20(2):201: 60 women; another instruction changed how long they held a tone"),
        Ends("Begin where the singer speaks. Sing five notes of a scale up and down on \"a\", neither loud nor soft, and let the singer repeat them.", Practice),
        Ends(
            "Go on a semitone higher each time. Stop at the first sign of effort: the tone turns thin, breathy or pressed, the chin or the shoulders rise, or the singer says so. Do not help the next note out by singing louder.",
            Practice),
        Ends("The highest note that was easy twice in a row is the upper end. Wait a minute, and go down from the middle in the same way: the sign is a creak, a breath instead of a tone, or a lowered chin.", Practice),
        Ends("In doubt, write down the narrower end. Note the pitch that sounds, with its octave: C4 is middle C. Men who sing \"the same\" as women mostly sound an octave lower.", "the project's own rule"),
        Ends(
            "Never look for the highest or lowest note that is possible at all. If you know it, write it down as the full range. It tells little: it grows with every trial.",
            "Ma and Li, J Voice: 30 girls of 6 to 11 years reached farther in ten trials than in fewer; common practice"),
        Tone(
            "Take a comfortable note in the middle, on \"a\", neither loud nor soft, and the same each time: pitch, loudness and vowel all change how long a tone lasts.",
            "a study of 40 adults with 14 tasks, read as an abstract: Effects of frequency, intensity and vowel-type variations on maximum phonation time"),
        Tone(
            "Breathe in well, without raising the shoulders, and sing as long as it stays easy. Stop the watch when the tone shakes or is pressed, not when the air is gone.",
            "the project's own rule; studies ask for the longest tone that is possible, so these numbers are rather shorter than theirs"),
        Tone(
            "Take three tones with a minute of rest between them, and write down all three; the longest counts.",
            "Maslan and others 2011, J Voice 25:709-713: 21.77, 21.67 and 22.80 s on average in three trials; the rest is the project's own setting"),
        Tone(
            "With children the value may still grow after three tones. Go on another day, not longer, and compare no child with a mean.",
            "Finnegan 1984, J Commun Disord 17:309-317: up to 14 trials; his warning against comparing with means"),
        Tone("It is no contest: nobody else listens, and nobody is praised for a long tone. Stop at once when somebody feels dizzy or short of breath.", "general medical advice, from memory"),
        Anew(
            "Measure children's and changing voices after 90 days, and earlier when a voice sounds different.",
            "90 days is the project's own setting; that such voices are to be checked regularly is common practice"),
        Anew("Measure other voices after an illness or a long break, when a drill that fitted has become hard, and otherwise once a year.", Own),
        Anew(
            "From one day to another a semitone up or down says nothing, and two may not. Take a narrower range at once, and a wider one when a second day confirms it.",
            "Brown, Morris and Murry 1996, J Voice 10:299-305: spoken pitch varied by about a semitone between sessions, in some people by two; the rule is the project's own"),
        Anew(
            "Do not measure, but ask a doctor, when high notes are lost, the throat is sore or strained, or the voice is hoarse for more than two to three weeks.",
            "NIDCD, Taking Care of Your Voice; NIDCD fact sheet Hoarseness"),
    ];

    private static MeasuringStep Before(string text, string source) => new("Before you begin", text, source);

    private static MeasuringStep Ends(string text, string source) => new("The comfortable ends", text, source);

    private static MeasuringStep Tone(string text, string source) => new("The sustained tone", text, source);

    private static MeasuringStep Anew(string text, string source) => new("When to measure anew", text, source);
}
