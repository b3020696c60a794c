namespace GaitSeat.Vision.Flow;

/// <summary>One level of a pyramid: brightness 0..255, row by row. The array is longer than the picture so that whole vectors may be read at its end.</summary>
internal sealed class GreyPicture(int width, int height)
{
    // The longest read past a row: one padded matching window.
    private const int ReadPastEnd = 2 * WindowMatcher.PaddedStride;

    public int Width { get; } = width;

    public int Height { get; } = height;

    public float[] Pixels { get; } = new float[(width * height) + ReadPastEnd];

    public Span<float> Row(int y) => Pixels.AsSpan(y * Width, Width);
}
