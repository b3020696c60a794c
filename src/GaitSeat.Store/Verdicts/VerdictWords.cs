using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>The written form of what a verdict says, read back.</summary>
internal static class VerdictWords
{
    private static readonly string[] Times = [VerdictsTable.TimeFormat, "yyyy-MM-dd'T'HH:mm:sszzz", "yyyy-MM-dd'T'HH:mm'Z'", "yyyy-MM-dd'T'HH:mmzzz", "yyyy-MM-dd"];

    internal static IReadOnlyList<string> All<T>()
        where T : struct, Enum => [.. Enum.GetValues<T>().Select(v => v.ToTerm())];

    /// <returns>The member of that term, the case of letters aside; null where there is none.</returns>
    internal static T? Of<T>(string term)
        where T : struct, Enum
    {
        foreach (var value in Enum.GetValues<T>())
            if (string.Equals(value.ToTerm(), term, StringComparison.OrdinalIgnoreCase)) return value;
        return null;
    }

    /// <returns>A time with its offset, or a day, taken as its start in UTC; null for anything else: a time without an offset is not one instant.</returns>
    internal static DateTimeOffset? Time(string text) =>
        DateTimeOffset.TryParseExact(text, Times, CultureInfo.InvariantCulture, DateTimeStyles.AssumeUniversal, out var time) ? time.ToUniversalTime() : null;
}
