using GaitSeat.Model;

namespace GaitSeat.Footage;

/// <summary>How decoded frames keep their colours, see <see cref="Frame"/>.</summary>
public enum FrameColours
{
    /// <summary>Packed RGB, to draw on.</summary>
    Rgb,

    /// <summary>Brightness and colour differences as they are coded: half the bytes and no conversion, to measure in.</summary>
    Planes,
}
