namespace GaitSeat.Vision.Models;

/// <summary>A point read from a heat map. Places are over the crop's width and height, 0..1; NaN where the map says nothing.</summary>
/// <param name="Score">Value of the map at its peak.</param>
public readonly record struct HeatmapPoint(double X, double Y, double Score);

/// <summary>Reads points from heat maps [points, rows, columns].</summary>
public static class HeatmapDecoder
{
    /// <summary>
    /// A peak is moved a quarter of a cell towards its higher neighbour: the usual reading of such maps (Newell, Yang, Deng 2016,
    /// "Stacked Hourglass Networks", section 3.3; cited from memory).
    /// </summary>
    private const double Quarter = 0.25;

    /// <param name="maps">Maps of one picture, one after the other, each rows times columns.</param>
    /// <param name="rows">Rows of a map.</param>
    /// <param name="columns">Columns of a map.</param>
    /// <param name="points">One a map.</param>
    /// <exception cref="ArgumentException"><paramref name="maps"/> is not as long as the points, rows and columns ask for.</exception>
    public static void Decode(ReadOnlySpan<float> maps, int rows, int columns, Span<HeatmapPoint> points)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(rows, 1);
        ArgumentOutOfRangeException.ThrowIfLessThan(columns, 1);
        if (maps.Length != points.Length * rows * columns)
        {
            throw new ArgumentException($"found {maps.Length} numbers; expected {points.Length} maps of {rows} x {columns}", nameof(maps));
        }

        for (var p = 0; p < points.Length; p++) points[p] = Peak(maps.Slice(p * rows * columns, rows * columns), rows, columns);
    }

    private static HeatmapPoint Peak(ReadOnlySpan<float> map, int rows, int columns)
    {
        var best = -1;
        for (var i = 0; i < map.Length; i++)
        {
            if (float.IsFinite(map[i]) && (best < 0 || map[i] > map[best])) best = i;
        }

        if (best < 0) return new HeatmapPoint(double.NaN, double.NaN, double.NaN);
        int x = best % columns, y = best / columns;
        var across = x > 0 && x < columns - 1 ? Quarter * Sign(map[best + 1] - map[best - 1]) : 0;
        var down = y > 0 && y < rows - 1 ? Quarter * Sign(map[best + columns] - map[best - columns]) : 0;
        return new HeatmapPoint((x + 0.5 + across) / columns, (y + 0.5 + down) / rows, map[best]);
    }

    private static int Sign(float difference) => difference > 0 ? 1 : difference < 0 ? -1 : 0;
}
