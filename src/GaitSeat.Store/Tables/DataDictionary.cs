using System.Diagnostics.CodeAnalysis;
using System.Globalization;
using System.Text;

namespace GaitSeat.Store;

/// <summary>The page that says what every column is, made from the same descriptions the files are written by.</summary>
[SuppressMessage("Naming", "CA1711", Justification = "A data dictionary is the term of the trade for this page.")]
public static class DataDictionary
{
    private const string Head =
        """
        # Data dictionary

        Made from the code; a test holds it to the tables as they are written. Regenerate it with `GAITSEAT_UPDATE=1 dotnet test tests/GaitSeat.Store.Tests`.

        A dataset is a folder with one folder a table and in it one Parquet file a clip and run (`sessions`: one a session and run). Text is UTF-8, whole numbers are 32 bit, reals 64 bit,
        dates are days. A value that cannot be measured is null, never zero and never NaN. Rows of other settings or models stand beside each other:
        pick one `pipeline_hash` and `model_hash` before you count.

        """;

    /// <summary>Markdown with LF line ends.</summary>
    public static string ToMarkdown()
    {
        var page = new StringBuilder(Head.ReplaceLineEndings("\n"));
        foreach (var table in TableList.All)
        {
            page.Append(CultureInfo.InvariantCulture, $"\n## {table.Name}\n\n{table.About}\n\n");
            page.Append("| column | type | unit | definition | null means |\n|---|---|---|---|---|\n");
            foreach (var c in table.Columns)
            {
                page.Append(CultureInfo.InvariantCulture, $"| `{c.Name}` | {TypeOf(c.Type)} | {c.Unit} | {c.Definition} | {c.NullMeans ?? "never null"} |\n");
            }
        }

        return page.ToString();
    }

    private static string TypeOf(ColumnType type) => type switch
    {
        ColumnType.Text => "text",
        ColumnType.Whole => "whole number",
        ColumnType.Date => "date",
        _ => "real",
    };
}
