using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Faults.Rules;

/// <summary>How findings are said: plain lines in the invariant culture.</summary>
internal static class Words
{
    public static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);

    /// <summary>Value and half width of its 95 % interval, with a decimal only where it means something.</summary>
    public static string WithInterval(Measured m)
    {
        var format = m.HalfWidth95 < DecimalBelow ? "0.0" : "0";
        return m.Value.ToString(format, CultureInfo.InvariantCulture) + " ± " + m.HalfWidth95.ToString(format, CultureInfo.InvariantCulture);
    }

    public static string Limit(Condition condition) => Text($"{condition.Threshold:0.##} {Unit(condition.Measure)}");

    public static string Unit(StrideMeasure measure)
    {
        var unit = MeasureCatalogue.Get(measure).Unit;
        return unit == "% of leg length" ? "% of leg" : unit;
    }

    public static string Capital(string phrase) => char.ToUpperInvariant(phrase[0]) + phrase[1..];

    public static string Line(string said, int showing, int measured, string against, string source) =>
        Text($"{said} in {showing} of {measured} strides; {against} ({source}).");

    /// <summary>Intervals narrower than this are told to a tenth.</summary>
    private const double DecimalBelow = 1.5;
}
