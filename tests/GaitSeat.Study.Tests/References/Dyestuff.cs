using GaitSeat.Study.Linear;
using GaitSeat.Study.Mixed;

namespace GaitSeat.Study.Tests.References;

/// <summary>
/// Yield of dyestuff, six batches of five: Davies OL, Goldsmith PL (1972) Statistical Methods in Research and Production, p. 130; and a made-up set whose spread between batches
/// is below that within: Box GEP, Tiao GC (1973) Bayesian Inference in Statistical Analysis, section 5.1.2. Both as given in R's lme4.
/// </summary>
internal static class Dyestuff
{
    public static readonly double[] Yield =
    [
        1545, 1440, 1440, 1520, 1580, 1540, 1555, 1490, 1560, 1495, 1595, 1550, 1605, 1510, 1560, 1445, 1440, 1595, 1465, 1545,
        1595, 1630, 1515, 1635, 1625, 1520, 1455, 1450, 1480, 1445,
    ];

    public static readonly double[] SecondYield =
    [
        7.298, 3.846, 2.434, 9.566, 7.99, 5.22, 6.556, 0.608, 11.788, -0.892, 0.11, 10.386, 13.434, 5.51, 8.166, 2.212, 4.852, 7.092, 9.288, 4.98,
        0.282, 9.014, 4.458, 9.446, 7.198, 1.722, 4.782, 8.106, 0.758, 3.758,
    ];

    public static MixedData Data(double[] yields)
    {
        var intercept = DesignColumn.Intercept(yields.Length);
        return new() { Outcome = yields, Fixed = [intercept], Random = [new(Grouping.Of("batch", [.. yields.Select((_, i) => $"batch {i / 5}")]), [intercept])] };
    }
}
