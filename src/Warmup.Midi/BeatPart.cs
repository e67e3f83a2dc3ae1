namespace Warmup.Midi;

/// <summary>Clicks on the aksharas, in the count-in or throughout.</summary>
internal sealed class BeatPart : Part
{
    // General MIDI's percussion keys, counted from 0.
    private const int HighWoodBlock = 76;
    private const int LowWoodBlock = 77;

    // The project's own setting: the avartana's first beat, an anga's first beat, any other.
    private const int StrongVelocity = 115;
    private const int AccentVelocity = 90;
    private const int PlainVelocity = 60;

    private int _section;
    private int _beat;
    private bool _named;
    private bool _sounds;

    public BeatPart(MidiPlan plan)
        : base(plan)
    {
    }

    /// <summary>Whether there is anything to click.</summary>
    public static bool IsNeeded(MidiPlan plan)
    {
        for (var s = 0; s < plan.Score.Sections.Count; s++)
        {
            if (Beats(plan, s) > 0)
            {
                return true;
            }
        }

        return false;
    }

    public override void Start()
    {
        _section = 0;
        _beat = 0;
        _named = false;
        _sounds = false;
        Next = At(0, Phase.Setup);
    }

    protected override void Emit(ref TrackWriter writer)
    {
        if (!_named)
        {
            _named = true;
            if (!Plan.Options.SingleTrack)
            {
                writer.Text(0, 0x03, "Beat");
            }

            GoToBeat();
        }
        else if (_sounds)
        {
            writer.NoteOff(Tick, DronePlan.PercussionChannel, Click(out _));
            _sounds = false;
            _beat++;
            GoToBeat();
        }
        else
        {
            var key = Click(out var velocity);
            writer.NoteOn(Tick, DronePlan.PercussionChannel, key, velocity);
            _sounds = true;

            // A block of wood rings by itself; the note only has to end before the next.
            Next = At(Tick + Math.Max(1, Plan.AksharaTicks(_section) / 4), Phase.Off);
        }
    }

    private Meter Meter => Plan.Score.Sections[_section].Meter;

    private static int Beats(MidiPlan plan, int section) => plan.Score.Sections[section] is var at && at.Meter.IsFree
        ? 0
        : plan.Options.Click switch
        {
            MidiClick.CountIn => (int)at.CountIn.Floor(),
            MidiClick.Throughout => (int)at.Length.Floor(),
            _ => 0,
        };

    private void GoToBeat()
    {
        while (_beat >= Beats(Plan, _section))
        {
            if (++_section == Plan.Score.Sections.Count)
            {
                Next = Over;
                return;
            }

            _beat = 0;
        }

        Next = At(Plan.TickOf(_section, new Rational(_beat)), Phase.On);
    }

    /// <summary>The key and the velocity of the present beat.</summary>
    private int Click(out int velocity)
    {
        var within = _beat % Meter.Beats;
        var anga = 0;
        foreach (var group in Meter.Groups)
        {
            if (within == anga)
            {
                velocity = within == 0 ? StrongVelocity : AccentVelocity;
                return HighWoodBlock;
            }

            anga += group;
        }

        velocity = PlainVelocity;
        return LowWoodBlock;
    }
}
