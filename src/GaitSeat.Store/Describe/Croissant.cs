using System.Text.Json.Nodes;

namespace GaitSeat.Store;

/// <summary>
/// <c>croissant.json</c>: the dataset in Croissant 1.1, JSON-LD (MLCommons, docs.mlcommons.org/croissant, version 1.1), from the same descriptions the files are written by.
/// Season and rider, which stand in the folders' names, are described as taken from the path.
/// </summary>
internal static class Croissant
{
    internal const string FileName = "croissant.json";
    internal const string ConformsTo = "http://mlcommons.org/croissant/1.1";

    internal static string ToJson(DatasetFacts facts)
    {
        var about = facts.About;
        return PageJson.Text(new JsonObject
        {
            ["@context"] = CroissantContext.Make(),
            ["@type"] = "sc:Dataset",
            ["name"] = about.TitleOrNot,
            ["description"] = Description.Of(facts),
            ["conformsTo"] = ConformsTo,
            ["license"] = about.LicenceUrl is { } licence ? licence : new JsonObject { ["@type"] = "sc:CreativeWork", ["name"] = "No licence was given. Ask the creator before any use." },
            // A dataset that is published nowhere is where this file is.
            ["url"] = about.Url ?? "./",
            ["creator"] = new JsonObject { ["@type"] = "sc:Organization", ["name"] = about.CreatorOrNot },
            ["datePublished"] = $"{facts.Published:yyyy-MM-dd}",
            ["version"] = Description.Version,
            ["keywords"] = PageJson.Array(Description.Keywords),
            ["isLiveDataset"] = true,
            ["distribution"] = PageJson.Array(facts.Filled.Select(Files)),
            ["recordSet"] = PageJson.Array(facts.Filled.Select(Records)),
        });
    }

    private static string FilesId(TableFacts table) => table.Table.Name + "-files";

    private static JsonObject Files(TableFacts table) => new()
    {
        ["@type"] = "cr:FileSet",
        ["@id"] = FilesId(table),
        ["name"] = FilesId(table),
        ["description"] = $"Parquet files of the table {table.Table.Name}.",
        ["encodingFormat"] = Description.ParquetMediaType,
        ["includes"] = PartFolder.IsPartitioned(table.Table) ? $"{table.Table.Name}/*/*/*.parquet" : $"{table.Table.Name}/*.parquet",
    };

    private static JsonObject Records(TableFacts table)
    {
        var name = table.Table.Name;
        var records = new JsonObject
        {
            ["@type"] = "cr:RecordSet",
            ["@id"] = name,
            ["name"] = name,
            ["description"] = table.Table.About,
            ["field"] = PageJson.Array([
                .. table.InFiles.Select(c => Field(table, c, new JsonObject { ["column"] = c.Name }, transform: null)),
                .. table.InFolders.Select(c => Field(table, c, new JsonObject { ["fileProperty"] = "fullpath" }, new JsonObject { ["regex"] = $"{c.Name}=([^/]+)/" })),
            ]),
        };
        if (TableKeys.Of(name) is { Count: > 0 } key) records["key"] = PageJson.Array(key.Select(k => new JsonObject { ["@id"] = $"{name}/{k}" }));
        return records;
    }

    private static JsonObject Field(TableFacts table, ColumnInfo column, JsonObject extract, JsonObject? transform)
    {
        var source = new JsonObject { ["fileSet"] = new JsonObject { ["@id"] = FilesId(table) }, ["extract"] = extract };
        if (transform is not null) source["transform"] = transform;
        var field = new JsonObject
        {
            ["@type"] = "cr:Field",
            ["@id"] = $"{table.Table.Name}/{column.Name}",
            ["name"] = column.Name,
            ["description"] = Text(column),
            ["dataType"] = column.Type switch
            {
                ColumnType.Text => "sc:Text",
                ColumnType.Whole => "sc:Integer",
                ColumnType.Date => "sc:Date",
                _ => "sc:Float",
            },
            ["source"] = source,
        };
        if (column.Name == "clip_key" && table.Table.Name != ClipsTable.Name) field["references"] = new JsonObject { ["@id"] = $"{ClipsTable.Name}/clip_key" };
        return field;
    }

    private static string Text(ColumnInfo column) =>
        column.Definition + (column.Unit.Length > 0 ? $" Unit: {column.Unit}." : "") + (column.NullMeans is { } meaning ? $" Null: {meaning}" : "");
}
