using GaitSeat.Model;

namespace GaitSeat.Vision.Sight;

/// <summary>One level of the detector's output: a grid of cells with class scores and, for each box edge, a distribution over its distance.</summary>
/// <param name="scores">Cells x classes, 0..1.</param>
/// <param name="distances">Cells x 4 edges (left, top, right, bottom) x <see cref="NanoDetDecoder.Bins"/>, before softmax.</param>
/// <param name="stridePx">Size of a cell in the input, px.</param>
public readonly ref struct NanoDetLevel(ReadOnlySpan<float> scores, ReadOnlySpan<float> distances, int stridePx)
{
    public ReadOnlySpan<float> Scores { get; } = scores;

    public ReadOnlySpan<float> Distances { get; } = distances;

    public int StridePx { get; } = stridePx;
}

/// <summary>Turns the detector's output into boxes in the picture.</summary>
public static class NanoDetDecoder
{
    public const int InputPx = 416;
    public const int Classes = 80;

    /// <summary>Distances 0..10 cells: eleven bins an edge.</summary>
    public const int Bins = 11;

    // Places of the two classes we want in the COCO list.
    private const int PersonClass = 0;
    private const int HorseClass = 17;

    /// <summary>Adds the persons and horses of one level to <paramref name="found"/>.</summary>
    public static void Decode(NanoDetLevel level, CropTransform crop, double scoreMinimum, List<Detection> found)
    {
        ArgumentNullException.ThrowIfNull(found);
        var grid = InputPx / level.StridePx;
        ArgumentOutOfRangeException.ThrowIfNotEqual(level.Scores.Length, grid * grid * Classes);
        ArgumentOutOfRangeException.ThrowIfNotEqual(level.Distances.Length, grid * grid * 4 * Bins);
        for (var cell = 0; cell < grid * grid; cell++)
        {
            AddIfSeen(level, crop, cell, PersonClass, DetectedKind.Person, scoreMinimum, found);
            AddIfSeen(level, crop, cell, HorseClass, DetectedKind.Horse, scoreMinimum, found);
        }
    }

    private static void AddIfSeen(
        NanoDetLevel level, CropTransform crop, int cell, int label, DetectedKind kind, double scoreMinimum, List<Detection> found)
    {
        var score = level.Scores[cell * Classes + label];
        if (score >= scoreMinimum) found.Add(new(kind, BoxOf(level, crop, cell), score));
    }

    private static BoxPx BoxOf(NanoDetLevel level, CropTransform crop, int cell)
    {
        var grid = InputPx / level.StridePx;
        double x = (cell % grid + 0.5) * level.StridePx, y = (cell / grid + 0.5) * level.StridePx;
        Span<double> edge = stackalloc double[4];
        for (var k = 0; k < 4; k++)
            edge[k] = Expectation(level.Distances.Slice((cell * 4 + k) * Bins, Bins)) * level.StridePx;
        var topLeft = crop.ToPicture(x - edge[0], y - edge[1]);
        var lowRight = crop.ToPicture(x + edge[2], y + edge[3]);
        return new(topLeft.X, topLeft.Y, lowRight.X - topLeft.X, lowRight.Y - topLeft.Y);
    }

    /// <summary>Mean of 0, 1, 2... under the softmax of <paramref name="logits"/>.</summary>
    public static double Expectation(ReadOnlySpan<float> logits)
    {
        float top = float.NegativeInfinity;
        foreach (var v in logits) top = Math.Max(top, v);
        double weights = 0, sum = 0;
        for (var i = 0; i < logits.Length; i++)
        {
            var w = Math.Exp(logits[i] - top);
            weights += w;
            sum += w * i;
        }

        return sum / weights;
    }

    /// <summary>Keeps the best of each heap of overlapping boxes of one kind, best first.</summary>
    public static List<Detection> Distinct(IReadOnlyList<Detection> found, double overlapMaximum)
    {
        ArgumentNullException.ThrowIfNull(found);
        var kept = new List<Detection>();
        foreach (var d in found.OrderByDescending(d => d.Score))
            if (!kept.Exists(k => k.Kind == d.Kind && k.Box.Overlap(d.Box) > overlapMaximum)) kept.Add(d);
        return kept;
    }
}
