namespace Warmup.Midi;

/// <summary>Clicks on the aksharas, in the count-in or throughout.</summary>
internal sealed class BeatEvents : TrackEvents
{
    // General MIDI's percussion keys, counted from 0.
    private const int HighWoodBlock = 76;
    private const int LowWoodBlock = 77;

    // The project's own settings.
    private const int AvartanaVelocity = 115;
    private const int AngaVelocity = 90;
    private const int PlainVelocity = 60;

    private int _section;
    private int _beat;
    private bool _hasName;
    private bool _isSounding;

    public BeatEvents(MidiPlan plan)
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
        _hasName = false;
        _isSounding = false;
        Next = At(0, EventPhase.Setup);
    }

    protected override void Emit(ref TrackWriter writer)
    {
        if (!_hasName)
        {
            _hasName = true;
            if (!Plan.Options.IsSingleTrack)
            {
                writer.Text(0, 0x03, "Beat");
            }

            GoToBeat();
        }
        else if (_isSounding)
        {
            writer.NoteOff(Tick, DroneChannels.PercussionChannel, Click().Key);
            _isSounding = false;
            _beat++;
            GoToBeat();
        }
        else
        {
            var (key, velocity) = Click();
            writer.NoteOn(Tick, DroneChannels.PercussionChannel, key, velocity);
            _isSounding = true;

            // A block of wood rings by itself; the note only has to end before the next.
            Next = At(Tick + Math.Max(1, Plan.AksharaTicks(_section) / 4), EventPhase.Off);
        }
    }

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

        Next = At(Plan.TickOf(_section, new Rational(_beat)), EventPhase.On);
    }

    /// <summary>How the present beat sounds.</summary>
    private (int Key, int Velocity) Click() => Plan.Score.Sections[_section].Meter.AccentOf(_beat) switch
    {
        BeatAccent.Avartana => (HighWoodBlock, AvartanaVelocity),
        BeatAccent.Anga => (HighWoodBlock, AngaVelocity),
        _ => (LowWoodBlock, PlainVelocity),
    };
}
