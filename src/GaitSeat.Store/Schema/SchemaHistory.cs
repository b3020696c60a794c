using System.Globalization;
using GaitSeat.Model;

namespace GaitSeat.Store;

/// <summary>
/// The versions of the tables' layout and the way from each to the next. Older rows are brought to the present layout as they are read, row by row, so files of
/// several versions may stand beside each other; rows of a version that is not known yet are refused, since they would be read wrongly.
/// </summary>
internal sealed class SchemaHistory
{
    /// <summary>What a refusal begins with, for telling it from other errors of the engine.</summary>
    internal const string NewerMark = "rows of a newer layout";

    private readonly IReadOnlyList<SchemaStep> _steps;

    /// <param name="steps">In order; empty where there was never another version.</param>
    internal SchemaHistory(int current, IReadOnlyList<SchemaStep> steps)
    {
        if (steps.Count > 0 && steps.Select((s, i) => s.From - i).Distinct().Count() > 1) throw new ArgumentException("The steps do not follow each other.", nameof(steps));
        if (steps.Count > 0 && steps[^1].From != current - 1) throw new ArgumentException($"The last step does not lead to version {current}.", nameof(steps));
        (Current, _steps) = (current, steps);
    }

    /// <summary>The history of this program. Version 1 is the first.</summary>
    internal static SchemaHistory Ours { get; } = new(Provenance.CurrentSchemaVersion, []);

    internal int Current { get; }

    /// <summary>Versions older than the present one, newest first.</summary>
    internal IEnumerable<int> Older => Enumerable.Range(1, Current - 1).Reverse();

    /// <summary>Older versions whose numbers are still right: a clip measured under them need not be measured again.</summary>
    internal IEnumerable<int> StillRight => Older.TakeWhile(v => !_steps.Any(s => s.From >= v && s.MeasureAnew));

    /// <summary>A statement that brings rows of any known version to the present layout.</summary>
    /// <param name="source">A FROM clause's item; it need not have every column.</param>
    /// <param name="columns">Columns wanted, in order.</param>
    internal string Migrated(TableInfo table, string source, IEnumerable<string> columns)
    {
        var rows = $"(SELECT * FROM ({Typed(table)}) UNION ALL BY NAME SELECT * FROM {source})";
        foreach (var step in _steps)
        {
            var changes = step.Changes.Where(c => c.Table == table.Name).Select(c => string.Create(CultureInfo.InvariantCulture, $"CASE WHEN schema_version <= {step.From} THEN ({c.OlderSql}) ELSE {Quoted(c.Column)} END AS {Quoted(c.Column)}")).ToArray();
            if (changes.Length > 0) rows = $"(SELECT * REPLACE ({string.Join(", ", changes)}) FROM {rows})";
        }

        return $"SELECT {string.Join(", ", columns)} FROM {rows} WHERE {NotNewer}";
    }

    internal static string Quoted(string column) => $"\"{column}\"";

    private string NotNewer => string.Create(
        CultureInfo.InvariantCulture,
        $"CASE WHEN schema_version > {Current} THEN error('{NewerMark} (schema version ' || schema_version || '; this program knows up to {Current})') ELSE true END");

    /// <summary>No row, and every column of any version with its type: files of one version lack columns of another.</summary>
    private string Typed(TableInfo table)
    {
        var gone = _steps.SelectMany(s => s.Gone).Where(g => g.Table == table.Name).Select(g => g.Column).Except(table.Columns.Select(c => c.Name)).Distinct();
        return "SELECT " + string.Join(", ", [.. table.Columns.Select(c => $"CAST(NULL AS {TypeOf(c.Type)}) AS {Quoted(c.Name)}"), .. gone.Select(g => $"NULL AS {Quoted(g)}")]) + " WHERE false";
    }

    private static string TypeOf(ColumnType type) => type switch
    {
        ColumnType.Text => "VARCHAR",
        ColumnType.Whole => "INTEGER",
        ColumnType.Date => "DATE",
        _ => "DOUBLE",
    };
}
