using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Footage;

/// <summary>How a clip is written.</summary>
public sealed record EncodeSettings
{
    /// <summary>Constant rate factor of x264; lower is better and larger. 18 is near lossless to the eye, 23 is x264's own default.</summary>
    [Range(0, 51)]
    public int Crf { get; init; } = 20;

    /// <summary>x264's speed preset.</summary>
    public EncodePreset Preset { get; init; } = EncodePreset.VeryFast;

    /// <summary>Threads of the encoder. Fixed, because x264's bytes may differ with it.</summary>
    [Range(1, 64)]
    public int Threads { get; init; } = 2;

    /// <summary>Greatest distance between key frames, in frames: how far a player may have to go back to show an instant.</summary>
    [Range(1, 1000)]
    public int KeyFrameInterval { get; init; } = 60;
}

/// <summary>x264's presets, from quick and large to slow and small.</summary>
public enum EncodePreset
{
    UltraFast,
    SuperFast,
    VeryFast,
    Faster,
    Fast,
    Medium,
    Slow,
}
