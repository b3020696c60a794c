namespace GaitSeat.Store.Tests;

/// <summary>Days for tests that need one.</summary>
internal static class Days
{
    internal static DateOnly Today { get; } = new(2026, 6, 1);
}
