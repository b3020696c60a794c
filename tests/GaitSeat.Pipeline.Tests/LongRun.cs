namespace GaitSeat.Pipeline.Tests;

/// <summary>Set by <c>./gaitseat test --long</c>: the same checks many more times over.</summary>
internal static class LongRun
{
    public static bool IsOn => Environment.GetEnvironmentVariable("GAITSEAT_LONG") == "1";
}
