namespace GaitSeat.Studio;

/// <summary>What the camera does.</summary>
public enum CameraWork
{
    /// <summary>The camera stands still; the horse crosses the picture on a straight line.</summary>
    Static,

    /// <summary>The camera turns with the horse, which goes on a circle around it; with a little lag and unsteadiness of the hand.</summary>
    Pan,
}
