namespace GaitSeat.Review.Pictures;

/// <summary>Values to heights within a panel, with room above and below.</summary>
internal readonly record struct ValueScale(double Low, double High, double Top, double Bottom)
{
    private const double RoomShare = 0.12;

    /// <summary>Spans the finite ones among the values; a panel without any has the scale of 0 to 1.</summary>
    internal static ValueScale Over(IEnumerable<double> values, double top, double bottom, double leastSpan)
    {
        double[] finite = [.. values.Where(double.IsFinite)];
        if (finite.Length == 0) return new(0, 1, top, bottom);
        var (low, high) = (finite.Min(), finite.Max());
        var missing = Math.Max(0, leastSpan - (high - low)) / 2;
        var room = Math.Max(high - low, leastSpan) * RoomShare;
        return new(low - missing - room, high + missing + room, top, bottom);
    }

    internal double At(double value) => Bottom - (value - Low) / (High - Low) * (Bottom - Top);

    /// <summary>About three round values within the scale.</summary>
    internal IEnumerable<double> Ticks()
    {
        var rough = (High - Low) / 3;
        if (!(rough > 0) || !double.IsFinite(rough)) yield break;
        var power = Math.Pow(10, Math.Floor(Math.Log10(rough)));
        var step = power * (rough / power) switch { < 1.5 => 1, < 3.5 => 2, < 7.5 => 5, _ => 10 };
        for (var n = Math.Ceiling(Low / step); n * step <= High; n++) yield return n == 0 ? 0 : n * step;
    }
}
