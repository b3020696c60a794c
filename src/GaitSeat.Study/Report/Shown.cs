using System.Globalization;

namespace GaitSeat.Study.Report;

/// <summary>Numbers as people read them; the file of numbers has them in full.</summary>
internal static class Shown
{
    private const double SmallestP = 0.001;

    /// <summary>Smaller sizes are written with an exponent.</summary>
    private const double Smallest = 0.01;

    /// <summary>Three digits or so, with a true minus; "–" where there is no number.</summary>
    public static string Number(double value) => double.IsFinite(value) ? Signed(value.ToString(Format(Math.Abs(value)), CultureInfo.InvariantCulture)) : "–";

    /// <summary>A number that was chosen, not found: as it was written.</summary>
    public static string Chosen(double value) => Signed(value.ToString("0.###", CultureInfo.InvariantCulture));

    /// <summary>"1 clip", "2 clips".</summary>
    public static string Count(long value, string one) => $"{Count(value)} {one}{(value == 1 ? "" : "s")}";

    public static string Count(long value) => value.ToString("#,0", CultureInfo.InvariantCulture);

    /// <summary>Both ends to the same decimals: those of the width.</summary>
    public static string Interval(double low, double high)
    {
        if (!double.IsFinite(low) || !double.IsFinite(high)) return "–";
        var size = Math.Max(Math.Abs(low), Math.Abs(high));
        var format = Format(size < Smallest ? size : Math.Max(Smallest, Math.Min(high - low, size)));
        return $"{Signed(low.ToString(format, CultureInfo.InvariantCulture))} to {Signed(high.ToString(format, CultureInfo.InvariantCulture))}";
    }

    public static string P(double p) => double.IsNaN(p) ? "–" : p < SmallestP ? "< 0.001" : p.ToString("0.000", CultureInfo.InvariantCulture);

    public static string Percent(double share) => double.IsFinite(share) ? (100 * share).ToString("0.0", CultureInfo.InvariantCulture) + " %" : "–";

    private static string Format(double size) => size switch
    {
        0 => "0",
        >= 100 => "0",
        >= 10 => "0.0",
        >= 1 => "0.00",
        >= Smallest => "0.000",
        _ => "0.0#e+0",
    };

    private static string Signed(string text) => text.Replace('-', '−');
}
