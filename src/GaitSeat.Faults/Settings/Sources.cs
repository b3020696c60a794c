namespace GaitSeat.Faults;

/// <summary>Where limits come from, as a finding says it.</summary>
internal static class Sources
{
    public const string CommonPractice = "common practice, no source";
}
