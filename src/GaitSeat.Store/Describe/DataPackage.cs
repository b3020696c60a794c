using System.Text.Json.Nodes;

namespace GaitSeat.Store;

/// <summary>
/// <c>datapackage.json</c>: the tables as a Frictionless Data Package with a Table Schema each (specifications 1.0, specs.frictionlessdata.io), from the same
/// descriptions the files are written by. Unit and meaning of a null are added to the fields, which the specification allows.
/// </summary>
internal static class DataPackage
{
    internal const string FileName = "datapackage.json";

    internal static string ToJson(DatasetFacts facts) => PageJson.Text(new JsonObject
    {
        ["profile"] = "data-package",
        ["name"] = "gaitseat-strides",
        ["title"] = facts.About.TitleOrNot,
        ["description"] = Description.Of(facts),
        ["version"] = Description.Version,
        ["created"] = $"{facts.Published:yyyy-MM-dd}T00:00:00Z",
        ["keywords"] = PageJson.Array(Description.Keywords),
        ["contributors"] = new JsonArray(new JsonObject { ["title"] = facts.About.CreatorOrNot, ["role"] = "author" }),
        ["licenses"] = Licences(facts.About),
        ["resources"] = PageJson.Array(facts.Filled.Select(Resource)),
    }.WithoutNulls());

    private static JsonArray? Licences(DatasetAbout about) => about.Licence is null ? null
        : [about.LicenceUrl == about.Licence
            ? new JsonObject { ["path"] = about.LicenceUrl, ["title"] = about.Licence }
            : new JsonObject { ["name"] = about.Licence, ["path"] = about.LicenceUrl }];

    private static JsonObject Resource(TableFacts table) => new JsonObject
    {
        ["name"] = table.Table.Name,
        ["profile"] = "data-resource",
        ["description"] = table.Table.About,
        ["path"] = PageJson.Array(table.Paths),
        ["format"] = "parquet",
        ["mediatype"] = Description.ParquetMediaType,
        ["bytes"] = table.Bytes,
        ["rows"] = table.Rows,
        ["schema"] = Schema(table),
        ["partitionFields"] = table.InFolders.Any() ? PageJson.Array(table.InFolders.Select(Field)) : null,
    }.WithoutNulls();

    private static JsonObject Schema(TableFacts table) => new JsonObject
    {
        ["fields"] = PageJson.Array(table.InFiles.Select(Field)),
        ["primaryKey"] = TableKeys.Of(table.Table.Name) is { Count: > 0 } key ? PageJson.Array(key) : null,
    }.WithoutNulls();

    private static JsonObject Field(ColumnInfo column) => new JsonObject
    {
        ["name"] = column.Name,
        ["type"] = column.Type switch
        {
            ColumnType.Text => "string",
            ColumnType.Whole => "integer",
            ColumnType.Date => "date",
            _ => "number",
        },
        ["description"] = column.Definition,
        ["unit"] = column.Unit.Length > 0 ? column.Unit : null,
        ["nullMeans"] = column.NullMeans,
        ["constraints"] = column.NullMeans is null ? new JsonObject { ["required"] = true } : null,
    }.WithoutNulls();

    /// <summary>What is not known is left away: the specification has no null.</summary>
    private static JsonObject WithoutNulls(this JsonObject node)
    {
        foreach (var name in node.Where(p => p.Value is null).Select(p => p.Key).ToList()) node.Remove(name);
        return node;
    }
}
