namespace GaitSeat.Studio;

/// <summary>A helper on the ground.</summary>
public enum Bystander
{
    None,

    /// <summary>Stands beyond the track.</summary>
    Behind,

    /// <summary>Stands between camera and track, so that the rider passes behind.</summary>
    InFront,
}
