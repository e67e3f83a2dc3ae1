using FsCheck;
using FsCheck.Fluent;

namespace Warmup.Testing;

/// <summary>Generators of singers.</summary>
public static class SingerGenerators
{
    // Invented aliases; nobody's name.
    private static readonly string[] Aliases = ["Reed", "Wren", "Lark", "Finch", "Rook", "Dove"];

    /// <summary>A singer with a range of one to three octaves and a sustained tone of 4 to 40 seconds.</summary>
    public static Gen<Singer> Singers => from alias in Gen.Elements(Aliases)
                                         from low in Gen.Choose(36, 60)
                                         from width in Gen.Choose(12, 36)
                                         from seconds in Gen.Choose(4, 40)
                                         from experience in Gen.Elements(Experience.Beginner, Experience.Intermediate, Experience.Advanced)
                                         select new Singer(alias, NoteName.FromMidi(low), NoteName.FromMidi(low + width), seconds, experience);
}
