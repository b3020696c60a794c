using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Vision.Flow;

/// <summary>Settings of the optical flow behind the trunk anchor and the camera's motion.</summary>
public sealed record FlowSettings
{
    /// <summary>Pictures wider than this are reduced by a whole factor before they are followed, px. Own choice: rider 150 px tall and up keep enough detail.</summary>
    [Range(160, 3840)]
    public int WorkingWidthPx { get; init; } = 1280;
}
