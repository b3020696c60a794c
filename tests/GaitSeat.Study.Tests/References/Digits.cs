namespace GaitSeat.Study.Tests.References;

/// <summary>How many significant digits two numbers share, as NIST counts: -log10 of the relative error (LRE), at most 15.</summary>
internal static class Digits
{
    public static double Of(double found, double certified) =>
        found == certified ? 15 : Math.Min(15, -Math.Log10(Math.Abs((found - certified) / certified)));

    public static void AtLeast(double digits, double certified, double found) =>
        Assert.True(Of(found, certified) >= digits, FormattableString.Invariant($"{found:R} has {Of(found, certified):F1} digits of {certified:R}; {digits} are asked for"));
}
