using GaitSeat.Model;

namespace GaitSeat.Vision.Tests.Flow;

/// <summary>Frames painted from a function of place (centre of each pixel) to brightness 0..255.</summary>
internal static class Pictures
{
    public static Frame Paint(int index, int width, int height, Func<double, double, double> brightness)
    {
        var frame = new Frame(index, index / 30.0, width, height);
        var rgb = frame.Memory;
        Parallel.For(0, height, new ParallelOptions { MaxDegreeOfParallelism = 2 }, y =>
        {
            var row = rgb.Span.Slice(y * width * 3, width * 3);
            for (var x = 0; x < width; x++) row.Slice(x * 3, 3).Fill((byte)Math.Clamp(Math.Round(brightness(x + 0.5, y + 0.5)), 0, 255));
        });
        return frame;
    }
}
