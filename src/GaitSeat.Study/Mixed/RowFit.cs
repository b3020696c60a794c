using GaitSeat.Study.Linear;

namespace GaitSeat.Study.Mixed;

/// <summary>Fitted values and residuals of the rows.</summary>
/// <param name="Mean">X β: what the fixed effects say.</param>
/// <param name="Fitted">X β + Z b.</param>
/// <param name="Standardised">Residual times √weight over σ: of variance about one where the model holds.</param>
public sealed record RowFit(double[] Mean, double[] Fitted, double[] Residuals, double[] Standardised)
{
    public static RowFit Of(MixedFit fit)
    {
        var data = fit.Solution.Data;
        var mean = new double[data.Rows];
        for (var j = 0; j < data.Fixed.Count; j++) Dense.AddScaled(mean, fit.Fixed[j].Estimate, data.Fixed[j].Values);
        var fitted = (double[])mean.Clone();
        for (var t = 0; t < data.Random.Count; t++) Add(fitted, data.Random[t], fit.Random[t].Effects);
        double[] residuals = [.. data.Outcome.Select((y, i) => y - fitted[i])];
        return new(mean, fitted, residuals, [.. residuals.Select((r, i) => r * Math.Sqrt(data.Weights?[i] ?? 1) / fit.ResidualSd)]);
    }

    private static void Add(double[] fitted, RandomTerm term, double[][] effects)
    {
        for (var j = 0; j < term.Columns.Count; j++)
            for (var i = 0; i < fitted.Length; i++) fitted[i] += term.Columns[j].Values[i] * effects[term.Groups.LevelOf[i]][j];
    }
}
