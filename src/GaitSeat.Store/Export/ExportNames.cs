namespace GaitSeat.Store;

/// <summary>Riders and horses leave under the pseudonyms of the sheet; one that looks like a full name leaves under a number.</summary>
internal sealed class ExportNames
{
    private readonly Dictionary<string, string> _numbers;

    private ExportNames(Dictionary<string, string> numbers) => _numbers = numbers;

    /// <summary>How many names were replaced.</summary>
    internal int Replaced => _numbers.Count;

    internal static ExportNames Of(DatasetQuery query)
    {
        var names = query.Query("SELECT DISTINCT unnest([rider, horse]) AS name FROM clips ORDER BY name").Select(r => r["name"] as string).Where(FullName.LooksLikeOne).OfType<string>();
        return new(names.Select((n, i) => (n, Told: FormattableString.Invariant($"name-{i + 1}"))).ToDictionary(p => p.n, p => p.Told, StringComparer.Ordinal));
    }

    /// <summary>SQL for a column as it may leave.</summary>
    internal string Sql(string column)
    {
        var quoted = SchemaHistory.Quoted(column);
        return _numbers.Count == 0 || column is not ("rider" or "horse") ? quoted
            : $"CASE {quoted} {string.Join(' ', _numbers.Select(n => $"WHEN {SqlText.Literal(n.Key)} THEN {SqlText.Literal(n.Value)}"))} ELSE {quoted} END AS {quoted}";
    }
}
