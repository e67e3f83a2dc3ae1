using System.Runtime.CompilerServices;

namespace Warmup.Midi;

/// <summary>
/// How loud the notes of a section are where they stand in the avartana; avartanas follow each other from the section's beginning. Asked for note
/// after note, it counts aksharas and need not divide.
/// </summary>
internal struct Velocities
{
    private readonly int[] _onAksharas;
    private readonly int _between;
    private readonly int _resolution;
    private int _akshara;
    private long _aksharaEnd;

    /// <summary>Begins before the first note of a section.</summary>
    public Velocities(Section section, MidiOptions options)
    {
        _onAksharas = OnAksharas(section.Meter, options);
        _between = options.VoiceVelocity;
        _aksharaEnd = _resolution = section.Resolution;
    }

    /// <summary>The velocity of a note that does not begin before the one that was asked for last.</summary>
    /// <param name="onset">Its onset in grid steps from the section's beginning.</param>
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public int At(int onset)
    {
        unchecked
        {
            while (onset >= _aksharaEnd)
            {
                _aksharaEnd += _resolution;
                _akshara = _akshara + 1 < _onAksharas.Length ? _akshara + 1 : 0;
            }

            return onset == _aksharaEnd - _resolution ? _onAksharas[_akshara] : _between;
        }
    }

    /// <summary>How loud a note is on each akshara of an avartana; in free rhythm all are as loud as between them.</summary>
    private static int[] OnAksharas(Meter meter, MidiOptions options)
    {
        if (meter.IsFree)
        {
            return [options.VoiceVelocity];
        }

        var velocities = new int[meter.Beats];
        for (var beat = 0; beat < velocities.Length; beat++)
        {
            velocities[beat] = Math.Min(127, options.VoiceVelocity + meter.AccentOf(beat) switch
            {
                BeatAccent.Avartana => options.AvartanaAccent,
                BeatAccent.Anga => options.AngaAccent,
                _ => options.AksharaAccent,
            });
        }

        return velocities;
    }
}
