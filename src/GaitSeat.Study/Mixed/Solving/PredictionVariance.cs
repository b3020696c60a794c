using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed.Solving;

/// <summary>Variance of x'β + z'b for one level of one term, from the inverse of Henderson's mixed-model equations: |L⁻¹t|² σ², t the target's weights.</summary>
/// <param name="Random">Of z'b were β known (lme4's condVar).</param>
/// <param name="Fixed">What not knowing β adds.</param>
internal readonly record struct PredictionVariance(double Random, double Fixed)
{
    public static PredictionVariance Of(Solution solution, ReadOnlySpan<double> fixedRow, int term, int level, ReadOnlySpan<double> randomRow)
    {
        var factored = solution.Factored;
        var blocks = factored.Blocks;
        var weights = solution.Scaling.Basis.ToCoordinates(fixedRow);
        var slopes = solution.Scaling.Slopes[term];
        var own = new double[slopes.Width];
        SmallMatrix.LowerTransposeTimes(factored.Lambdas[term], slopes.Width, slopes.RowToScaled(randomRow), 1, own);
        var random = term == blocks.Lead ? Lead(factored, level, own, weights) : NodePart(factored, blocks.NodeOf(term, level), own, weights);
        var variance = solution.ResidualSd * solution.ResidualSd;
        return new(variance * random, variance * FixedPart.Variance(factored, weights));
    }

    private static double Lead(Factored factored, int level, double[] own, double[] weights)
    {
        var width = own.Length;
        Dense.SolveLower(factored.LeadFactors[level], width, own);
        TakeOut(weights, factored.LeadBorders[level], own);
        var links = factored.Blocks.LeadLevels[level].Links;
        var random = Dense.Dot(own, own);
        if (links.Count == 0) return random;
        var part = new double[factored.Parts[links[0].Node.Part].Size];
        for (var k = 0; k < links.Count; k++)
            for (var i = 0; i < links[k].Node.Width; i++)
                part[links[k].Node.Offset + i] -= Dense.Dot(factored.LeadLinks[level][k].AsSpan(i * width, width), own);
        return random + Part(factored, links[0].Node.Part, part, weights);
    }

    private static double NodePart(Factored factored, Node? node, double[] own, double[] weights)
    {
        if (node is null) return Dense.Dot(own, own);
        var part = new double[factored.Parts[node.Part].Size];
        own.CopyTo(part, node.Offset);
        return Part(factored, node.Part, part, weights);
    }

    private static double Part(Factored factored, int p, double[] part, double[] weights)
    {
        factored.Parts[p].SolveLower(part);
        TakeOut(weights, factored.PartBorders[p], part);
        return Dense.Dot(part, part);
    }

    private static void TakeOut(double[] weights, double[] border, double[] solved)
    {
        for (var j = 0; j < weights.Length; j++) weights[j] -= Dense.Dot(solved, border.AsSpan(j * solved.Length, solved.Length));
    }
}
