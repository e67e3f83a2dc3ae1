using System.Globalization;

namespace Warmup;

/// <summary>The kinds of a tala's angas (limbs).</summary>
public enum AngaKind
{
    /// <summary>A clap and a finger for each further akshara; its length is the tala's jati.</summary>
    Laghu,

    /// <summary>A clap and a wave: two aksharas.</summary>
    Drutam,

    /// <summary>A clap: one akshara.</summary>
    Anudrutam,
}

/// <summary>What the hand does on an akshara.</summary>
/// <remarks>
/// The fingers are counted from the little one to the thumb and then from the little one again (common practice; the order of the fingers
/// is from memory).
/// </remarks>
public enum Kriya
{
    /// <summary>The palm on the thigh or on the other palm.</summary>
    Clap,

    /// <summary>Counted with the little finger.</summary>
    LittleFinger,

    /// <summary>Counted with the ring finger.</summary>
    RingFinger,

    /// <summary>Counted with the middle finger.</summary>
    MiddleFinger,

    /// <summary>Counted with the index finger.</summary>
    IndexFinger,

    /// <summary>Counted with the thumb.</summary>
    Thumb,

    /// <summary>The palm turned up.</summary>
    Wave,

    /// <summary>Nothing.</summary>
    Silent,
}

/// <summary>An anga of a tala: a laghu, a drutam or an anudrutam. <c>default</c> is the laghu of three aksharas.</summary>
public readonly record struct Anga
{
    private const int Fingers = 5;

    private Anga(AngaKind kind, Jati jati)
    {
        Kind = kind;
        Jati = jati;
    }

    /// <summary>Two aksharas: clap, wave.</summary>
    public static Anga Drutam => new(AngaKind.Drutam, default);

    /// <summary>One akshara: clap.</summary>
    public static Anga Anudrutam => new(AngaKind.Anudrutam, default);

    /// <summary>The kind.</summary>
    public AngaKind Kind { get; }

    /// <summary>The jati of a laghu; of no meaning for the other kinds.</summary>
    public Jati Jati { get; }

    /// <summary>Its length in aksharas.</summary>
    public int Aksharas => Kind switch
    {
        AngaKind.Laghu => Jati.Aksharas(),
        AngaKind.Drutam => 2,
        _ => 1,
    };

    /// <summary>The gesture of each of its aksharas.</summary>
    public ValueList<Kriya> Gestures
    {
        get
        {
            var gestures = new Kriya[Aksharas];
            for (var i = 1; i < gestures.Length; i++)
            {
                gestures[i] = Kind == AngaKind.Drutam ? Kriya.Wave : Kriya.LittleFinger + ((i - 1) % Fingers);
            }

            return ValueList.Adopt(gestures);
        }
    }

    /// <summary>A laghu: a clap, then a finger for each further akshara.</summary>
    /// <param name="jati">Its count.</param>
    /// <exception cref="ArgumentOutOfRangeException">The jati is none of the five.</exception>
    public static Anga Laghu(Jati jati)
    {
        _ = jati.Aksharas();
        return new(AngaKind.Laghu, jati);
    }

    /// <summary>The sign: <c>I4</c> for a laghu of four, <c>O</c> for a drutam, <c>U</c> for an anudrutam.</summary>
    public override string ToString() => Kind switch
    {
        AngaKind.Laghu => string.Create(CultureInfo.InvariantCulture, $"I{Aksharas}"),
        AngaKind.Drutam => "O",
        _ => "U",
    };
}
