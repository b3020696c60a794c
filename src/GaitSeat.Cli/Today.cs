namespace GaitSeat.Cli;

/// <summary>The day by which consents are judged: that of this machine's wall clock.</summary>
internal static class Today
{
    public static DateOnly Local => DateOnly.FromDateTime(TimeProvider.System.GetLocalNow().Date);
}
