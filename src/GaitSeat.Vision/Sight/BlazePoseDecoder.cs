namespace GaitSeat.Vision.Sight;

/// <summary>Reads BlazePose's landmarks and moves each to the centroid of its heat map around it.</summary>
public static class BlazePoseDecoder
{
    /// <summary>Landmarks in the output: 33 of the body and 6 that only help the model's own tracking.</summary>
    public const int Landmarks = 39;

    /// <summary>x, y, z, visibility logit, presence logit.</summary>
    public const int Values = 5;

    /// <summary>Cells a side of the heat map.</summary>
    public const int Grid = 64;

    // 9 x 9 cells: the published graph's kernel size for the body landmarks.
    private const int HalfWindow = 4;

    /// <param name="landmarks"><see cref="Landmarks"/> x <see cref="Values"/>, input px.</param>
    /// <param name="heat">Grid x Grid x <see cref="Landmarks"/>, 0..1; empty to skip refinement.</param>
    /// <param name="peakMinimum">Peak in the window from which a landmark is moved.</param>
    public static RawPoints Decode(ReadOnlySpan<float> landmarks, ReadOnlySpan<float> heat, CropTransform crop, double peakMinimum)
    {
        ArgumentOutOfRangeException.ThrowIfNotEqual(landmarks.Length, Landmarks * Values);
        if (!heat.IsEmpty) ArgumentOutOfRangeException.ThrowIfNotEqual(heat.Length, Grid * Grid * Landmarks);
        var found = RawPoints.OfCount(PointOrder.BlazeCount);
        for (var k = 0; k < PointOrder.BlazeCount; k++)
        {
            var v = landmarks.Slice(k * Values, Values);
            double x = v[0], y = v[1];
            if (!heat.IsEmpty) Refine(heat, k, crop.InputPx, peakMinimum, ref x, ref y);
            var p = crop.ToPicture(x, y);
            (found.X[k], found.Y[k], found.Score[k]) = ((float)p.X, (float)p.Y, Sigmoid(v[3]) * Sigmoid(v[4]));
        }

        return found;
    }

    private static void Refine(ReadOnlySpan<float> heat, int landmark, int inputPx, double peakMinimum, ref double x, ref double y)
    {
        var cellPx = (double)inputPx / Grid;
        int column = (int)(x / cellPx), row = (int)(y / cellPx);
        if ((uint)column >= Grid || (uint)row >= Grid) return;
        double sum = 0, sumX = 0, sumY = 0, peak = 0;
        for (var r = Math.Max(0, row - HalfWindow); r <= Math.Min(Grid - 1, row + HalfWindow); r++)
        {
            for (var c = Math.Max(0, column - HalfWindow); c <= Math.Min(Grid - 1, column + HalfWindow); c++)
            {
                double h = heat[(r * Grid + c) * Landmarks + landmark];
                sum += h;
                sumX += h * c;
                sumY += h * r;
                peak = Math.Max(peak, h);
            }
        }

        if (peak < peakMinimum || sum <= 0) return;
        (x, y) = (CellCentre(sumX / sum) * cellPx, CellCentre(sumY / sum) * cellPx);
    }

    /// <summary>Where a cell's heat stands, in cells from the input's edge: the published graph reads index n as n.</summary>
    public static double CellCentre(double index) => index;

    private static float Sigmoid(float logit) => 1 / (1 + MathF.Exp(-logit));
}
