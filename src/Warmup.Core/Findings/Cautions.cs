namespace Warmup;

/// <summary>A caution that goes with everything a voice is given to sing. Immutable.</summary>
public sealed class Caution
{
    internal Caution(string text, string shorter, string source) => (Text, Brief, Source) = (text, shorter, source);

    /// <summary>The caution; whole sentences.</summary>
    public string Text { get; }

    /// <summary>The same in few words, for a sheet of paper; whole sentences.</summary>
    public string Brief { get; }

    /// <summary>Where it comes from.</summary>
    public string Source { get; }

    /// <summary>The caution, cut to 200 characters.</summary>
    public override string ToString() => OneLine.Of(Text);
}

/// <summary>The usual cautions. They are no diagnosis, and no warm-up is known to prevent injury.</summary>
public static class Cautions
{
    /// <summary>The cautions, the most urgent first.</summary>
    public static ValueList<Caution> All { get; } =
    [
        new("Stop at once if singing hurts, burns, tickles or makes you cough, or if notes go missing or grow harder.",
            "Stop at once if singing hurts, burns, tickles or makes you cough, or if notes go missing.",
            "common practice of voice teaching; stated from memory of voice handbooks"),
        new("Do not sing when you are hoarse or ill.", "Do not sing when hoarse or ill.", "NIDCD, Taking Care of Your Voice"),
        new("See a doctor if you are hoarse for more than two to three weeks.", "Hoarse for more than two to three weeks: see a doctor.", "NIDCD fact sheet Hoarseness; Stachler et al. 2018, Otolaryngol Head Neck Surg 158(1S)"),
        new("See a doctor at once if you cough blood, have trouble swallowing or breathing, feel a lump in the neck or pain when speaking or swallowing, or lose your voice for days.",
            "See one at once if you cough blood, swallow or breathe with trouble, feel a lump in the neck or pain in speaking or swallowing, or lose your voice for days.",
            "NIDCD fact sheet Hoarseness"),
        new("Stop if you feel dizzy or short of breath, and never make a contest of holding the breath. With asthma, a heart condition or in pregnancy ask a doctor first.",
            "Stop if dizzy or short of breath; with asthma, a heart condition or in pregnancy ask a doctor first.",
            "general medical advice, from memory"),
        new("Children's and changing voices need particular care and fresh measurements.", "Children's and changing voices need particular care.", "common practice"),
        new("The numbers are a help for planning: the teacher's ear overrules them.", "The teacher's ear overrules the numbers.", "the project's own rule"),
    ];

    /// <summary>For slides from note to note.</summary>
    internal static Caution Glide { get; } = new(
        "Slides and sirens: softly and without pressing, from and to notes that are comfortable, and lightly over the place where the voice changes register.",
        "Slides: softly, without pressing, between comfortable notes.",
        "common practice of choirs and voice teachers");

    /// <summary>For notes that swell and fade.</summary>
    internal static Caution Swell { get; } = new(
        "Swell and fade (messa di voce): for singers who hold an even note easily, in the middle of the voice, never as loud or as soft as you can; stay on pitch, since it tends to rise with the loudness.",
        "Swells: in the middle of the voice, never as loud or soft as you can.",
        "Pulte 2005, The Messa di Voce and its Effectiveness as a Training Exercise for the Young Singer (abstract read); common practice");

    /// <summary>For short notes.</summary>
    internal static Caution Staccato { get; } = new(
        "Staccato: light, from the breath; stop if the notes begin with a knock in the throat.", "Staccato: light; stop at a knock in the throat.", "common practice of voice teaching");

    /// <summary>For a lip trill or a straw.</summary>
    public static Caution HalfClosed { get; } = new(
        "Lip trill and straw: let the breath flow and do not press; how hard lips or straw push back differs much between people. Stop if you feel dizzy or your ears feel full, and use your own clean straw.",
        "Lip trill and straw: let the breath flow; stop if dizzy or your ears feel full; use your own straw.",
        "Maxfield et al. 2015, Logoped Phoniatr Vocol (pressures in 13 such sounds, 20 people; abstract read); otherwise common practice");
}
