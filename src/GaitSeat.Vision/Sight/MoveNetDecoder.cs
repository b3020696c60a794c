namespace GaitSeat.Vision.Sight;

/// <summary>The four maps of MoveNet, channel last. <paramref name="grid"/> cells a side.</summary>
public readonly ref struct MoveNetMaps(
    ReadOnlySpan<float> heat, ReadOnlySpan<float> centre, ReadOnlySpan<float> regress, ReadOnlySpan<float> offset, int grid)
{
    public ReadOnlySpan<float> Heat { get; } = heat;

    public ReadOnlySpan<float> Centre { get; } = centre;

    public ReadOnlySpan<float> Regress { get; } = regress;

    public ReadOnlySpan<float> Offset { get; } = offset;

    public int Grid { get; } = grid;
}

/// <summary>
/// Finds one person's points in MoveNet's maps, as the published graph does: the person's centre nearest the middle of the crop, points
/// regressed from there, each moved to the strongest heat near it, then to its sub-cell offset.
/// </summary>
public static class MoveNetDecoder
{
    /// <summary>Input pixels a cell.</summary>
    public const int CellPx = 4;

    // The graph divides centre score and heat by (distance in cells + 1.8): read from its constants.
    private const float DistanceSoftness = 1.8f;

    public static RawPoints Decode(MoveNetMaps maps, CropTransform crop)
    {
        const int Points = PointOrder.CocoCount;
        ArgumentOutOfRangeException.ThrowIfNotEqual(maps.Heat.Length, maps.Grid * maps.Grid * Points);
        ArgumentOutOfRangeException.ThrowIfNotEqual(maps.Offset.Length, maps.Heat.Length * 2);
        var person = StrongestNear(maps.Centre, 0, 1, maps.Grid, maps.Grid / 2, maps.Grid / 2);
        var found = RawPoints.OfCount(Points);
        for (var k = 0; k < Points; k++)
        {
            var at = (person * Points + k) * 2;
            float y = person / maps.Grid + maps.Regress[at], x = person % maps.Grid + maps.Regress[at + 1];
            var cell = StrongestNear(maps.Heat, k, Points, maps.Grid, x, y);
            var o = (cell * Points + k) * 2;
            var p = crop.ToPicture((cell % maps.Grid + maps.Offset[o + 1]) * CellPx, (cell / maps.Grid + maps.Offset[o]) * CellPx);
            (found.X[k], found.Y[k], found.Score[k]) = ((float)p.X, (float)p.Y, maps.Heat[cell * Points + k]);
        }

        return found;
    }

    private static int StrongestNear(ReadOnlySpan<float> map, int channel, int channels, int grid, float x, float y)
    {
        var best = 0;
        var most = float.NegativeInfinity;
        for (var row = 0; row < grid; row++)
        {
            var dy = row - y;
            for (var column = 0; column < grid; column++)
            {
                var value = map[(row * grid + column) * channels + channel];
                // Dividing only shrinks: what is not above the best already cannot win.
                if (value <= most * DistanceSoftness) continue;
                var dx = column - x;
                value /= MathF.Sqrt(dx * dx + dy * dy) + DistanceSoftness;
                if (value <= most) continue;
                most = value;
                best = row * grid + column;
            }
        }

        return best;
    }
}
