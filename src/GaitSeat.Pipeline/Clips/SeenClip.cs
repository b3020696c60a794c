using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>
/// Everything the costly passes took from a clip, frame by frame, before it is fused to one rider's tracks. What follows
/// (<see cref="ClipMeasurer.Measure"/>) needs neither the clip nor the models and takes milliseconds.
/// </summary>
public sealed record SeenClip
{
    public required ClipInfo Info { get; init; }

    /// <summary>Where everybody was: the scouting pass.</summary>
    public required RiderPath People { get; init; }

    /// <summary>Presentation times of the followed frames, s, strictly increasing.</summary>
    public required double[] TimeSeconds { get; init; }

    /// <summary>What the body-point models read; null where a frame was not looked at.</summary>
    public required RawPose?[] Poses { get; init; }

    public required PatchMotion Trunk { get; init; }

    public required PatchMotion Surroundings { get; init; }

    public required bool[] CutBefore { get; init; }

    /// <summary>Size of the analysed picture, px.</summary>
    public required int WidthPx { get; init; }

    public required int HeightPx { get; init; }

    /// <summary>What the decoder could not read.</summary>
    public IReadOnlyList<LeftOut> Unread { get; init; } = [];

    /// <summary>How it was read.</summary>
    public ReadSettings Read { get; init; } = new();
}
