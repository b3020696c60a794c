using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>The random effects' conditional modes (BLUPs), by back substitution.</summary>
internal static class Effects
{
    /// <summary>Term × level × column, in the units of the data.</summary>
    public static double[][][] Of(Solution solution)
    {
        var factored = solution.Factored;
        var blocks = factored.Blocks;
        var parts = PartEffects(factored);
        return [.. solution.Data.Random.Select((term, t) => Enumerable.Range(0, term.Groups.Levels.Count)
            .Select(level => ToOriginal(solution, t, t == blocks.Lead ? LeadEffects(factored, level, parts) : NodeEffects(blocks.NodeOf(t, level), parts))).ToArray())];
    }

    private static double[][] PartEffects(Factored factored)
    {
        var result = new double[factored.Parts.Length][];
        for (var p = 0; p < result.Length; p++)
        {
            result[p] = Rest(factored, factored.PartBorders[p], factored.Parts[p].Size);
            factored.Parts[p].SolveUpper(result[p]);
        }

        return result;
    }

    private static double[] LeadEffects(Factored factored, int level, double[][] parts)
    {
        var width = factored.Blocks.LeadWidth;
        var u = Rest(factored, factored.LeadBorders[level], width);
        var links = factored.Blocks.LeadLevels[level].Links;
        for (var k = 0; k < links.Count; k++)
            for (var i = 0; i < links[k].Node.Width; i++)
                Dense.AddScaled(u, -parts[links[k].Node.Part][links[k].Node.Offset + i], factored.LeadLinks[level][k].AsSpan(i * width, width));
        Dense.SolveUpper(factored.LeadFactors[level], width, u);
        return u;
    }

    private static double[] NodeEffects(Node? node, double[][] parts) => node is null ? [] : parts[node.Part].AsSpan(node.Offset, node.Width).ToArray();

    /// <summary>The outcome's row of a solved border less what the fixed effects explain.</summary>
    private static double[] Rest(Factored factored, double[] border, int size)
    {
        var effects = FixedPart.Effects(factored);
        var rest = border.AsSpan(effects.Length * size, size).ToArray();
        for (var j = 0; j < effects.Length; j++) Dense.AddScaled(rest, -effects[j], border.AsSpan(j * size, size));
        return rest;
    }

    private static double[] ToOriginal(Solution solution, int term, double[] u)
    {
        var slopes = solution.Scaling.Slopes[term];
        if (u.Length == 0) return new double[slopes.Width];
        var lambda = solution.Factored.Lambdas[term];
        var scaled = new double[slopes.Width];
        for (var i = 0; i < slopes.Width; i++)
            for (var j = 0; j <= i; j++) scaled[i] += lambda[i * slopes.Width + j] * u[j];
        return Array.ConvertAll(slopes.ToOriginal(scaled), v => v * solution.Scaling.OutcomeScale);
    }
}
