using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text.Json.Serialization;

namespace Warmup;

/// <summary>How the beats are counted: free, or in avartanas (bars) of one or more angas (groups).</summary>
/// <remarks>
/// A beat is an akshara, and the tempo counts aksharas. In files a tala's akshara is a quarter note; a time signature has the beat it
/// names, and a compound one the dotted beat: 6/8 has two dotted quarters. Immutable, value equality.
/// </remarks>
[JsonConverter(typeof(TextJsonConverter<Meter>))]
public sealed partial record Meter : ITextForm<Meter>, IWritesText
{
    /// <summary>The shortest note value that a time signature may count: a 32nd.</summary>
    internal const int FinestBeatType = 32;

    /// <summary>The longest name, in characters.</summary>
    internal const int LongestName = 100;

    // Declared before the meters below, which are made from it.
    private static readonly ValueList<Meter> Thirtyfive = MakeTalas();

    private Meter(string name, ValueList<int> groups, int beatType = 4)
    {
        Name = name;
        Groups = groups;
        BeatType = beatType;
        SignatureGroups = groups;
        foreach (var group in groups)
        {
            Beats += group;
        }
    }

    /// <summary>The most beats of an avartana: 64 (the project's own setting; the longest of the 35 talas has 29).</summary>
    internal static int MostBeats => 64;

    /// <summary>No count: each line has its own length.</summary>
    public static Meter Free { get; } = new("free", []);

    /// <summary>Adi tala, chatusra-jati triputa: 4 + 2 + 2 aksharas (common practice).</summary>
    public static Meter Adi => Tala(TalaFamily.Triputa, Jati.Chatusra);

    /// <summary>The thirty-five talas: seven rules with five jatis each.</summary>
    public static ValueList<Meter> Talas => Thirtyfive;

    /// <summary>The chapu talas of 3, 5, 7 and 9 aksharas, and rupaka as concert practice counts it: three.</summary>
    /// <remarks>
    /// Misra chapu has its kriyas on 1, 4 and 6, khanda chapu on 1, 3 and 4: three beats that last 3, 2, 2 and 2, 1, 2 aksharas
    /// (ajsriram.blogspot.com, Prominent Talas; lvnaga.wordpress.com, Talas in Carnatic Music 3). Many show the first part of misra chapu
    /// with the palm turned up on 1 and 2: <c>misra chapu with waves</c> (lvnaga.wordpress.com); no source with such a form of khanda chapu
    /// was found. Tisra and sankirna chapu, and their claps, are from memory.
    /// </remarks>
    public static ValueList<Meter> Chapus { get; } =
    [
        Chapu("tisra chapu", [1, 2], [0, 1]), Chapu("khanda chapu", [2, 3], [0, 2, 3]), Chapu("misra chapu", [3, 4], [0, 3, 5]),
        Chapu("sankirna chapu", [4, 5], [0, 4]), Chapu("misra chapu with waves", [3, 4], [3, 5], [0, 1]),
        new("rupaka-chapu", [3]) { Gestures = [Kriya.Clap, Kriya.Clap, Kriya.Wave] },
    ];

    /// <summary>The name; <see cref="Parse"/> reads it, unless it is a tala of the caller's own, which <see cref="ToText"/> writes out.</summary>
    public string Name { get; }

    /// <summary>The beats of each anga; empty for the free meter.</summary>
    public ValueList<int> Groups { get; }

    /// <summary>The angas of one of the thirty-five talas or of the caller's own tala; empty for other meters.</summary>
    public ValueList<Anga> Angas { get; private init; }

    /// <summary>What the hand does on each beat; empty for time signatures and the free meter.</summary>
    public ValueList<Kriya> Gestures { get; private init; }

    /// <summary>The note value of a beat in files, without its dot: 4 for a quarter, and for a dotted quarter.</summary>
    public int BeatType { get; }

    /// <summary>Whether the beat is dotted and so has three parts.</summary>
    public bool IsCompound { get; private init; }

    /// <summary>The beats of an avartana; 0 for the free meter.</summary>
    public int Beats { get; }

    /// <summary>Whether there is no count.</summary>
    public bool IsFree => Groups.IsEmpty;

    /// <summary>The beat as a fraction of a whole note: 1/4 for a quarter, 3/8 for a dotted one.</summary>
    public Rational BeatValue => IsCompound ? new Rational(3, 2 * BeatType) : new Rational(1, BeatType);

    /// <summary>The upper numbers of the time signature: the groups, or for a compound meter the one number.</summary>
    public ValueList<int> SignatureGroups { get; private init; }

    /// <summary>The lower number of the time signature: the beat, or for a compound meter its third.</summary>
    public int SignatureType => IsCompound ? BeatType * 2 : BeatType;

    /// <summary>One of the thirty-five talas.</summary>
    /// <param name="family">The tala's rule.</param>
    /// <param name="jati">The count of its laghu.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value is none of the seven or of the five.</exception>
    public static Meter Tala(TalaFamily family, Jati jati)
    {
        _ = family.AngaSigns();
        _ = jati.Aksharas();
        return Thirtyfive[((int)family * Jatis.All.Count) + (int)jati];
    }

    /// <summary>One of the seven talas with the jati that its bare name stands for.</summary>
    /// <param name="family">The tala's rule.</param>
    /// <exception cref="ArgumentOutOfRangeException">The value is none of the seven.</exception>
    public static Meter Tala(TalaFamily family) => Tala(family, family.UsualJati());

    /// <summary>A tala of the caller's own: its angas in order, each with its gestures.</summary>
    /// <param name="name">The name: 1 to 100 characters without control characters, and without white space at its ends.</param>
    /// <param name="angas">The angas, 1 to 64 aksharas together.</param>
    /// <exception cref="ArgumentNullException"><paramref name="name"/> is <see langword="null"/>.</exception>
    /// <exception cref="ArgumentException"><paramref name="name"/> is not such a name.</exception>
    /// <exception cref="ArgumentOutOfRangeException">There are no angas, or their aksharas are more than 64.</exception>
    public static Meter Tala(string name, ValueList<Anga> angas)
    {
        Require.Name(name, LongestName);
        Require.InRange(angas.Sum(a => a.Aksharas), 1, MostBeats, "the aksharas of a tala");
        return OfAngas(name, angas);
    }

    /// <summary>
    /// A time signature with one group. A number above 3 that three divides is compound: 6/8, 9/8 and 12/8 have two, three and four
    /// dotted beats (common practice); <c>3+3/8</c> counts six eighths instead.
    /// </summary>
    /// <param name="number">The upper number, 1 to 64.</param>
    /// <param name="type">The lower number: 1, 2, 4, 8, 16 or 32.</param>
    /// <exception cref="ArgumentOutOfRangeException">A value lies outside its range.</exception>
    public static Meter TimeSignature(int number, int type)
    {
        Require.InRange(number, 1, MostBeats, "the upper number of a time signature");
        var name = string.Create(CultureInfo.InvariantCulture, $"{number}/{NoteValue(type)}");
        if (number <= 3 || number % 3 != 0 || type == 1)
        {
            return new Meter(name, [number], type);
        }

        return new Meter(name, [number / 3], type / 2) { IsCompound = true, SignatureGroups = [number] };
    }

    /// <summary>An additive time signature: <c>2+2+3/8</c> has groups of two, two and three eighths, and the eighth is the beat.</summary>
    /// <param name="groups">The beats of each group; together 1 to 64.</param>
    /// <param name="type">The lower number: 1, 2, 4, 8, 16 or 32.</param>
    /// <exception cref="ArgumentOutOfRangeException">There are no groups, or a value lies outside its range.</exception>
    public static Meter Additive(ValueList<int> groups, int type)
    {
        if (groups.Count == 1)
        {
            return TimeSignature(groups[0], type);
        }

        // Summed as 64-bit numbers: a group may be anything before it is checked.
        var sum = 0L;
        foreach (var group in groups)
        {
            sum += Require.InRange(group, 1, MostBeats, "the beats of a group");
        }

        Require.InRange((int)Math.Min(sum, int.MaxValue), 1, MostBeats, "the beats of an avartana");
        return new Meter(string.Create(CultureInfo.InvariantCulture, $"{Plus(groups)}/{NoteValue(type)}"), groups, type);
    }

    // The longest name, and 64 gestures in words.
    static int ITextForm<Meter>.LongestText => 800;

    static string ITextForm<Meter>.What => "a meter";

    /// <summary>
    /// Reads a tala (<c>adi</c>, <c>misra-jati jhampa</c>, <c>khanda chapu</c>, <c>rupaka-chapu</c>; a bare name such as <c>ata</c> has its
    /// usual jati), a time signature (<c>7/8</c>, <c>2+2+3/8</c>), <c>free</c>, or a tala of one's own with its angas:
    /// <c>own: I4 + O + clap silent</c>.
    /// </summary>
    /// <param name="text">
    /// The text. In names, capitals and small letters, marks, spaces and the usual spellings are one. What <see cref="ToString"/> adds to a
    /// name, as in <c>Adi (4+2+2)</c>, may follow it.
    /// </param>
    /// <exception cref="ArgumentNullException"><paramref name="text"/> is <see langword="null"/>.</exception>
    /// <exception cref="WarmupFormatException">The text is not a meter.</exception>
    public static Meter Parse(string text) => TextForm.Parse<Meter>(text);

    /// <summary>Reads a meter as <see cref="Parse"/> does.</summary>
    /// <param name="text">The text.</param>
    /// <param name="meter">The meter, or <see langword="null"/>.</param>
    /// <param name="error">What is wrong, with what was perhaps meant; or <see langword="null"/>.</param>
    /// <returns>Whether the text is a meter.</returns>
    public static bool TryParse([NotNullWhen(true)] string? text, [NotNullWhen(true)] out Meter? meter, [NotNullWhen(false)] out TextError? error) =>
        TextForm.TryParse<Meter>(text, out meter, out error);

    static Meter IParsable<Meter>.Parse(string s, IFormatProvider? provider) => Parse(s);

    static bool IParsable<Meter>.TryParse([NotNullWhen(true)] string? s, IFormatProvider? provider, [MaybeNullWhen(false)] out Meter result) => TryParse(s, out result, out _);

    static Meter ISpanParsable<Meter>.Parse(ReadOnlySpan<char> s, IFormatProvider? provider) => TextForm.Parse<Meter>(s);

    static bool ISpanParsable<Meter>.TryParse(ReadOnlySpan<char> s, IFormatProvider? provider, [MaybeNullWhen(false)] out Meter result) =>
        TextForm.TryParse(s, out result, out _);

    static bool ITextForm<Meter>.TryRead(TextCursor cursor, [MaybeNullWhen(false)] out Meter value, [NotNullWhen(false)] out TextError? error) =>
        MeterText.TryRead(cursor, out value, out error);

    /// <summary>The whole meter, as <see cref="Parse"/> reads it back: the name, and the angas of a tala of the caller's own: <c>own: I4 + O</c>.</summary>
    public string ToText() => MeterText.IsNamed(this) ? Name : $"{Name}: {string.Join(" + ", Angas)}";

    /// <summary>The aksharas from the beginning of the avartana to the end of the anga that a point lies in; the avartana's end for its last.</summary>
    /// <param name="within">A point in aksharas from the beginning of the avartana, from 0 to less than <see cref="Beats"/>.</param>
    /// <exception cref="ArgumentOutOfRangeException">The point lies outside the avartana.</exception>
    public int AngaEnd(Rational within)
    {
        var end = 0;
        foreach (var group in Groups)
        {
            end += group;
            if (within.Sign >= 0 && within < end)
            {
                return end;
            }
        }

        throw new ArgumentOutOfRangeException(
            nameof(within), within, string.Create(CultureInfo.InvariantCulture, $"a point in {Name} must lie from 0 to less than {Beats}, not at {within}"));
    }

    /// <summary>The name, and the angas where the name does not say them: <c>Adi (4+2+2)</c>, <c>6/8 (2 dotted beats)</c>.</summary>
    public override string ToString() => IsFree || (Gestures.IsEmpty && !IsCompound)
        ? Name
        : OneLine.Of(string.Create(CultureInfo.InvariantCulture, $"{Name} ({(IsCompound ? $"{Beats} dotted beats" : Plus(Groups))})"));

    private static ValueList<Meter> MakeTalas()
    {
        var talas = new List<Meter>();
        foreach (var family in TalaFamilies.All)
        {
            foreach (var jati in Jatis.All)
            {
                var angas = family.Angas(jati);
                var name = (family, jati) == (TalaFamily.Triputa, Jati.Chatusra)
                    ? "Adi"
                    : $"{jati.ToString().ToLowerInvariant()}-jati {family.ToString().ToLowerInvariant()}";
                talas.Add(OfAngas(name, angas));
            }
        }

        return talas.ToValueList();
    }

    private static Meter OfAngas(string name, ValueList<Anga> angas) => new(name, angas.ConvertAll(a => a.Aksharas))
    {
        Angas = angas,
        Gestures = Joined(angas.ConvertAll(a => a.Gestures)),
    };

    /// <summary>A chapu tala with its claps and waves on the given beats, from 0.</summary>
    private static Meter Chapu(string name, ValueList<int> groups, ReadOnlySpan<int> claps, params ReadOnlySpan<int> waves)
    {
        var meter = new Meter(name, groups);
        var gestures = new Kriya[meter.Beats];
        Array.Fill(gestures, Kriya.Silent);
        foreach (var beat in claps)
        {
            gestures[beat] = Kriya.Clap;
        }

        foreach (var beat in waves)
        {
            gestures[beat] = Kriya.Wave;
        }

        return meter with { Gestures = ValueList.Adopt(gestures) };
    }

    private static ValueList<Kriya> Joined(ValueList<ValueList<Kriya>> groups)
    {
        // With plain loops: these tables are made in every process, before its first drill.
        var count = 0;
        foreach (var group in groups)
        {
            count += group.Count;
        }

        var joined = new Kriya[count];
        var at = 0;
        foreach (var group in groups)
        {
            foreach (var gesture in group)
            {
                joined[at++] = gesture;
            }
        }

        return ValueList.Adopt(joined);
    }

    private static int NoteValue(int type) => type is 1 or 2 or 4 or 8 or 16 or FinestBeatType
        ? type
        : throw new ArgumentOutOfRangeException(
            nameof(type), type, string.Create(CultureInfo.InvariantCulture, $"the lower number of a time signature must be 1, 2, 4, 8, 16 or 32, not {type}"));

    private static string Plus(ValueList<int> groups) => string.Join('+', groups.ConvertAll(g => g.ToString(CultureInfo.InvariantCulture)));
}
