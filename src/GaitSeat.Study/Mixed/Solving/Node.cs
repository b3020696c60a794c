namespace GaitSeat.Study.Mixed.Solving;

/// <summary>One level of a factor other than the lead: where its columns stand in its part, and its cross products with the fixed effects and the outcome.</summary>
/// <param name="rank">Place of its factor among those other than the lead.</param>
internal sealed class Node(int term, int rank, int level, int width, int bordered)
{
    public int Term { get; } = term;

    public int Rank { get; } = rank;

    public int Level { get; } = level;

    public int Width { get; } = width;

    /// <summary>(fixed + outcome) × width.</summary>
    public double[] Border { get; } = new double[bordered * width];

    public int Part { get; set; }

    public int Offset { get; set; }

    /// <summary>First column of the part that its rows reach.</summary>
    public int First { get; set; }
}

/// <summary>Cross products of a node's columns with those of a lead level, or of another node; rows are the node's.</summary>
internal sealed record Link(Node Node, double[] Block);

/// <summary>One level of the lead factor.</summary>
internal sealed class LeadLevel(int width, int bordered)
{
    /// <summary>width × width.</summary>
    public double[] Own { get; } = new double[width * width];

    /// <summary>(fixed + outcome) × width.</summary>
    public double[] Border { get; } = new double[bordered * width];

    public List<Link> Links { get; } = [];
}
