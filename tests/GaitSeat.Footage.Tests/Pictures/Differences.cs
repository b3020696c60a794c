using GaitSeat.Model;

namespace GaitSeat.Footage.Tests.Pictures;

/// <summary>Where two pictures of the same size differ.</summary>
internal static class Differences
{
    public static bool At(Frame a, byte[] before, int x, int y)
    {
        var at = (y * a.WidthPx + x) * 3;
        return !a.Rgb.Slice(at, 3).SequenceEqual(before.AsSpan(at, 3));
    }

    /// <summary>Changed pixels in a box.</summary>
    public static int Count(Frame a, byte[] before, BoxPx box)
    {
        var count = 0;
        for (var y = (int)Math.Max(0, box.Y); y < Math.Min(a.HeightPx, box.Bottom); y++)
        {
            for (var x = (int)Math.Max(0, box.X); x < Math.Min(a.WidthPx, box.Right); x++)
            {
                if (At(a, before, x, y)) count++;
            }
        }

        return count;
    }

    public static int Outside(Frame a, byte[] before, params BoxPx[] allowed)
    {
        var count = 0;
        for (var y = 0; y < a.HeightPx; y++)
        {
            for (var x = 0; x < a.WidthPx; x++)
            {
                if (At(a, before, x, y) && !allowed.Any(b => b.Contains(new(x + 0.5, y + 0.5)))) count++;
            }
        }

        return count;
    }

    /// <summary>Variance of the green channel in a box.</summary>
    public static double Variance(Frame frame, BoxPx box)
    {
        double sum = 0, squares = 0;
        var n = 0;
        for (var y = (int)box.Y; y < box.Bottom; y++)
        {
            for (var x = (int)box.X; x < box.Right; x++, n++)
            {
                double v = frame.Rgb[(y * frame.WidthPx + x) * 3 + 1];
                sum += v;
                squares += v * v;
            }
        }

        return squares / n - sum / n * (sum / n);
    }
}
