namespace GaitSeat.Store;

/// <summary>Text put into a statement.</summary>
internal static class SqlText
{
    internal static string Literal(string text) => "'" + text.Replace("'", "''", StringComparison.Ordinal) + "'";

    /// <summary>The path as a pattern that matches it alone: a folder name may hold what a pattern reads as a wildcard.</summary>
    internal static string Pattern(string path) =>
        path.Replace("[", "[[]", StringComparison.Ordinal).Replace("*", "[*]", StringComparison.Ordinal).Replace("?", "[?]", StringComparison.Ordinal);

    internal static string Files(IEnumerable<string> paths) => $"[{string.Join(", ", paths.Select(p => Literal(Pattern(p))))}]";
}
