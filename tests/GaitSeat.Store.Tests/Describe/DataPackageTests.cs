using System.Text.Json;
using System.Text.Json.Nodes;
using ParquetSharp;

namespace GaitSeat.Store.Tests.Describe;

public sealed class DataPackageTests(DescribedDataset made) : IClassFixture<DescribedDataset>
{
    private JsonElement Package => field.ValueKind == JsonValueKind.Undefined ? field = made.Json("datapackage.json") : field;

    [Fact]
    public void Package_IsOneByItsPublishedSchema() => Assert.Empty(Schemas.Faults(Schemas.DataPackage, Package));

    [Fact]
    public void EveryTableSchema_IsOneByItsPublishedSchema()
    {
        Assert.True(Resources.Count >= 7);
        foreach (var resource in Resources) Assert.Empty(Schemas.Faults(Schemas.TableSchema, resource.GetProperty("schema")));
    }

    /// <summary>A check that cannot fail is none.</summary>
    [Fact]
    public void PublishedSchemas_RefuseWhatIsWrong()
    {
        var package = JsonNode.Parse(Package.GetRawText())!.AsObject();
        package["name"] = "Not A Name";
        Assert.NotEmpty(Schemas.Faults(Schemas.DataPackage, Element(package)));
        var schema = JsonNode.Parse(Resources[0].GetProperty("schema").GetRawText())!;
        schema["fields"]![0]!["type"] = "double";
        Assert.NotEmpty(Schemas.Faults(Schemas.TableSchema, Element(schema)));
    }

    [Fact]
    public void Fields_AreTheColumnsArrowFindsInTheFiles()
    {
        foreach (var resource in Resources)
        {
            var fields = resource.GetProperty("schema").GetProperty("fields").EnumerateArray().Select(f => f.GetProperty("name").GetString()!).ToList();
            var rows = 0L;
            foreach (var path in resource.GetProperty("path").EnumerateArray())
            {
                using var reader = new ParquetFileReader(Path.Combine(made.Compact, path.GetString()!));
                var schema = reader.FileMetaData.Schema;
                Assert.Equal(fields, Enumerable.Range(0, schema.NumColumns).Select(i => schema.Column(i).Name));
                rows += reader.FileMetaData.NumRows;
            }

            Assert.Equal(rows, resource.GetProperty("rows").GetInt64());
        }
    }

    [Fact]
    public void PrimaryKeys_NameEachRowOnce()
    {
        using var query = new DatasetQuery(made.Dataset);
        var keyed = Resources.Where(r => r.GetProperty("schema").TryGetProperty("primaryKey", out _)).ToList();
        Assert.Equal(["clips", "spells", "strides", "tracks"], keyed.Select(Name).Order());
        foreach (var resource in keyed)
        {
            var key = string.Join(", ", resource.GetProperty("schema").GetProperty("primaryKey").EnumerateArray().Select(k => k.GetString()));
            var row = query.Query($"SELECT count(*) AS n, count(DISTINCT ({key})) AS keys FROM {Name(resource)}")[0];
            Assert.Equal(row["n"], row["keys"]);
        }
    }

    [Fact]
    public void Field_CarriesUnitMeaningOfNullAndDefinition()
    {
        var field = Resources.Single(r => Name(r) == "strides").GetProperty("schema").GetProperty("fields").EnumerateArray().Single(f => f.GetProperty("name").GetString() == "rise_height_cm");
        Assert.Equal(("number", "cm"), (field.GetProperty("type").GetString(), field.GetProperty("unit").GetString()));
        Assert.Equal("Could not be measured.", field.GetProperty("nullMeans").GetString());
    }

    [Fact]
    public void SeasonAndRider_StandAsPartitionFields()
    {
        var strides = Resources.Single(r => Name(r) == "strides");
        Assert.Equal(["season", "rider"], strides.GetProperty("partitionFields").EnumerateArray().Select(f => f.GetProperty("name").GetString()));
        Assert.DoesNotContain(strides.GetProperty("schema").GetProperty("fields").EnumerateArray(), f => f.GetProperty("name").GetString() == "rider");
    }

    private List<JsonElement> Resources => [.. Package.GetProperty("resources").EnumerateArray()];

    private static string Name(JsonElement resource) => resource.GetProperty("name").GetString()!;

    private static JsonElement Element(JsonNode node)
    {
        using var json = JsonDocument.Parse(node.ToJsonString());
        return json.RootElement.Clone();
    }
}
