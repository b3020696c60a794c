using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Pipeline.Pupil;

/// <summary>How a measure went, said to a pupil.</summary>
/// <param name="Title">What it is, in the trade's words.</param>
/// <param name="Sentences">Plain text.</param>
internal sealed record Progress(StrideMeasure Measure, string Title, string Unit, string Sentences, IReadOnlyList<DayMean> Days);

/// <summary>Puts a measure's days into words. Of a change only what is past the 95 % interval of the difference is called one.</summary>
internal static class ProgressWords
{
    private const double Normal95 = 1.959964;

    /// <summary>Shown to pupils, first those in centimetres; where a rider's size is not known, in percent of leg length.</summary>
    private static readonly (StrideMeasure Measure, StrideMeasure? Instead, string Title, string Meaning)[] Shown =
    [
        (StrideMeasure.RiseHeightCm, StrideMeasure.RiseHeightPctLeg, "Rise height", "how far the seat comes out of the saddle"),
        (StrideMeasure.ThighAngleSit, null, "Thigh angle at the sit", "how far the knee is in front of the hip as you sit; a smaller number is a steeper thigh"),
        (StrideMeasure.StirrupDriftSwingCm, StrideMeasure.StirrupDriftSwingPctLeg, "Stirrup drift", "how far the foot travels forward and back in a stride; quieter is smaller"),
    ];

    /// <returns>Those that were measured in the week, up to three.</returns>
    public static IReadOnlyList<Progress> Of(IReadOnlyList<RiddenSpell> spells, DateOnly weekStart) =>
        [.. Shown.Select(s => Of(s.Measure, s, spells, weekStart) ?? (s.Instead is { } other ? Of(other, s, spells, weekStart) : null)).OfType<Progress>()];

    private static Progress? Of(StrideMeasure measure, (StrideMeasure Measure, StrideMeasure? Instead, string Title, string Meaning) shown, IReadOnlyList<RiddenSpell> spells, DateOnly weekStart)
    {
        var days = DayMean.Of(spells, measure);
        if (days.Count == 0 || days[^1].Day < weekStart) return null;
        var unit = MeasureCatalogue.Get(measure).Unit is var u && u == "deg" ? "degrees" : MeasureCatalogue.Get(measure).Unit;
        var now = days[^1];
        var text = $"{char.ToUpperInvariant(shown.Meaning[0])}{shown.Meaning[1..]}. On {Day(now.Day)} it was {Number(now.Value)} {unit} over {now.Strides} strides.";
        return new(measure, shown.Title, unit, days.Count < 2 ? text + " There is nothing earlier to hold it against yet." : $"{text} {Change(days[^2], now, unit)}", days);
    }

    private static string Change(DayMean before, DayMean now, string unit)
    {
        var difference = now.Value.Value - before.Value.Value;
        var room = Normal95 * Math.Sqrt(now.Value.StandardError * now.Value.StandardError + before.Value.StandardError * before.Value.StandardError);
        if (double.IsNaN(room)) return $"On {Day(before.Day)} it was {Number(before.Value)}; how sure these are is not known, so no change is read from them.";
        if (Math.Abs(difference) <= room) return $"On {Day(before.Day)} it was {Number(before.Value)}. That is within what the camera can tell apart, so take it as the same.";
        return $"On {Day(before.Day)} it was {Number(before.Value)}: {(difference > 0 ? "more" : "less")} by {Amount(Math.Abs(difference))} {unit}, which is past what the camera might be wrong by.";
    }

    private static string Number(Measured m) => double.IsFinite(m.HalfWidth95) ? $"{Amount(m.Value)} (give or take {Amount(m.HalfWidth95)})" : Amount(m.Value);

    private static string Amount(double value) => value.ToString("0.0", CultureInfo.InvariantCulture);

    internal static string Day(DateOnly day) => day.ToString("d MMMM yyyy", CultureInfo.InvariantCulture);
}
