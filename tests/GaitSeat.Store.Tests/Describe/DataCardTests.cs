namespace GaitSeat.Store.Tests.Describe;

public sealed class DataCardTests(DescribedDataset made) : IClassFixture<DescribedDataset>
{
    [Fact]
    public void Card_SaysWhatTheDatasetHolds()
    {
        var card = made.Text("README.md");
        Assert.StartsWith("# Lessons of a spring\n", card, StringComparison.Ordinal);
        // Two measured clips with three strides each, one clip set aside; the second rider's sheet names no day, so there is one session.
        Assert.Contains("2 riders, 1 horses, 1 sessions (one rider on one horse on one day), 2 clips measured, 6 strides; 2026-05-31 to 2026-05-31; seasons: 2026.", card, StringComparison.Ordinal);
        Assert.Contains("1 clips could not be measured", card, StringComparison.Ordinal);
        Assert.Contains("| frame | `turned_out` | 14 |", card, StringComparison.Ordinal);
        Assert.Contains("CC-BY-4.0 (https://spdx.org/licenses/CC-BY-4.0.html), by Anna's school.", card, StringComparison.Ordinal);
        Assert.Contains("1 clips have no row in a session sheet", card, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("How it was made")]
    [InlineData("Population")]
    [InlineData("Limits")]
    [InlineData("Licence")]
    [InlineData("Privacy")]
    public void Card_HasItsSections(string title) => Assert.Contains($"\n## {title}\n", made.Text("README.md"), StringComparison.Ordinal);

    [Fact]
    public void Statistics_AreThoseOfTheColumn()
    {
        var lines = File.ReadAllLines(Path.Combine(made.Compact, "column-statistics.csv"));
        Assert.Equal("table,column,type,unit,rows,nulls,distinct,min,max,mean,sd", lines[0]);
        Assert.Equal(1 + TableList.All.Sum(t => t.Columns.Count), lines.Length);
        // Two clips with 48, 50 and none each.
        Assert.Contains("strides,thigh_angle_sit_deg,real,deg,6,2,,48,50,49,1.15470054", lines);
        Assert.Contains("clips,note,text,,3,1,1,,,,", lines);
        Assert.Contains("clips,session_date,date,,3,2,1,2026-05-31,2026-05-31,,", lines);
    }

    [Fact]
    public void Dictionary_LiesBeside() => Assert.Equal(DataDictionary.ToMarkdown(), made.Text("data-dictionary.md"));

    [Fact]
    public void About_IsKeptForTheNextTime()
    {
        using var folder = new TemporaryFolder();
        DatasetAbout.Keep(folder.Path, new("A title", Licence: "CC0-1.0"));
        Assert.Equal(new DatasetAbout("A title", "Me", "CC0-1.0"), DatasetAbout.Keep(folder.Path, new(Creator: "Me")));
        Assert.Contains("SPDX", Assert.Throws<DatasetException>(() => DatasetAbout.Keep(folder.Path, new(Licence: "do as you like"))).Message, StringComparison.Ordinal);
        Assert.Contains("https://", Assert.Throws<DatasetException>(() => DatasetAbout.Keep(folder.Path, new(Url: "ftp://x"))).Message, StringComparison.Ordinal);
        File.WriteAllText(folder.File("about.json"), """{"titel": "slip"}""");
        Assert.Contains("about.json", Assert.Throws<DatasetException>(() => DatasetAbout.Keep(folder.Path, new())).Message, StringComparison.Ordinal);
    }
}
