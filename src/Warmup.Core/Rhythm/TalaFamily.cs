namespace Warmup;

/// <summary>The seven talas; with the five jatis of their laghu they are thirty-five.</summary>
public enum TalaFamily
{
    /// <summary>Laghu, drutam, laghu, laghu; chatusra-jati unless another is named.</summary>
    Dhruva,

    /// <summary>Laghu, drutam, laghu; chatusra-jati unless another is named.</summary>
    Matya,

    /// <summary>Drutam, laghu; chatusra-jati unless another is named.</summary>
    Rupaka,

    /// <summary>Laghu, anudrutam, drutam; misra-jati unless another is named.</summary>
    Jhampa,

    /// <summary>Laghu, drutam, drutam; tisra-jati unless another is named. Chatusra-jati triputa is Adi.</summary>
    Triputa,

    /// <summary>Laghu, laghu, drutam, drutam; khanda-jati unless another is named.</summary>
    Ata,

    /// <summary>One laghu; chatusra-jati unless another is named.</summary>
    Eka,
}

/// <summary>The rule of the seven talas (common practice).</summary>
internal static class TalaFamilies
{
    // The signs: I laghu, O drutam, U anudrutam; then the jati that the bare name stands for.
    private static readonly (string Signs, Jati Usual)[] Rules =
    [
        ("IOII", Jati.Chatusra), ("IOI", Jati.Chatusra), ("OI", Jati.Chatusra), ("IUO", Jati.Misra), ("IOO", Jati.Tisra), ("IIOO", Jati.Khanda),
        ("I", Jati.Chatusra),
    ];

    /// <summary>The seven talas in their usual order.</summary>
    public static ValueList<TalaFamily> All { get; } =
    [
        TalaFamily.Dhruva, TalaFamily.Matya, TalaFamily.Rupaka, TalaFamily.Jhampa, TalaFamily.Triputa, TalaFamily.Ata, TalaFamily.Eka,
    ];

    /// <summary>The signs of its angas: <c>I</c> laghu, <c>O</c> drutam, <c>U</c> anudrutam.</summary>
    /// <param name="family">The tala.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the seven.</exception>
    public static string AngaSigns(this TalaFamily family) => Rule(family).Signs;

    /// <summary>The jati that is meant when only the tala is named.</summary>
    /// <param name="family">The tala.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the seven.</exception>
    public static Jati UsualJati(this TalaFamily family) => Rule(family).Usual;

    /// <summary>The angas of a tala.</summary>
    public static ValueList<Anga> Angas(this TalaFamily family, Jati jati)
    {
        var signs = family.AngaSigns();
        var angas = new Anga[signs.Length];
        for (var i = 0; i < angas.Length; i++)
        {
            angas[i] = signs[i] switch
            {
                'I' => Anga.Laghu(jati),
                'O' => Anga.Drutam,
                _ => Anga.Anudrutam,
            };
        }

        return ValueList.Adopt(angas);
    }

    private static (string Signs, Jati Usual) Rule(TalaFamily family) => Rules[Require.InRange((int)family, 0, Rules.Length - 1, nameof(family))];
}
