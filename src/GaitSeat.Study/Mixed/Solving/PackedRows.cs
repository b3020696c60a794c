namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// The rows of all columns, one after the other and sorted by cell: summing up a million rows then walks through memory once instead of jumping between thirty thousand cells.
/// </summary>
internal sealed class PackedRows
{
    private readonly double[] _rows;
    private readonly int[] _original;
    private readonly int[] _starts;
    private readonly int[][] _levels;

    public PackedRows(Scaling scaling, CellIndex index)
    {
        _levels = index.Levels;
        Width = scaling.Columns.Length;
        _starts = Starts(index);
        _original = new int[index.CellOf.Length];
        _rows = new double[index.CellOf.Length * Width];
        var next = (int[])_starts.Clone();
        for (var i = 0; i < _original.Length; i++) _original[next[index.CellOf[i]]++] = i;
        for (var c = 0; c < Width; c++)
            for (var i = 0; i < _original.Length; i++) _rows[i * Width + c] = scaling.Columns[c][_original[i]];
    }

    public int Width { get; }

    /// <param name="weights">Weight of each row in the order of the data, or nothing.</param>
    public Cells Sum(double[]? weights)
    {
        var cells = new Cell[_levels.Length];
        // Each cell is summed by one thread in the order of its rows, so that the sums do not depend on how many threads there are.
        Parallel.For(0, cells.Length, c => cells[c] = Sum(c, weights));
        return new(cells, Width);
    }

    private Cell Sum(int c, double[]? weights)
    {
        var cell = new Cell(_levels[c], new double[Width * Width]) { Rows = _starts[c + 1] - _starts[c] };
        for (var i = _starts[c]; i < _starts[c + 1]; i++)
        {
            var weight = weights is null ? 1 : weights[_original[i]];
            Add(cell.Gram, _rows.AsSpan(i * Width, Width), weight);
            if (weights is not null) cell.SumLogWeight += Math.Log(weight);
        }

        return cell;
    }

    private static void Add(double[] gram, ReadOnlySpan<double> row, double weight)
    {
        for (var a = 0; a < row.Length; a++)
        {
            var scaled = weight * row[a];
            var target = gram.AsSpan(a * row.Length, a + 1);
            for (var b = 0; b < target.Length; b++) target[b] += scaled * row[b];
        }
    }

    private static int[] Starts(CellIndex index)
    {
        var starts = new int[index.Levels.Length + 1];
        foreach (var cell in index.CellOf) starts[cell + 1]++;
        for (var c = 0; c < index.Levels.Length; c++) starts[c + 1] += starts[c];
        return starts;
    }
}
