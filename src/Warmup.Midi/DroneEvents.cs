namespace Warmup.Midi;

/// <summary>The strokes of the drone in its own time: each second on the nearest tick. A held drone has one stroke a string.</summary>
internal sealed class DroneEvents : TrackEvents
{
    private const long None = long.MaxValue;

    private readonly DroneChannels _drone;
    private readonly long[] _offs;
    private IEnumerator<DroneStroke>? _strokes;
    private DroneStroke _stroke;
    private long _on;
    private long _off;
    private bool _isSetUp;

    public DroneEvents(MidiPlan plan, DroneChannels drone)
        : base(plan)
    {
        _drone = drone;
        _offs = new long[drone.Keys.Length];
    }

    public override void Start()
    {
        _strokes?.Dispose();
        _strokes = _drone.Drone.Strokes(Plan.Seconds).GetEnumerator();
        Array.Fill(_offs, None);
        _isSetUp = false;
        Next = At(0, EventPhase.Setup);
    }

    protected override void Emit(ref TrackWriter writer)
    {
        if (!_isSetUp)
        {
            SetUp(ref writer);
            _isSetUp = true;
            MoveToStroke();
        }
        else if (Next == At(Tick, EventPhase.Off))
        {
            var index = Array.IndexOf(_offs, Tick);
            writer.NoteOff(Tick, _drone.ChannelOf[index], _drone.Keys[index].Key);
            _offs[index] = None;
        }
        else
        {
            var index = _stroke.StringIndex;
            writer.NoteOn(Tick, _drone.ChannelOf[index], _drone.Keys[index].Key, Plan.Options.DroneVelocity);
            _offs[index] = _off;
            MoveToStroke();
        }

        var off = Least(_offs);
        Next = off <= _on && off != None ? At(off, EventPhase.Off) : _on != None ? At(_on, EventPhase.On) : Over;
    }

    private static long Least(ReadOnlySpan<long> ticks)
    {
        var least = None;
        foreach (var tick in ticks)
        {
            least = Math.Min(least, tick);
        }

        return least;
    }

    private void SetUp(ref TrackWriter writer)
    {
        if (!Plan.Options.IsSingleTrack)
        {
            writer.Text(0, 0x03, "Drone");
        }

        for (var channel = DroneChannels.VoiceChannel + 1; channel <= _drone.LastChannel; channel++)
        {
            var first = Array.IndexOf(_drone.ChannelOf, channel);
            if (first < 0)
            {
                continue;
            }

            // Each channel has its own tuning program: two strings may be the same key and sound differently.
            var (program, volume) = _drone.Drone.IsHeld
                ? (Plan.Options.HeldDroneProgram, Plan.Options.HeldDroneVolume)
                : (Plan.Options.DroneProgram, Plan.Options.DroneVolume);
            SetUpChannel(ref writer, channel, program, volume, channel);
            switch (Plan.Options.Tuning)
            {
                case MidiTuning.PitchBend:
                    writer.Bend(0, channel, _drone.Keys[first].Bend);
                    break;
                case MidiTuning.TuningStandard:
                    Retune(ref writer, channel);
                    break;
                default:
                    break;
            }
        }
    }

    private void Retune(ref TrackWriter writer, int channel)
    {
        var message = new TuningMessage(stackalloc byte[TuningMessage.Size], channel);
        for (var i = 0; i < _drone.Keys.Length && !message.IsFull; i++)
        {
            if (_drone.ChannelOf[i] == channel)
            {
                message.Add(_drone.Keys[i]);
            }
        }

        writer.SystemExclusive(0, message.Data);
    }

    /// <summary>Goes to the next stroke that lasts at least a tick.</summary>
    private void MoveToStroke()
    {
        _on = None;
        while (_strokes!.MoveNext())
        {
            _stroke = _strokes.Current;
            var on = Plan.TickAt(_stroke.Onset);
            _off = Plan.TickAt(_stroke.Onset + _stroke.Length);
            if (_off > on)
            {
                _on = on;
                return;
            }
        }
    }
}
