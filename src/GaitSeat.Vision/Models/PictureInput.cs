namespace GaitSeat.Vision.Models;

/// <summary>How a user's model takes its picture.</summary>
/// <param name="IsPlanar">Channels first, [N,3,H,W]; else last, [N,H,W,3].</param>
public sealed record PictureInput(int WidthPx, int HeightPx, bool IsPlanar)
{
    private const int Channels = 3;

    // ImageNet's mean and deviation of R, G, B on 0..255, as torchvision and MMPose state them (from memory).
    private static readonly float[] Mean = [123.675f, 116.28f, 103.53f];
    private static readonly float[] Deviation = [58.395f, 57.12f, 57.375f];

    /// <summary>The form of an input shape, or null if it is no picture's.</summary>
    public static PictureInput? Of(IReadOnlyList<int> shape)
    {
        ArgumentNullException.ThrowIfNull(shape);
        return shape switch
        {
            [<= 1, Channels, > Channels and var height, > Channels and var width] => new PictureInput(width, height, IsPlanar: true),
            [<= 1, > Channels and var height, > Channels and var width, Channels] => new PictureInput(width, height, IsPlanar: false),
            _ => null,
        };
    }

    /// <summary>Writes one picture (R, G, B of each pixel, rows top to bottom) as the model wants it.</summary>
    /// <exception cref="ArgumentException">A span is not of 3 times width times height.</exception>
    public void Write(ReadOnlySpan<byte> rgb, Span<float> input)
    {
        var pixels = WidthPx * HeightPx;
        if (rgb.Length != Channels * pixels) throw new ArgumentException($"found {rgb.Length} bytes; expected {Channels * pixels}", nameof(rgb));
        if (input.Length != rgb.Length) throw new ArgumentException($"found room for {input.Length} numbers; expected {rgb.Length}", nameof(input));
        for (var i = 0; i < pixels; i++)
        {
            for (var c = 0; c < Channels; c++)
            {
                input[IsPlanar ? c * pixels + i : Channels * i + c] = (rgb[Channels * i + c] - Mean[c]) / Deviation[c];
            }
        }
    }
}
