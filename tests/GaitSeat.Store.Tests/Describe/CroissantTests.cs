using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using ParquetSharp;

namespace GaitSeat.Store.Tests.Describe;

public sealed class CroissantTests(DescribedDataset made) : IClassFixture<DescribedDataset>
{
    private JsonElement Page => field.ValueKind == JsonValueKind.Undefined ? field = made.Json("croissant.json") : field;

    [Fact]
    public void Page_KeepsTheRulesOfTheSpecification() => Assert.Empty(Schemas.Faults(Schemas.Croissant, Page));

    [Theory]
    [InlineData("license")]
    [InlineData("conformsTo")]
    [InlineData("distribution")]
    [InlineData("creator")]
    public void Rules_RefuseAPageWithout(string property)
    {
        var page = JsonNode.Parse(Page.GetRawText())!.AsObject();
        page.Remove(property);
        using var json = JsonDocument.Parse(page.ToJsonString());
        Assert.NotEmpty(Schemas.Faults(Schemas.Croissant, json.RootElement));
    }

    /// <summary>Section "ID and Reference Mechanism": ids are unique, and an object of nothing but an id refers to one.</summary>
    [Fact]
    public void Ids_AreUniqueAndEveryReferenceHasItsTarget()
    {
        var (ids, references) = (new List<string>(), new List<string>());
        Collect(Page, ids, references);
        Assert.Equal(ids.Distinct(), ids);
        Assert.True(references.Count > 100);
        Assert.Empty(references.Except(ids));
    }

    [Fact]
    public void FileSets_MatchEveryPartOnceAndNothingElse()
    {
        var patterns = Page.GetProperty("distribution").EnumerateArray().Select(d => d.GetProperty("includes").GetString()!).ToList();
        var files = Directory.EnumerateFiles(made.Compact, "*", SearchOption.AllDirectories).Select(f => Path.GetRelativePath(made.Compact, f).Replace('\\', '/')).ToList();
        Assert.All(files, f => Assert.Equal(f.EndsWith(".parquet", StringComparison.Ordinal) ? 1 : 0, patterns.Count(p => Matches(p, f))));
        Assert.True(files.Count(f => f.EndsWith(".parquet", StringComparison.Ordinal)) > 15);
    }

    [Fact]
    public void Columns_AreInTheFilesAndRegexesFindSeasonAndRider()
    {
        foreach (var records in Page.GetProperty("recordSet").EnumerateArray())
        {
            var name = records.GetProperty("name").GetString()!;
            foreach (var path in Directory.EnumerateFiles(Path.Combine(made.Compact, name), "*.parquet", SearchOption.AllDirectories))
            {
                using var reader = new ParquetFileReader(path);
                var columns = Enumerable.Range(0, reader.FileMetaData.Schema.NumColumns).Select(i => reader.FileMetaData.Schema.Column(i).Name).ToHashSet();
                foreach (var source in records.GetProperty("field").EnumerateArray().Select(f => f.GetProperty("source")))
                {
                    if (source.GetProperty("extract").TryGetProperty("column", out var column)) Assert.Contains(column.GetString()!, columns);
                    else Assert.True(Regex.Match(path, source.GetProperty("transform").GetProperty("regex").GetString()!) is { Success: true, Groups.Count: 2 });
                }
            }
        }
    }

    [Fact]
    public void RecordSets_HaveEveryColumnOfTheDictionary()
    {
        foreach (var records in Page.GetProperty("recordSet").EnumerateArray())
        {
            var fields = records.GetProperty("field").EnumerateArray().Select(f => f.GetProperty("name").GetString()!);
            Assert.Empty(TableList.All.Single(t => t.Name == records.GetProperty("name").GetString()).Columns.Select(c => c.Name).Except(fields));
        }
    }

    [Fact]
    public void NothingSaid_IsStillAPage()
    {
        var facts = FactsReader.Read(made.Dataset, new(), DescribedDataset.Day, "test");
        using var json = JsonDocument.Parse(Croissant.ToJson(facts));
        Assert.Empty(Schemas.Faults(Schemas.Croissant, json.RootElement));
        Assert.Contains("No licence", json.RootElement.GetProperty("license").GetProperty("name").GetString(), StringComparison.Ordinal);
        using var package = JsonDocument.Parse(DataPackage.ToJson(facts));
        Assert.Empty(Schemas.Faults(Schemas.DataPackage, package.RootElement));
        Assert.False(package.RootElement.TryGetProperty("licenses", out _));
    }

    private static void Collect(JsonElement node, List<string> ids, List<string> references)
    {
        if (node.ValueKind == JsonValueKind.Array)
        {
            foreach (var item in node.EnumerateArray()) Collect(item, ids, references);
        }

        if (node.ValueKind != JsonValueKind.Object) return;
        var properties = node.EnumerateObject().Where(p => p.Name != "@context").ToList();
        if (node.TryGetProperty("@id", out var id)) (properties.Count == 1 ? references : ids).Add(id.GetString()!);
        foreach (var property in properties) Collect(property.Value, ids, references);
    }

    /// <summary>A star stands for anything but a slash.</summary>
    private static bool Matches(string glob, string path) => Regex.IsMatch(path, "^" + Regex.Escape(glob).Replace(@"\*", "[^/]*", StringComparison.Ordinal) + "$");
}
