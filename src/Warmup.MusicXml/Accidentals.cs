namespace Warmup.MusicXml;

/// <summary>Whether a note needs its accidental written.</summary>
internal enum AccidentalNeed
{
    None,
    Needed,

    /// <summary>The rules do not need it, but the letter was altered otherwise in another octave of the measure.</summary>
    Courtesy,
}

/// <summary>The accidentals written so far in a measure: each holds for its letter and octave until the bar line.</summary>
internal sealed class Accidentals
{
    private static int Octaves => NoteName.HighestOctave - NoteName.LowestOctave + 1;
    private const sbyte Unseen = sbyte.MaxValue;

    private readonly sbyte[] _written = new sbyte[7 * Octaves];
    private readonly sbyte[] _signature = new sbyte[7];

    // The letters met in the measure, a bit for each: most are met once.
    private int _met;

    public void SetKey(KeySignature key)
    {
        for (var letter = 0; letter < 7; letter++)
        {
            _signature[letter] = (sbyte)key.Alteration(letter);
        }
    }

    /// <summary>Begins a measure: a bar line cancels all accidentals.</summary>
    public void BeginMeasure()
    {
        Array.Fill(_written, Unseen);
        _met = 0;
    }

    /// <summary>Whether a note that begins now needs its accidental, which then holds.</summary>
    public AccidentalNeed See(NoteName name)
    {
        var letter = name.LetterIndex;
        ref var written = ref _written[(7 * (name.Octave - NoteName.LowestOctave)) + letter];
        var holds = written == Unseen ? _signature[letter] : written;
        var need = holds != name.Alteration ? AccidentalNeed.Needed
            : written == Unseen && (_met & (1 << letter)) != 0 && IsAlteredElsewhere(letter, name.Alteration) ? AccidentalNeed.Courtesy
            : AccidentalNeed.None;
        written = (sbyte)name.Alteration;
        _met |= 1 << letter;
        return need;
    }

    private bool IsAlteredElsewhere(int letter, int alteration)
    {
        for (var i = letter; i < _written.Length; i += 7)
        {
            if (_written[i] != Unseen && _written[i] != alteration)
            {
                return true;
            }
        }

        return false;
    }
}
