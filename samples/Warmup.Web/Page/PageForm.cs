namespace Warmup.Web;

/// <summary>The form of a page: what can be chosen on it.</summary>
/// <param name="Path">The page's path.</param>
/// <param name="Values">The values in the order in which addresses name them, each with what an address without it means: the project's own settings.</param>
internal sealed record PageForm(string Path, ValueList<(string Name, string Usual)> Values)
{
    /// <summary>The page on which drills are made.</summary>
    public static PageForm Drill { get; } = new("/",
    [
        ("scale", "Mayamalavagowla"), ("find", ""), ("without-p", ""),
        ("from", "exercise"), ("exercise", "sarali-1"), ("written", ""), ("pattern", "ladder"), ("lines", ""), ("title", ""),
        ("tonic", "G3"), ("tuning", "equal"), ("syllables", ""), ("drone", ""), ("drone-string", ""), ("climb", ""), ("cue", ""),
        ("tempo", "60"), ("tala", ""), ("speeds", ""), ("gati", ""), ("delivery", "continuous"), ("fill", ""), ("fill-by", ""), ("breath", ""), ("breaths", ""),
        ("repeat", ""), ("count-in", ""), ("eduppu", ""),
        ("class", ""),
    ]);

    /// <summary>The page on which warm-ups are planned over days.</summary>
    public static PageForm Plan { get; } = new("/plan",
    [
        ("scales", "Mayamalavagowla, Mohanam"), ("start", ""), ("days", "28"), ("minutes", "8"),
        ("level", ""), ("tempo", ""), ("tonic", ""), ("tuning", "equal"), ("climb", ""), ("rest", "sunday"), ("no-repeat", "3"), ("least", "50"), ("seed", "1"), ("retry", "yes"),
        ("day", ""),
        ("class", ""), ("log", ""),
    ]);

    /// <summary>Whether a value tells of people, so that no address carries it unless it came in one.</summary>
    public static bool IsPrivate(string name) => name is "class" or "log";

    /// <summary>Whether a value is written lines or a rule, which may be longer than other values.</summary>
    public static bool IsLines(string name) => name is "written" or "pattern";
}
