namespace GaitSeat.Study.Mixed.Solving;

/// <summary>A first θ: the best of a coarse scan of one size for all terms, then of each term in turn. The likelihood can have its optimum at sizes that differ by orders of magnitude.</summary>
internal static class Start
{
    private static readonly double[] Sizes = [0.01, 0.03, 0.1, 0.3, 1, 3, 10];

    public static double[] Of(Scaling scaling, Func<double[], double> function)
    {
        var terms = new double[scaling.Slopes.Length];
        Array.Fill(terms, Sizes.MinBy(s => function(RelativeFactor.Diagonal(scaling, [.. terms.Select(_ => s)]))));
        for (var t = 0; t < terms.Length && terms.Length > 1; t++)
            terms[t] = Sizes.MinBy(s => function(RelativeFactor.Diagonal(scaling, With(terms, t, s))));
        return RelativeFactor.Diagonal(scaling, terms);
    }

    private static double[] With(double[] terms, int t, double size)
    {
        var changed = (double[])terms.Clone();
        changed[t] = size;
        return changed;
    }
}
