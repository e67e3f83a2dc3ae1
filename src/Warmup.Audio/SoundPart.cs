namespace Warmup.Audio;

/// <summary>Makes the sound of a part block by block, from beginning to end.</summary>
internal abstract class SoundPart
{
    /// <summary>The first frame of the next block.</summary>
    protected long Frame { get; private set; }

    /// <summary>Adds the next block.</summary>
    /// <param name="block">The frames to add to.</param>
    public void AddTo(Span<double> block)
    {
        Add(block, Frame + block.Length);
        Frame += block.Length;
    }

    /// <summary>Adds the block that begins at <see cref="Frame"/>.</summary>
    /// <param name="block">The frames to add to.</param>
    /// <param name="end">The frame after it.</param>
    protected abstract void Add(Span<double> block, long end);

    /// <summary>The rest of a block from a frame of the file on.</summary>
    protected Span<double> From(Span<double> block, long frame) => block[(int)(frame - Frame)..];
}
