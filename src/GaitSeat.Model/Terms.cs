using System.Text.Json;

namespace GaitSeat.Model;

/// <summary>The gait of a spell. Only rising trot is cut into strides; the others are told apart and kept.</summary>
public enum Gait
{
    Unknown,
    Halt,
    Walk,
    RisingTrot,
    SittingTrot,
    Canter,
}

/// <summary>The side of the picture the horse moves towards. Right shows the rider's right side.</summary>
public enum Facing
{
    Unknown,
    Left,
    Right,
}

/// <summary>Body points of the near side (the side that faces the camera), plus the two far ones that tell the view yaw.</summary>
public enum BodyPoint
{
    Nose,
    Ear,
    Shoulder,
    Elbow,
    Wrist,
    Hip,
    Knee,
    Ankle,
    Heel,
    Toe,
    FarShoulder,
    FarHip,
}

/// <summary>The written form of the terms: what stands in tables, files and on screen.</summary>
public static class Terms
{
    /// <summary>snake_case of the member's name: <c>RisingTrot</c> is <c>rising_trot</c>.</summary>
    public static string ToTerm<T>(this T value)
        where T : struct, Enum => JsonNamingPolicy.SnakeCaseLower.ConvertName(value.ToString());

    /// <summary>Null where the side is unknown.</summary>
    public static string? ToTerm(this Facing facing) => facing switch
    {
        Facing.Left => "left",
        Facing.Right => "right",
        _ => null,
    };
}
