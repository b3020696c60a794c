namespace GaitSeat.Studio;

/// <summary>The way the horse takes.</summary>
public enum Way
{
    /// <summary>A line past a standing camera, a circle about a place near the camera for one that turns with the horse.</summary>
    Usual,

    /// <summary>A straight line; the turn out of the picture plane changes all along it.</summary>
    Line,

    /// <summary>Always at the same angle to the line of sight, nearer or further all the time.</summary>
    ConstantYaw,

    /// <summary>A circle with the camera in the middle of it, or nearly.</summary>
    CircleFromInside,

    /// <summary>A circle with the camera outside: the rider shows now one side, now the other.</summary>
    CircleFromOutside,
}
