namespace GaitSeat.Motion.Gaits;

/// <summary>The likeliest course of gaits through the windows (Viterbi): each window pleads, each change costs.</summary>
internal static class GaitPath
{
    /// <param name="evidence">By window, then by gait; above 0.</param>
    /// <returns>The gait's index per window.</returns>
    public static int[] Best(IReadOnlyList<double[]> evidence, double switchCost)
    {
        if (evidence.Count == 0) return [];
        var gaits = evidence[0].Length;
        var from = new int[evidence.Count, gaits];
        var score = Logs(evidence[0]);
        for (var w = 1; w < evidence.Count; w++)
        {
            var best = Array.IndexOf(score, score.Max());
            var next = Logs(evidence[w]);
            for (var g = 0; g < gaits; g++)
            {
                var stays = score[g] >= score[best] - switchCost;
                from[w, g] = stays ? g : best;
                next[g] += stays ? score[g] : score[best] - switchCost;
            }

            score = next;
        }

        var path = new int[evidence.Count];
        path[^1] = Array.IndexOf(score, score.Max());
        for (var w = path.Length - 1; w > 0; w--) path[w - 1] = from[w, path[w]];
        return path;
    }

    private static double[] Logs(double[] evidence) => [.. evidence.Select(e => Math.Log(e))];
}
