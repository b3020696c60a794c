using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures.Layers;

/// <summary>The figures over the strip: gait, stride, rise and drift of the stride under way, each with its 95 % interval. Never a name.</summary>
internal static class StripWords
{
    private static readonly (string Name, StrideMeasure Cm, StrideMeasure PctLeg)[] Figures =
    [
        ("rise", StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg),
        ("drift", StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg),
    ];

    /// <summary>Pieces of text from left to right; the strong ones are values.</summary>
    public static IEnumerable<(string Text, bool Strong)> Of(PaintView view)
    {
        yield return (GaitName(view.Spell?.Gait ?? Gait.Unknown), true);
        if (view.Stride is not { } stride) yield break;
        yield return ("  stride", false);
        yield return (stride.Number.ToString(CultureInfo.InvariantCulture), true);
        foreach (var (name, cm, pctLeg) in Figures)
        {
            if ((Figure(stride, cm, "cm") ?? Figure(stride, pctLeg, "% of leg")) is not { } value) continue;
            yield return ("  " + name, false);
            yield return (value, true);
        }
    }

    private static string? Figure(Stride stride, StrideMeasure measure, string unit)
    {
        var m = stride.Measures[measure];
        if (m.IsMissing) return null;
        return double.IsNaN(m.StandardError)
            ? string.Create(CultureInfo.InvariantCulture, $"{m.Value:0.0} {unit}")
            : string.Create(CultureInfo.InvariantCulture, $"{m.Value:0.0} ± {m.HalfWidth95:0.0} {unit}");
    }

    private static string GaitName(Gait gait) => gait switch
    {
        Gait.Halt => "Halt",
        Gait.Walk => "Walk",
        Gait.RisingTrot => "Rising trot",
        Gait.SittingTrot => "Sitting trot",
        Gait.Canter => "Canter",
        _ => "Gait not known",
    };
}
