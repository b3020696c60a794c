using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Footage;

/// <summary>How a clip is read into frames.</summary>
public sealed record ReadSettings
{
    /// <summary>Longest side of the analysed picture, px. Larger pictures are made smaller, smaller ones are left as they are. 1280 is 720p, the size the speed goals are stated at.</summary>
    [Range(16, 8192)]
    public int MaxSidePx { get; init; } = 1280;

    /// <summary>Highest mean frame rate, Hz. Faster clips are thinned evenly, by leaving frames out; times stay true. 60 Hz times a stride of 1.4 Hz to 1.2 % (half a frame over the stride).</summary>
    [Range(1, 1000)]
    public double MaxRateHz { get; init; } = 60;

    /// <summary>First time to read, s from the clip's first frame; null = from the start.</summary>
    [Range(0, 1e6)]
    public double? StartSeconds { get; init; }

    /// <summary>Time to stop before, s from the clip's first frame; null = to the end.</summary>
    [Range(0, 1e6)]
    public double? EndSeconds { get; init; }

    /// <summary>Frames decoded ahead of whoever reads them. Each holds a picture in memory.</summary>
    [Range(1, 64)]
    public int FramesAhead { get; init; } = 4;

    /// <summary>
    /// Threads FFmpeg may decode with; 0 lets it take one a core. Sound clips come out the same with any number. What a damaged frame is patched from depends on which of several threads got how far,
    /// so that each reading shows other pictures; with one it does not.
    /// </summary>
    [Range(0, 64)]
    public int DecoderThreads { get; init; }
}
