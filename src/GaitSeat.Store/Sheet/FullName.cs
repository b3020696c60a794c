using System.Text.RegularExpressions;

namespace GaitSeat.Store;

/// <summary>A guess whether a rider stands in the sheet by name: two or more capitalised words, such as "Anna Berg" or "Berg, Anna".</summary>
internal static partial class FullName
{
    internal static bool LooksLikeOne(string? rider) => rider is not null && Words().IsMatch(rider);

    [GeneratedRegex(@"^\p{Lu}[\p{Ll}'’-]+\p{Lu}?\p{Ll}*(,? +(\p{Ll}+ +)*\p{Lu}[\p{L}'’-]+)+$", RegexOptions.CultureInvariant)]
    private static partial Regex Words();
}
