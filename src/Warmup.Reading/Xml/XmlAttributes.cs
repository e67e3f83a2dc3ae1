using System.Globalization;

namespace Warmup.Reading;

/// <summary>Reads what the attributes of a measure say: divisions, key, time, transposition.</summary>
internal static class XmlAttributes
{
    public const int MostDivisions = 16_383;

    public static void Read(XmlCursor xml, XmlPart part)
    {
        switch (xml.Name)
        {
            case "divisions":
                part.SetDivisions(Divisions(xml));
                break;
            case "key":
                var key = new Key();
                xml.Children(key, static (x, k) => k.Read(x));
                if (key.Fifths is { } fifths)
                {
                    part.SetKey(fifths, key.IsMinor);
                }

                break;
            case "time":
                var time = new Time { IsHidden = xml.Attribute("print-object") == "no" };
                xml.Children(time, static (x, t) => t.Read(x));
                if (time.ToMeter(part.Now) is { } meter)
                {
                    part.SetMeter(meter);
                }

                break;
            case "transpose":
                var by = new Transpose();
                xml.Children(by, static (x, t) => t.Read(x));
                part.SetTranspose(by.Semitones);
                break;
            default:
                break;
        }
    }

    /// <summary>The divisions of a quarter note: a whole number; the standard asks for one up to 16,383, and readers take more.</summary>
    private static int Divisions(XmlCursor xml)
    {
        var divisions = xml.Integer(0, 64 * MostDivisions);
        return divisions > 0 ? divisions : throw xml.Error("<divisions> before this place is 0; it must be 1 or more");
    }

    private sealed class Key
    {
        public int? Fifths { get; private set; }

        public bool? IsMinor { get; private set; }

        public void Read(XmlCursor xml)
        {
            if (xml.Name == "fifths")
            {
                Fifths = xml.Integer(-14, 14);
            }
            else if (xml.Name == "mode")
            {
                IsMinor = xml.Text() switch
                {
                    "major" or "ionian" => false,
                    "minor" or "aeolian" => true,
                    _ => null,
                };
            }
        }
    }

    private sealed class Time
    {
        private readonly List<int> _groups = [];
        private int _type;
        private string _beats = string.Empty;

        public bool IsHidden { get; set; }

        public void Read(XmlCursor xml)
        {
            switch (xml.Name)
            {
                case "beats":
                    _beats = xml.Text();
                    break;
                case "beat-type":
                    Add(xml, _beats, xml.Integer(1, 128));
                    break;
                case "senza-misura":
                    IsHidden = true;
                    break;
                default:
                    break;
            }
        }

        public RawMeter? ToMeter(Rational onset) => _groups.Count > 0
            ? new RawMeter(onset, _groups.ToValueList(), _type, IsHidden)
            : IsHidden ? new RawMeter(onset, [ReadingLimits.Measures], 1, true) : null;

        /// <summary>Adds a pair of beats and note value; pairs of different values are counted in the smaller.</summary>
        private void Add(XmlCursor xml, string beats, int type)
        {
            foreach (var group in beats.Split('+'))
            {
                if (!int.TryParse(group, NumberStyles.AllowLeadingWhite | NumberStyles.AllowTrailingWhite, CultureInfo.InvariantCulture, out var count) || count is < 1 or > 1_000 || _groups.Count >= 64)
                {
                    throw xml.Error($"<beats> before this place must be whole numbers from 1 to 1000 with plus signs, not {TextError.Quote(beats)}");
                }

                if (!int.IsPow2(type))
                {
                    throw xml.Error("<beat-type> before this place must be a power of two");
                }

                if (_groups.Count > 0 && type > _type)
                {
                    for (var i = 0; i < _groups.Count; i++)
                    {
                        _groups[i] *= type / _type;
                    }

                    _type = type;
                }

                _type = Math.Max(type, _type);
                _groups.Add(count * (_type / type));
            }
        }
    }

    private sealed class Transpose
    {
        private int _chromatic;
        private int _octaves;

        public int Semitones => _chromatic + (12 * _octaves);

        public void Read(XmlCursor xml)
        {
            if (xml.Name == "chromatic")
            {
                _chromatic = (int)xml.Number(-48, 48);
            }
            else if (xml.Name == "octave-change")
            {
                _octaves = xml.Integer(-4, 4);
            }
        }
    }
}
