using System.ComponentModel.DataAnnotations;
using GaitSeat.Study.DoseResponse;
using GaitSeat.Study.Mixed;
using GaitSeat.Study.Simulation;

namespace GaitSeat.Study.Planning;

/// <summary>How a plan is tried.</summary>
public sealed record PowerSettings
{
    /// <summary>Seasons drawn; 500 give a power of 80 % to about 3.5 points (binomial).</summary>
    [Range(20, 100_000)]
    public int Simulations { get; init; } = 500;

    /// <summary>Seed of the random numbers.</summary>
    [Range(0, int.MaxValue)]
    public int Seed { get; init; } = 1;

    /// <summary>The change of length that is asked about.</summary>
    [Range(0.1, 50.0)]
    public double StepCm { get; init; } = 2;

    /// <summary>The model; horses are left out where the plan has none.</summary>
    public DoseSettings Model { get; init; } = new();
}

/// <summary>A share with its 95 % interval (Wilson 1927, doi:10.1080/01621459.1927.10502953).</summary>
public readonly record struct Share(int Count, int Of)
{
    private const double Spread = 1.959963984540054;

    public double Value => (double)Count / Of;

    public double Low => Middle - Half;

    public double High => Middle + Half;

    private double Middle => (Value + Spread * Spread / (2 * Of)) / (1 + Spread * Spread / Of);

    private double Half => Spread / (1 + Spread * Spread / Of) * Math.Sqrt(Value * (1 - Value) / Of + Spread * Spread / (4.0 * Of * Of));
}

/// <summary>What a plan can be hoped to tell.</summary>
/// <param name="Detected">Seasons whose interval leaves zero out: the power, or the type I error where the true effect is zero.</param>
/// <param name="Covered">Seasons whose interval holds the truth.</param>
/// <param name="MeanHalfWidth">Mean half width of the interval of the effect of <see cref="PowerSettings.StepCm"/>, in the outcome's unit.</param>
/// <param name="HalfWidth90">Nine seasons in ten are at least this precise.</param>
/// <param name="MeanEstimate">Mean estimate of that effect.</param>
/// <param name="Singular">Fits at a boundary.</param>
/// <param name="Failed">Seasons that could not be fitted; they count as not detected and not covered.</param>
public sealed record PowerResult(
    SeasonPlanSettings Plan, Share Detected, Share Covered, double MeanHalfWidth, double HalfWidth90, double MeanEstimate, int Singular, int Failed);

/// <summary>Power and precision by drawing seasons and analysing each as the study would be.</summary>
public static class PowerSimulation
{
    public static PowerResult Of(SeasonPlanSettings plan, PowerSettings settings)
    {
        var truth = plan.EffectPerCm * settings.StepCm;
        var model = plan.Horses == 0 ? settings.Model with { Horse = HorseRole.None } : settings.Model;
        var seasons = Replicates.Of(settings.Simulations, settings.Seed, random => Analyse(SimulatedSeason.Draw(plan, random), model, settings.StepCm));
        ContrastEstimate[] effects = [.. seasons.Select(s => s.Effect).OfType<ContrastEstimate>()];
        if (effects.Length == 0) throw new StudyException(StudyProblem.NoConvergence, $"none of {settings.Simulations} simulated seasons could be fitted; plan more riders or strides");
        double[] halves = [.. effects.Select(e => (e.High - e.Low) / 2).Order()];
        return new(
            plan, new(effects.Count(e => e.Low > 0 || e.High < 0), settings.Simulations), new(effects.Count(e => e.Low <= truth && truth <= e.High), settings.Simulations),
            halves.Average(), halves[(int)Math.Ceiling(0.9 * halves.Length) - 1], effects.Average(e => e.Estimate),
            seasons.Count(s => s.Singular), settings.Simulations - effects.Length);
    }

    private static (ContrastEstimate? Effect, bool Singular) Analyse(DoseData season, DoseSettings model, double step)
    {
        try
        {
            var design = DoseDesign.Of(season, model);
            var fit = MixedModel.Fit(design.Mixed, model.Model);
            return (WaldInterval.Of(fit, design.Effect("step", design.Center, design.Center + step)), fit.IsSingular);
        }
        catch (StudyException e) when (e.Problem == StudyProblem.NoConvergence)
        {
            return (null, false);
        }
    }

    /// <summary>The same plan with other numbers of riders, each from the same seed.</summary>
    /// <returns>One result per number, in the order given.</returns>
    public static IReadOnlyList<PowerResult> ByRiders(SeasonPlanSettings plan, IReadOnlyList<int> riders, PowerSettings settings) =>
        [.. riders.Select(r => Of(plan with { Riders = r }, settings))];

    /// <summary>The first plan of a list, in order, whose intervals are in nine seasons of ten as narrow as wanted; nothing where none is.</summary>
    public static PowerResult? FirstWithin(IEnumerable<PowerResult> results, double halfWidth) => results.FirstOrDefault(r => r.HalfWidth90 <= halfWidth);
}
