namespace GaitSeat.Studio.Accuracy;

/// <summary>Which measured inputs of the maths are replaced by the true ones.</summary>
[Flags]
public enum Swap
{
    None = 0,

    /// <summary>Body points: the true joint centres where the model saw the point at all.</summary>
    Points = 1,

    /// <summary>Centimetres per pixel.</summary>
    Scale = 2,

    /// <summary>The trunk anchor and the camera's vertical motion.</summary>
    Anchor = 4,

    /// <summary>The turn out of the picture plane.</summary>
    Yaw = 8,

    All = Points | Scale | Anchor | Yaw,
}
