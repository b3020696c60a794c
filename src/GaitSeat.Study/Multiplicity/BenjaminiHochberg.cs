namespace GaitSeat.Study.Multiplicity;

/// <summary>False discovery rate: Benjamini and Hochberg (1995), J R Stat Soc B 57:289-300, doi:10.1111/j.2517-6161.1995.tb02031.x.</summary>
public static class BenjaminiHochberg
{
    /// <summary>Adjusted p values in the order given: the smallest rate at which each question would be called.</summary>
    /// <exception cref="ArgumentOutOfRangeException">A value outside 0 to 1, or not a number.</exception>
    public static double[] Adjust(IReadOnlyList<double> pValues)
    {
        foreach (var p in pValues)
            if (!(p is >= 0 and <= 1)) throw new ArgumentOutOfRangeException(nameof(pValues), p, "0 to 1 is allowed");
        var adjusted = new double[pValues.Count];
        var smallest = 1.0;
        var rank = pValues.Count;
        foreach (var i in Enumerable.Range(0, pValues.Count).OrderByDescending(i => pValues[i]))
        {
            smallest = Math.Min(smallest, pValues[i] * pValues.Count / rank--);
            adjusted[i] = smallest;
        }

        return adjusted;
    }
}
