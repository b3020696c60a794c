namespace GaitSeat.Studio;

/// <summary>What the camera does.</summary>
public enum CameraWork
{
    /// <summary>The camera stands still; the horse crosses the picture.</summary>
    Static,

    /// <summary>The camera turns with the horse, with a little lag and unsteadiness of the hand.</summary>
    Pan,

    /// <summary>As <see cref="Pan"/>; the lens is drawn longer as the horse goes away, so that the rider keeps most of the size.</summary>
    PanZoom,

    /// <summary>As <see cref="Pan"/>, from a hand that shakes: turns and shifts up to about 8 Hz.</summary>
    HandHeld,
}
