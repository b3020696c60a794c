using GaitSeat.Model;
using GaitSeat.Motion;

namespace GaitSeat.Studio.Accuracy;

/// <summary>
/// What limits each measure: the maths is run again on the same sightings with true values in place of measured ones, one kind at a time, then all of them.
/// What an error loses with a swap is that input's share of it; what is left with all of them true is the maths itself.
/// </summary>
public static class ErrorBudget
{
    /// <summary>The runs in the order they are reported.</summary>
    public static IReadOnlyList<(string Name, Swap Swap)> Stages { get; } =
    [
        ("as seen", Swap.None), ("true points", Swap.Points), ("true scale", Swap.Scale), ("true anchor", Swap.Anchor), ("true yaw", Swap.Yaw), ("all true", Swap.All),
    ];

    /// <summary>The errors of one clip with some inputs true.</summary>
    public static IReadOnlyList<MeasureError> Run(ClipTruth truth, Sightings sightings, BodyLengths lengths, MotionSettings settings, Swap swap)
    {
        ArgumentNullException.ThrowIfNull(truth);
        ArgumentNullException.ThrowIfNull(sightings);
        ArgumentNullException.ThrowIfNull(settings);
        var motion = MotionAnalysis.Analyse(new TrueSightings(truth, sightings).With(swap), lengths, settings);
        var errors = ClipErrors.Compare(truth, new ClipResult(motion, sightings.WidthPx, sightings.Count, motion.LeftOut)).Errors;
        return swap.HasFlag(Swap.Scale) ? WithTrueScale(errors) : errors;
    }

    /// <summary>A length in cm is in proportion to the scale, so the true one needs no second run: the stride's own true over measured scale does it.</summary>
    private static List<MeasureError> WithTrueScale(IReadOnlyList<MeasureError> errors)
    {
        var ratio = errors.Where(e => e.Measure == StrideMeasure.Scale).ToDictionary(e => e.StartSeconds, e => e.Truth / e.Measured.Value);
        return [.. errors.Select(e => IsLength(e.Measure) && ratio.TryGetValue(e.StartSeconds, out var r)
            ? e with { Measured = new(e.Measured.Value * r, e.Measured.StandardError * r) }
            : e)];
    }

    private static bool IsLength(StrideMeasure measure) => MeasureCatalogue.Get(measure).Unit is "cm" or "cm/s" or "cm/px";
}
