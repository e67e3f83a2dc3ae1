namespace Warmup.Plans;

/// <summary>What a drill does in a warm-up.</summary>
public enum DrillRole
{
    /// <summary>It begins: few notes around the middle of the octave, in the first speed.</summary>
    Opening,

    /// <summary>It widens the span and raises the level.</summary>
    Middle,

    /// <summary>It ends: lines that fall to the tonic, in the first speed.</summary>
    Descent,
}

/// <summary>The words of <see cref="DrillRole"/> in files and reports.</summary>
internal static class DrillRoleWords
{
    public static string ToWord(this DrillRole role) => role switch { DrillRole.Opening => "opening", DrillRole.Middle => "middle", _ => "descent" };

    public static bool TryParse(string? word, out DrillRole role)
    {
        role = word switch { "middle" => DrillRole.Middle, "descent" => DrillRole.Descent, _ => DrillRole.Opening };
        return role != DrillRole.Opening || word == "opening";
    }
}
