using System.Numerics;

namespace GaitSeat.Studio.Tests;

public sealed class ShutterTests
{
    private const int WidthPx = 16;

    [Fact]
    public void InstantsAreAveraged_AndWhereNothingIsDrawn_ThePictureStays()
    {
        byte[] before = [.. Enumerable.Range(0, 3 * WidthPx * 8).Select(i => (byte)(i % 251))];
        var after = before.ToArray();
        var shutter = new Shutter();
        // The first frame leaves the canvases written on.
        shutter.Expose(new(0, 0, WidthPx, 8), before.ToArray(), WidthPx, instants: 3, (_, canvas) => canvas.Row(2, 0, WidthPx).Fill(Vector4.One));
        shutter.Expose(new(2, 1, 12, 6), after, WidthPx, instants: 3, (i, canvas) => canvas.Row(y: 2, from: 3 + 2 * i, endExcl: 5 + 2 * i).Fill(new Vector4(0.2f * (i + 1))));
        for (var i = 0; i < after.Length; i++)
        {
            var (x, y) = (i / 3 % WidthPx - 2, i / 3 / WidthPx - 1);
            var instant = y == 2 && x is >= 3 and < 9 ? (x - 3) / 2 : -1;
            var expected = instant < 0 ? before[i] : (2 * before[i] + 255 * 0.2 * (instant + 1)) / 3;
            Assert.InRange(after[i] - expected, -0.51, 0.51);
        }
    }
}
