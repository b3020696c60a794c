using SkiaSharp;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>Where a time and a seat height lie in the strip.</summary>
internal sealed record StripPlot(SKRect Area, (double Start, double End) Time, (double Low, double High) Range)
{
    /// <summary>The stretch of time shown: around now, but not beyond the ends of the clip, and the whole of a short clip.</summary>
    public static (double Start, double End) Window(double now, double first, double last, double length)
    {
        var start = Math.Max(first, Math.Min(now - length / 2, last - length));
        return (start, start + Math.Min(length, Math.Max(last - first, double.Epsilon)));
    }

    /// <summary>Index of the first time at or after the given one.</summary>
    public static int FirstAt(double[] times, double time)
    {
        var at = Array.BinarySearch(times, time);
        return at < 0 ? ~at : at;
    }

    public bool Shows(double time) => time >= Time.Start && time <= Time.End;

    public float X(double time) => Area.Left + (float)((time - Time.Start) / (Time.End - Time.Start)) * Area.Width;

    public float Y(double value) => Area.Bottom - (float)((value - Range.Low) / (Range.High - Range.Low)) * Area.Height;
}
