using System.Numerics;

namespace GaitSeat.Studio;

/// <summary>The patch of the picture that is drawn on; colours 0..1, as they are in the picture until they are drawn over.</summary>
internal sealed class Canvas : PatchRows<Vector4>
{
    private byte[] _picture = [];
    private int _pictureWidthPx;

    public int X { get; private set; }

    public int Y { get; private set; }

    /// <summary>How many times over the picture is laid where it is not drawn on.</summary>
    public int Times { get; set; } = 1;

    /// <summary>What solids show in each pixel.</summary>
    public ClearedRows<Fragment> Fragments { get; } = new();

    /// <summary>Which card, counted from 1, hides those before it in each pixel; 0 for none.</summary>
    public ClearedRows<byte> Hiding { get; } = new();

    /// <param name="picture">The whole picture, packed RGB.</param>
    public void Begin(Patch patch, byte[] picture, int pictureWidthPx)
    {
        (X, Y, _picture, _pictureWidthPx) = (patch.X, patch.Y, picture, pictureWidthPx);
        Begin(patch.Width, patch.Height);
    }

    protected override void MakeReady(int y, int from, Span<Vector4> values)
    {
        var source = _picture.AsSpan(3 * ((Y + y) * _pictureWidthPx + X + from), 3 * values.Length);
        for (var x = 0; x < values.Length; x++)
        {
            var colour = RgbPixel.Read(source, 3 * x) * (1 / 255f);
            values[x] = Vector4.Zero;
            for (var i = 0; i < Times; i++) values[x] += colour;
        }
    }
}
