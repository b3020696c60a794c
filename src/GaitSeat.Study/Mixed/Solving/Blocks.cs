namespace GaitSeat.Study.Mixed.Solving;

/// <summary>
/// The cross products as blocks. The lead factor (the one with most columns) is block-diagonal and is eliminated level by level; what is left of the others
/// hangs together only through shared lead levels or cells, so it falls into parts, each small where factors are nested and one where they are crossed.
/// </summary>
internal sealed class Blocks
{
    private readonly Dictionary<(int Term, int Level), Node> _nodes = [];
    private readonly Dictionary<(Node, Node), double[]> _pairs = [];

    public Blocks(Scaling scaling, Cells cells, IReadOnlyList<int> levelCounts, int maxEntries)
    {
        (Scaling, Cells) = (scaling, cells);
        Bordered = scaling.FixedCount + 1;
        Lead = Enumerable.Range(0, levelCounts.Count).MaxBy(t => (long)levelCounts[t] * scaling.Slopes[t].Width);
        // Within a part the factors with many levels come first: their rows are short, and the few that hang all together stand last.
        Rest = [.. Enumerable.Range(0, levelCounts.Count).Where(t => t != Lead).OrderByDescending(t => (long)levelCounts[t] * scaling.Slopes[t].Width)];
        LeadLevels = [.. Enumerable.Range(0, levelCounts[Lead]).Select(_ => new LeadLevel(LeadWidth, Bordered))];
        Border = new double[Bordered * Bordered];
        foreach (var cell in cells.List) Add(cell);
        PartRows = Parts.Assign(_nodes.Values, LeadLevels, _pairs.Keys);
        var entries = PartRows.Sum(p => p.Select((first, i) => (long)i - first + 1).Sum());
        if (entries > maxEntries)
            throw new StudyException(StudyProblem.TooLarge,
                $"crossed factors need a matrix of {entries} entries; up to {maxEntries} are allowed (max_crossed_entries). Nest the factor in the rider, or leave out rare levels");
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

    /// <summary>Blocks among nodes of one part; the first node stands at the same offset or lower in the matrix.</summary>
    public IEnumerable<(Node Low, Node High, double[] Block)> Pairs => _pairs.Select(p => (p.Key.Item1, p.Key.Item2, p.Value));

    /// <summary>For each part the first column that each row reaches.</summary>
    public int[][] PartRows { get; }

    /// <summary>Cross products of fixed effects and outcome, full square.</summary>
    public double[] Border { get; }

    public Node? NodeOf(int term, int level) => _nodes.GetValueOrDefault((term, level));

    private void Add(Cell cell)
    {
        var lead = LeadLevels[cell.Levels[Lead]];
        var start = Scaling.TermStarts[Lead];
        AddBlock(lead.Own, cell, start, LeadWidth, start, LeadWidth);
        AddBlock(lead.Border, cell, Scaling.FixedStart, Bordered, start, LeadWidth);
        AddBlock(Border, cell, Scaling.FixedStart, Bordered, Scaling.FixedStart, Bordered);
        var nodes = Rest.Select((t, rank) => NodeFor(t, rank, cell.Levels[t])).ToArray();
        foreach (var node in nodes)
        {
            AddBlock(node.Border, cell, Scaling.FixedStart, Bordered, Scaling.TermStarts[node.Term], node.Width);
            AddBlock(LinkFor(lead, node), cell, Scaling.TermStarts[node.Term], node.Width, start, LeadWidth);
            foreach (var other in nodes.TakeWhile(n => n != node).Append(node))
                AddBlock(PairFor(node, other), cell, Scaling.TermStarts[node.Term], node.Width, Scaling.TermStarts[other.Term], other.Width);
        }
    }

    private Node NodeFor(int term, int rank, int level)
    {
        if (!_nodes.TryGetValue((term, level), out var node)) _nodes.Add((term, level), node = new(term, rank, level, Scaling.Slopes[term].Width, Bordered));
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

    private static void AddBlock(double[] block, Cell cell, int rowStart, int rows, int columnStart, int columns)
    {
        var width = (int)Math.Sqrt(cell.Gram.Length);
        for (var i = 0; i < rows; i++)
        {
            for (var j = 0; j < columns; j++)
            {
                var (a, b) = (rowStart + i, columnStart + j);
                block[i * columns + j] += a >= b ? cell.Gram[a * width + b] : cell.Gram[b * width + a];
            }
        }
    }
}
