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

    public Cells Without(int term, int level) => new([.. List.Where(c => c.Levels[term] != level)], Width);
}
