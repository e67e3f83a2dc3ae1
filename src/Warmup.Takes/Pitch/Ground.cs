using MathNet.Numerics.Statistics;

namespace Warmup.Takes;

/// <summary>
/// What of a recording's spectrum sounds whoever sings: all the time about each moment, as a drone, a hum or noise does, and what a room still holds of the moment
/// before. A frame is held back until what comes after it is known, so that a recording is read once and some seconds of it are held.
/// </summary>
/// <param name="bins">How many powers a spectrum has.</param>
internal sealed class Ground(int bins)
{
    // Seconds to each side that are looked at: longer than a note is held, so that the voice is elsewhere for most of it.
    private const int Reach = 6;

    // Frames with one ground, and how many stand between two that are looked at.
    private const int Block = PitchTrack.FramesASecond;
    private const int Every = 20;
    private const int Held = ((2 * Reach) + 2) * Block;

    // A third of a spectrum's moments have no more: what one voice sings has left each place for longer, unless it sings one note.
    private const double Share = 1 / 3.0;

    // What sounds all the time swings by half and more.
    private const float Swings = 2;

    // Frames after which a room that rings for 1.6 s has so much left of a power. Late reverberation is taken off in this way since Lebart, Boucher and Denbigh 2001
    // (from memory).
    private const int Later = 6;
    private const float Rings = 0.6f;

    private readonly float[] _spectra = new float[Held * bins];
    private readonly float[] _ground = new float[bins];
    private readonly float[] _stays = new float[bins];
    private float[] _moments = [];
    private int _added;
    private int _taken;

    /// <summary>Whether a frame is held.</summary>
    public bool IsHolding => _taken < _added;

    /// <summary>Whether a frame is held of which enough is known that comes after it.</summary>
    public bool IsReady => (_taken / Block * Block) + ((1 + Reach) * Block) <= _added;

    /// <summary>Room for the next frame's spectrum.</summary>
    public Span<float> Add() => Spectrum(_added++);

    /// <summary>The first frame that is held, and what would sound in it if nobody sang; valid until the next is added.</summary>
    /// <param name="stays">The powers that sound all the time, as far as they swing, and those that a room holds.</param>
    /// <returns>The frame's powers.</returns>
    public ReadOnlySpan<float> Take(out ReadOnlySpan<float> stays)
    {
        if (_taken % Block == 0)
        {
            Learn(Math.Max(0, _taken - (Reach * Block)), Math.Min(_added, _taken + ((1 + Reach) * Block)));
        }

        for (var k = 0; k < bins; k++)
        {
            _stays[k] = Swings * _ground[k];
        }

        if (_taken >= Later)
        {
            var before = Spectrum(_taken - Later);
            for (var k = 0; k < bins; k++)
            {
                _stays[k] += Rings * before[k];
            }
        }

        stays = _stays;
        return Spectrum(_taken++);
    }

    private Span<float> Spectrum(int frame) => _spectra.AsSpan(frame % Held * bins, bins);

    private void Learn(int from, int to)
    {
        var count = (to - from + Every - 1) / Every;
        _moments = _moments.Length == count ? _moments : new float[count];
        for (var k = 0; k < bins; k++)
        {
            for (var m = 0; m < count; m++)
            {
                _moments[m] = Spectrum(from + (m * Every))[k];
            }

            _ground[k] = ArrayStatistics.OrderStatisticInplace(_moments, 1 + (int)(Share * (count - 1)));
        }
    }
}
