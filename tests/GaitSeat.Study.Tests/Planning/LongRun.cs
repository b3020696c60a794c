namespace GaitSeat.Study.Tests.Planning;

/// <summary>Set by <c>./gaitseat test --long</c>: the same checks on many more simulations.</summary>
internal static class LongRun
{
    public static bool IsOn => Environment.GetEnvironmentVariable("GAITSEAT_LONG") == "1";
}
