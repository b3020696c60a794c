namespace GaitSeat.Study.Mixed.Solving;

/// <summary>One level of a factor other than the lead: and where its columns stand in its part.</summary>
/// <param name="rank">Place of its factor among those other than the lead.</param>
/// <param name="index">Number of the node.</param>
internal sealed class Node(int index, int term, int rank, int level, int width)
{
    public int Index { get; } = index;

    public int Term { get; } = term;

    public int Rank { get; } = rank;

    public int Level { get; } = level;

    public int Width { get; } = width;

    public int Part { get; set; }

    public int Offset { get; set; }

    /// <summary>First column of the part that its rows reach.</summary>
    public int First { get; set; }
}

/// <summary>Cross products of a node's columns with those of a lead level, or of another node; rows are the node's.</summary>
internal sealed record Link(Node Node, double[] Block);

/// <summary>One level of the lead factor.</summary>
/// <param name="Own">width × width.</param>
/// <param name="Border">(fixed + outcome) × width.</param>
internal sealed record LeadLevel(double[] Own, double[] Border, List<Link> Links)
{
    public LeadLevel(int width, int bordered)
        : this(new double[width * width], new double[bordered * width], [])
    {
    }

    /// <summary>With numbers of its own.</summary>
    public LeadLevel Copy() => new([.. Own], [.. Border], [.. Links.Select(l => l with { Block = [.. l.Block] })]);
}
