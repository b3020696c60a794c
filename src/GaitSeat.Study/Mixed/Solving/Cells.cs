namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// Rows that share their levels in every grouping factor, summed up once: the weighted cross products of all columns are all that the likelihood needs,
/// so that what follows costs by the cell and not by the row.
/// </summary>
/// <param name="Levels">Level in each term.</param>
/// <param name="Gram">Cross products, width × width, lower triangle filled.</param>
internal sealed record Cell(int[] Levels, double[] Gram)
{
    public int Rows { get; set; }

    public double SumLogWeight { get; set; }
}

/// <summary>All cells of a model.</summary>
internal sealed record Cells(IReadOnlyList<Cell> List, int Width)
{
    public int Rows { get; } = List.Sum(c => c.Rows);

    public double SumLogWeight { get; } = List.Sum(c => c.SumLogWeight);

    /// <param name="index">Cell of each row.</param>
    /// <param name="weights">Weight of each row, or nothing.</param>
    public static Cells Of(Scaling scaling, CellIndex index, ReadOnlySpan<double> weights)
    {
        var width = scaling.Columns.Length;
        var cells = index.Levels.Select(l => new Cell(l, new double[width * width])).ToArray();
        var row = new double[width];
        for (var i = 0; i < index.CellOf.Length; i++)
        {
            var weight = weights.IsEmpty ? 1 : weights[i];
            for (var c = 0; c < width; c++) row[c] = scaling.Columns[c][i];
            var cell = cells[index.CellOf[i]];
            Add(cell.Gram, row, weight);
            cell.Rows++;
            if (!weights.IsEmpty) cell.SumLogWeight += Math.Log(weight);
        }

        return new(cells, width);
    }

    public Cells Without(int term, int level) => new([.. List.Where(c => c.Levels[term] != level)], Width);

    private static void Add(double[] gram, double[] row, double weight)
    {
        for (var a = 0; a < row.Length; a++)
        {
            var scaled = weight * row[a];
            var start = a * row.Length;
            for (var b = 0; b <= a; b++) gram[start + b] += scaled * row[b];
        }
    }
}
