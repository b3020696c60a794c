using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// The penalised least-squares system of Bates et al. (2015, sections 3.2 to 3.4), factored by blocks at one θ.
/// All arrays are written over by the next <see cref="Update"/>.
/// </summary>
internal sealed class Factored
{
    private readonly Blocks _blocks;
    private readonly int _width;
    private readonly double[] _scratch;

    public Factored(Blocks blocks)
    {
        _blocks = blocks;
        _width = blocks.LeadWidth;
        var widest = blocks.Scaling.Slopes.Max(s => s.Width);
        _scratch = new double[Math.Max(widest, blocks.Bordered) * Math.Max(widest, blocks.Bordered)];
        LeadFactors = Per(blocks.LeadLevels, _ => _width * _width);
        LeadBorders = Per(blocks.LeadLevels, _ => blocks.Bordered * _width);
        LeadLinks = [.. blocks.LeadLevels.Select(l => Per(l.Links, k => k.Node.Width * _width))];
        Parts = [.. blocks.PartRows.Select(r => new Envelope(r))];
        PartBorders = Per(blocks.PartRows, r => blocks.Bordered * r.Length);
        Border = new double[blocks.Bordered * blocks.Bordered];
        Lambdas = [];
    }

    public Blocks Blocks => _blocks;

    public double[][] Lambdas { get; private set; }

    public double[][] LeadFactors { get; }

    /// <summary>Per lead level: (fixed + outcome) × width, solved against the factor.</summary>
    public double[][] LeadBorders { get; }

    public double[][][] LeadLinks { get; }

    public Envelope[] Parts { get; }

    public double[][] PartBorders { get; }

    /// <summary>Cholesky factor of what is left of fixed effects and outcome; its last diagonal squared is the penalised residual sum of squares.</summary>
    public double[] Border { get; }

    /// <summary>log |Λ'Z'WZΛ + I|.</summary>
    public double LogDetRandom { get; private set; }

    /// <summary>log |R_X'R_X|, in the units of the orthonormal columns.</summary>
    public double LogDetFixed { get; private set; }

    public double PenalisedSumSquares { get; private set; }

    public void Update(ReadOnlySpan<double> theta)
    {
        Lambdas = RelativeFactor.Of(_blocks.Scaling, theta);
        LogDetRandom = 0;
        _blocks.Border.CopyTo(Border, 0);
        StartParts();
        for (var r = 0; r < LeadFactors.Length; r++) EliminateLead(r);
        for (var p = 0; p < Parts.Length; p++) EliminatePart(p);
        FinishBorder();
    }

    private void StartParts()
    {
        foreach (var part in Parts) part.Reset();
        foreach (var (low, high, block) in _blocks.Pairs) AddPair(low, high, block);
        foreach (var node in _blocks.Nodes)
        {
            var size = Parts[node.Part].Size;
            var border = _scratch.AsSpan(0, _blocks.Bordered * node.Width);
            SmallMatrix.TimesLower(_blocks.BorderOf(node), _blocks.Bordered, Lambdas[node.Term], node.Width, border);
            for (var i = 0; i < _blocks.Bordered; i++) border.Slice(i * node.Width, node.Width).CopyTo(PartBorders[node.Part].AsSpan(i * size + node.Offset));
        }
    }

    /// <summary>Adds Λ' A Λ; where a node of a later term meets an earlier one the block stands below the diagonal.</summary>
    private void AddPair(Node low, Node high, double[] block)
    {
        Span<double> half = stackalloc double[low.Width * high.Width];
        Span<double> full = stackalloc double[low.Width * high.Width];
        SmallMatrix.TimesLower(block, low.Width, Lambdas[high.Term], high.Width, half);
        SmallMatrix.LowerTransposeTimes(Lambdas[low.Term], low.Width, half, high.Width, full);
        Parts[low.Part].Add(full, low.Width, high.Width, low.Offset, high.Offset);
    }

    private void EliminateLead(int r)
    {
        var level = _blocks.LeadLevels[r];
        var lambda = Lambdas[_blocks.Lead];
        var factor = LeadFactors[r];
        SmallMatrix.TimesLower(level.Own, _width, lambda, _width, _scratch);
        SmallMatrix.LowerTransposeTimes(lambda, _width, _scratch, _width, factor);
        for (var i = 0; i < _width; i++) factor[i * _width + i] += 1;
        LogDetRandom += 2 * Dense.Cholesky(factor, _width);
        Solve(level.Border, _blocks.Bordered, lambda, factor, LeadBorders[r]);
        SmallMatrix.SubtractSquare(LeadBorders[r], _blocks.Bordered, _width, Border);
        for (var k = 0; k < level.Links.Count; k++) EliminateLink(r, k, lambda, factor);
    }

    private void EliminateLink(int r, int k, double[] lambda, double[] factor)
    {
        var links = _blocks.LeadLevels[r].Links;
        var node = links[k].Node;
        var solved = LeadLinks[r][k];
        SmallMatrix.LowerTransposeTimes(Lambdas[node.Term], node.Width, links[k].Block, _width, solved);
        Solve(solved, node.Width, lambda, factor, solved);
        var size = Parts[node.Part].Size;
        SmallMatrix.SubtractOuter(LeadBorders[r], solved, _blocks.Bordered, node.Width, _width, PartBorders[node.Part], size, node.Offset);
        for (var m = 0; m <= k; m++)
        {
            var (below, above) = links[m].Node.Offset > node.Offset ? (m, k) : (k, m);
            Parts[node.Part].SubtractOuter(
                LeadLinks[r][below], LeadLinks[r][above], links[below].Node.Width, links[above].Node.Width, _width, links[below].Node.Offset, links[above].Node.Offset);
        }
    }

    /// <summary>A Λ L⁻ᵀ; may be done in place.</summary>
    private void Solve(double[] a, int rows, double[] lambda, double[] factor, double[] result)
    {
        SmallMatrix.TimesLower(a, rows, lambda, _width, result);
        for (var i = 0; i < rows; i++) Dense.SolveLower(factor, _width, result.AsSpan(i * _width, _width));
    }

    private void EliminatePart(int p)
    {
        var size = Parts[p].Size;
        LogDetRandom += 2 * Parts[p].Factor();
        for (var i = 0; i < _blocks.Bordered; i++) Parts[p].SolveLower(PartBorders[p].AsSpan(i * size, size));
        SmallMatrix.SubtractSquare(PartBorders[p], _blocks.Bordered, size, Border);
    }

    private void FinishBorder()
    {
        var all = Dense.Cholesky(Border, _blocks.Bordered);
        var last = Border[^1];
        LogDetFixed = 2 * (all - Math.Log(last));
        PenalisedSumSquares = double.IsNaN(all) ? double.NaN : last * last;
    }

    private static double[][] Per<T>(IReadOnlyCollection<T> items, Func<T, int> length) => [.. items.Select(i => new double[length(i)])];
}
