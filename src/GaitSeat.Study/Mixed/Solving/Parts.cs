namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Nodes that share a lead level or a cell belong to one part; each part becomes one dense matrix.</summary>
internal static class Parts
{
    /// <summary>Sets part and offset of every node; returns the columns of each part. Within a part nodes stand in the order of term, then level.</summary>
    public static int[] Assign(IEnumerable<Node> nodes, IEnumerable<LeadLevel> leads, IEnumerable<(Node, Node)> pairs)
    {
        var ordered = nodes.OrderBy(n => n.Term).ThenBy(n => n.Level).ToArray();
        var parent = ordered.ToDictionary(n => n, n => n);
        foreach (var lead in leads)
            for (var i = 1; i < lead.Links.Count; i++) Join(parent, lead.Links[0].Node, lead.Links[i].Node);
        foreach (var (a, b) in pairs) Join(parent, a, b);
        var parts = ordered.GroupBy(n => Root(parent, n)).ToArray();
        var sizes = new int[parts.Length];
        for (var p = 0; p < parts.Length; p++)
        {
            foreach (var node in parts[p])
            {
                (node.Part, node.Offset) = (p, sizes[p]);
                sizes[p] += node.Width;
            }
        }

        return sizes;
    }

    private static Node Root(Dictionary<Node, Node> parent, Node node)
    {
        while (parent[node] != node) node = parent[node] = parent[parent[node]];
        return node;
    }

    private static void Join(Dictionary<Node, Node> parent, Node a, Node b) => parent[Root(parent, a)] = Root(parent, b);
}
