namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Nodes that share a lead level or a cell belong to one part; each part becomes one matrix.</summary>
internal static class Parts
{
    /// <summary>Sets the place of every node; returns for each part the first column that each row reaches. Within a part nodes stand in the order of rank, then level.</summary>
    public static int[][] Assign(IReadOnlyCollection<Node> nodes, IReadOnlyList<LeadLevel> leads, IReadOnlyCollection<(Node Low, Node High)> pairs)
    {
        var ordered = nodes.OrderBy(n => n.Rank).ThenBy(n => n.Level).ToArray();
        var parent = ordered.ToDictionary(n => n, n => n);
        foreach (var lead in leads)
            for (var i = 1; i < lead.Links.Count; i++) Join(parent, lead.Links[0].Node, lead.Links[i].Node);
        foreach (var (a, b) in pairs) Join(parent, a, b);
        var parts = ordered.GroupBy(n => Root(parent, n)).ToArray();
        for (var p = 0; p < parts.Length; p++)
        {
            var size = 0;
            foreach (var node in parts[p])
            {
                (node.Part, node.Offset, node.First) = (p, size, size);
                size += node.Width;
            }
        }

        foreach (var (low, high) in pairs) low.First = Math.Min(low.First, high.Offset);
        foreach (var lead in leads) Reach(lead);
        return [.. parts.Select(p => p.SelectMany(n => Enumerable.Repeat(n.First, n.Width)).ToArray())];
    }

    private static void Reach(LeadLevel lead)
    {
        if (lead.Links.Count == 0) return;
        var first = lead.Links.Min(l => l.Node.Offset);
        foreach (var link in lead.Links) link.Node.First = Math.Min(link.Node.First, first);
    }

    private static Node Root(Dictionary<Node, Node> parent, Node node)
    {
        while (parent[node] != node) node = parent[node] = parent[parent[node]];
        return node;
    }

    private static void Join(Dictionary<Node, Node> parent, Node a, Node b) => parent[Root(parent, a)] = Root(parent, b);
}
