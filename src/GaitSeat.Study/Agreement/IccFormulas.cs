using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Agreement;

/// <summary>Point estimates and F intervals of Shrout and Fleiss (1979, pp. 423-426); that of agreement by their equation for ρ(2,1), after Satterthwaite.</summary>
internal static class IccFormulas
{
    public static IccEstimate Of(RatingTable t, IccForm form, double level)
    {
        var value = Value(t, form);
        var (low, high) = Interval(t, form, (1 - level) / 2);
        return new(form, value, low, high);
    }

    private static double Value(RatingTable t, IccForm form)
    {
        double n = t.Targets, k = t.Judges;
        return form switch
        {
            IccForm.OneWaySingle => (t.BetweenTargets - t.Within) / (t.BetweenTargets + (k - 1) * t.Within),
            IccForm.AgreementSingle => (t.BetweenTargets - t.Residual) / (t.BetweenTargets + (k - 1) * t.Residual + k * (t.BetweenJudges - t.Residual) / n),
            IccForm.ConsistencySingle => (t.BetweenTargets - t.Residual) / (t.BetweenTargets + (k - 1) * t.Residual),
            IccForm.OneWayMean => (t.BetweenTargets - t.Within) / t.BetweenTargets,
            IccForm.AgreementMean => (t.BetweenTargets - t.Residual) / (t.BetweenTargets + (t.BetweenJudges - t.Residual) / n),
            IccForm.ConsistencyMean => (t.BetweenTargets - t.Residual) / t.BetweenTargets,
            _ => throw new ArgumentOutOfRangeException(nameof(form), form, null),
        };
    }

    private static (double Low, double High) Interval(RatingTable t, IccForm form, double tail)
    {
        int n = t.Targets, k = t.Judges;
        return form switch
        {
            IccForm.OneWaySingle => Single(Ratio(t.BetweenTargets / t.Within, n - 1, n * (k - 1), tail), k),
            IccForm.OneWayMean => Mean(Ratio(t.BetweenTargets / t.Within, n - 1, n * (k - 1), tail)),
            IccForm.ConsistencySingle => Single(Ratio(t.BetweenTargets / t.Residual, n - 1, (n - 1) * (k - 1), tail), k),
            IccForm.ConsistencyMean => Mean(Ratio(t.BetweenTargets / t.Residual, n - 1, (n - 1) * (k - 1), tail)),
            IccForm.AgreementSingle => Agreement(t, tail),
            _ => SteppedUp(Agreement(t, tail), k),
        };
    }

    private static (double Low, double High) Ratio(double f, int df1, int df2, double tail) =>
        (f / FisherQuantile.Of(df1, df2, 1 - tail), f * FisherQuantile.Of(df2, df1, 1 - tail));

    private static (double Low, double High) Single((double Low, double High) f, int k) => ((f.Low - 1) / (f.Low + k - 1), (f.High - 1) / (f.High + k - 1));

    private static (double Low, double High) Mean((double Low, double High) f) => (1 - 1 / f.Low, 1 - 1 / f.High);

    private static (double Low, double High) SteppedUp((double Low, double High) single, int k) =>
        (k * single.Low / (1 + (k - 1) * single.Low), k * single.High / (1 + (k - 1) * single.High));

    private static (double Low, double High) Agreement(RatingTable t, double tail)
    {
        double n = t.Targets, k = t.Judges;
        var icc = Value(t, IccForm.AgreementSingle);
        var judges = t.BetweenJudges / t.Residual;
        var rest = n * (1 + (k - 1) * icc) - k * icc;
        var top = k * icc * judges + rest;
        var df = (k - 1) * (n - 1) * top * top / ((n - 1) * k * k * icc * icc * judges * judges + rest * rest);
        var upper = FisherQuantile.Of(n - 1, df, 1 - tail);
        var lower = FisherQuantile.Of(df, n - 1, 1 - tail);
        var spread = k * t.BetweenJudges + (k * n - k - n) * t.Residual;
        return (
            n * (t.BetweenTargets - upper * t.Residual) / (upper * spread + n * t.BetweenTargets),
            n * (lower * t.BetweenTargets - t.Residual) / (spread + n * lower * t.BetweenTargets));
    }
}
