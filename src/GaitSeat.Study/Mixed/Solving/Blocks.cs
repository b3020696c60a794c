namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// The cross products as blocks. The lead factor (the one with most columns) is block-diagonal and is eliminated level by level; what is left of the others
/// hangs together only through shared lead levels or cells, so it falls into parts, each small where factors are nested and one where they are crossed.
/// </summary>
internal sealed class Blocks
{
    private readonly Dictionary<(int Term, int Level), Node> _nodes;
    private readonly Dictionary<(Node Low, Node High), double[]> _pairs;
    private readonly List<double[]> _nodeBorders;

    public Blocks(Scaling scaling, Cells cells, IReadOnlyList<int> levelCounts, int maxEntries)
    {
        (Scaling, Cells, _nodes, _pairs, _nodeBorders) = (scaling, cells, [], [], []);
        Bordered = scaling.FixedCount + 1;
        Lead = Enumerable.Range(0, levelCounts.Count).MaxBy(t => (long)levelCounts[t] * scaling.Slopes[t].Width);
        // Within a part the factors with many levels come first: their rows are short, and the few that hang all together stand last.
        Rest = [.. Enumerable.Range(0, levelCounts.Count).Where(t => t != Lead).OrderByDescending(t => (long)levelCounts[t] * scaling.Slopes[t].Width)];
        LeadLevels = [.. Enumerable.Range(0, levelCounts[Lead]).Select(_ => new LeadLevel(LeadWidth, Bordered))];
        Border = new double[Bordered * Bordered];
        foreach (var cell in cells.List) Add(cell, 1);
        PartRows = Parts.Assign(_nodes.Values, LeadLevels, _pairs.Keys);
        var entries = PartRows.Sum(p => p.Select((first, i) => (long)i - first + 1).Sum());
        if (entries > maxEntries)
            throw new StudyException(StudyProblem.TooLarge,
                $"crossed factors need a matrix of {entries} entries; up to {maxEntries} are allowed (max_crossed_entries). Nest the factor in the rider, or leave out rare levels");
    }

    /// <summary>The same blocks without some cells: what these touch is copied and taken away from, the rest is shared.</summary>
    private Blocks(Blocks all, Cells left, IReadOnlyList<Cell> removed)
    {
        (Scaling, Cells, Bordered, Lead, Rest, PartRows) = (all.Scaling, left, all.Bordered, all.Lead, all.Rest, all.PartRows);
        (_nodes, _pairs, _nodeBorders) = (all._nodes, new(all._pairs), [.. all._nodeBorders]);
        (LeadLevels, Border) = ([.. all.LeadLevels], [.. all.Border]);
        foreach (var lead in removed.Select(c => c.Levels[Lead]).Distinct()) LeadLevels[lead] = LeadLevels[lead].Copy();
        foreach (var node in removed.SelectMany(NodesOf).Distinct()) _nodeBorders[node.Index] = [.. _nodeBorders[node.Index]];
        foreach (var pair in removed.SelectMany(c => PairsOf(NodesOf(c))).Distinct()) _pairs[pair] = [.. _pairs[pair]];
        foreach (var cell in removed) Add(cell, -1);
    }

    public Scaling Scaling { get; }

    public Cells Cells { get; }

    public int Lead { get; }

    public int LeadWidth => Scaling.Slopes[Lead].Width;

    /// <summary>The other factors, in the order of their ranks.</summary>
    public int[] Rest { get; }

    /// <summary>Fixed effects and outcome together.</summary>
    public int Bordered { get; }

    public LeadLevel[] LeadLevels { get; }

    public IReadOnlyCollection<Node> Nodes => _nodes.Values;

    /// <summary>Blocks among nodes of one part; the high node stands at the same offset or above in the matrix.</summary>
    public IEnumerable<(Node Low, Node High, double[] Block)> Pairs => _pairs.Select(p => (p.Key.Low, p.Key.High, p.Value));

    /// <summary>For each part the first column that each row reaches.</summary>
    public int[][] PartRows { get; }

    /// <summary>Cross products of fixed effects and outcome, full square.</summary>
    public double[] Border { get; }

    public Node? NodeOf(int term, int level) => _nodes.GetValueOrDefault((term, level));

    /// <summary>A node's cross products with fixed effects and outcome, (fixed + outcome) × width.</summary>
    public double[] BorderOf(Node node) => _nodeBorders[node.Index];

    public Blocks Without(int term, int level) =>
        new(this, Cells.Without(term, level), [.. Cells.List.Where(c => c.Levels[term] == level)]);

    private void Add(Cell cell, int sign)
    {
        var lead = LeadLevels[cell.Levels[Lead]];
        var start = Scaling.TermStarts[Lead];
        AddBlock(lead.Own, cell, sign, start, LeadWidth, start, LeadWidth);
        AddBlock(lead.Border, cell, sign, Scaling.FixedStart, Bordered, start, LeadWidth);
        AddBlock(Border, cell, sign, Scaling.FixedStart, Bordered, Scaling.FixedStart, Bordered);
        var nodes = NodesOf(cell);
        foreach (var node in nodes)
        {
            AddBlock(_nodeBorders[node.Index], cell, sign, Scaling.FixedStart, Bordered, Scaling.TermStarts[node.Term], node.Width);
            AddBlock(LinkFor(lead, node), cell, sign, Scaling.TermStarts[node.Term], node.Width, start, LeadWidth);
        }

        foreach (var (low, high) in PairsOf(nodes))
            AddBlock(PairFor(low, high), cell, sign, Scaling.TermStarts[low.Term], low.Width, Scaling.TermStarts[high.Term], high.Width);
    }

    private Node[] NodesOf(Cell cell) => [.. Rest.Select((t, rank) => NodeFor(t, rank, cell.Levels[t]))];

    private static IEnumerable<(Node Low, Node High)> PairsOf(Node[] nodes)
    {
        for (var i = 0; i < nodes.Length; i++)
            for (var j = 0; j <= i; j++) yield return (nodes[i], nodes[j]);
    }

    private Node NodeFor(int term, int rank, int level)
    {
        if (_nodes.TryGetValue((term, level), out var node)) return node;
        _nodes.Add((term, level), node = new(_nodes.Count, term, rank, level, Scaling.Slopes[term].Width));
        _nodeBorders.Add(new double[Bordered * node.Width]);
        return node;
    }

    private double[] LinkFor(LeadLevel lead, Node node)
    {
        if (lead.Links.Find(l => l.Node == node) is not { } link) lead.Links.Add(link = new(node, new double[node.Width * LeadWidth]));
        return link.Block;
    }

    private double[] PairFor(Node low, Node high)
    {
        if (!_pairs.TryGetValue((low, high), out var block)) _pairs.Add((low, high), block = new double[low.Width * high.Width]);
        return block;
    }

    private void AddBlock(double[] block, Cell cell, int sign, int rowStart, int rows, int columnStart, int columns)
    {
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                var (a, b) = (rowStart + i, columnStart + j);
                block[i * columns + j] += sign * (a >= b ? cell.Gram[a * Cells.Width + b] : cell.Gram[b * Cells.Width + a]);
            }
        }
    }
}
