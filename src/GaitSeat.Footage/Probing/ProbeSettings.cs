using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Footage;

/// <summary>What a file must be to be taken as a clip.</summary>
public sealed record ProbeSettings
{
    /// <summary>Longest side of the coded picture, px. 8192 takes 8K (7680 x 4320); more is the mark of a stitched panorama, and would need over 200 MB a frame to decode.</summary>
    [Range(64, 16384)]
    public int MaxSidePx { get; init; } = 8192;

    /// <summary>Fewest frames a clip must hold. Motion needs two.</summary>
    [Range(1, 8)]
    public int MinFrames { get; init; } = 2;

    /// <summary>How long one look at a file may take, s. A probe of a sound file takes well under a second; a slow network drive some.</summary>
    [Range(1, 3600)]
    public double TimeoutSeconds { get; init; } = 60;
}
