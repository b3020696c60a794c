using System.Text.RegularExpressions;
using GaitSeat.Pipeline.Watch.Night;

namespace GaitSeat.Pipeline.Tests.Watch;

public sealed class NightSummaryTests
{
    private static readonly DateTimeOffset _evening = new(2026, 11, 24, 22, 0, 0, TimeSpan.Zero);

    [Fact]
    public void Summary_CountsAndLists()
    {
        var summary = Of(
            Entry("a.mp4", NightEnd.Measured, 60, flags: ["drives the heel up"]),
            Entry("b.mp4", NightEnd.SetAside, 5, "no_rider"),
            Entry("c.mp4", NightEnd.SetAside, 5, "no_rider"),
            Entry("d.mp4", NightEnd.SetAside, 5, "not_a_video"),
            Entry("e.mp4", NightEnd.PutOff, 5, "not_passed"));

        var text = NightMarkdown.Write(summary);

        Assert.Contains("1 clips measured, 1 of them flagged, 3 set aside, 2 still waiting.", text, StringComparison.Ordinal);
        Assert.Contains(@"2 no\_rider, 1 not\_a\_video", text, StringComparison.Ordinal);
        Assert.Contains("| a.mp4 | drives the heel up |", text, StringComparison.Ordinal);
        Assert.Contains("| 0 h 01 min 20 s |", text, StringComparison.Ordinal);
        Assert.Contains("2 no_rider, 1 not_a_video", NightHtml.Write(summary), StringComparison.Ordinal);
    }

    [Fact]
    public void TenSlowest_AreTen_SlowestFirst()
    {
        var summary = Of([.. Enumerable.Range(1, 15).Select(i => Entry($"{i}.mp4", NightEnd.Measured, i))]);

        Assert.Equal(["15.mp4", "14.mp4", "13.mp4", "12.mp4", "11.mp4", "10.mp4", "9.mp4", "8.mp4", "7.mp4", "6.mp4"], summary.TenSlowest.Select(e => e.ClipFile));
    }

    [Fact]
    public void ClipPutOffAndDoneLater_CountsOnce_AsDone_WithAllItsTime()
    {
        var summary = Of(
            Entry("a.mp4", NightEnd.PutOff, 10, "not_passed", retries: 5),
            Entry("a.mp4", NightEnd.Measured, 20, after: 100),
            Entry("a.mp4", NightEnd.AlreadyDone, 1, after: 200));

        var entry = Assert.Single(summary.Entries);
        Assert.Equal((NightEnd.Measured, 31.0, 5), (entry.End, entry.Seconds, entry.Retries));
    }

    /// <summary>What a file may be called on a file system, and what it must not do to a page.</summary>
    [Theory]
    [InlineData("<script>alert(1)</script>.mp4")]
    [InlineData("\"><img src=x onerror=alert(1)>.mp4")]
    [InlineData("a|b|c.mp4")]
    [InlineData("[click](javascript:alert(1)).mp4")]
    [InlineData("line\nbreak # heading.mp4")]
    [InlineData("![x](http://example.com/a.png).mp4")]
    [InlineData("`code` *bold* _it_ ~~no~~.mp4")]
    [InlineData("gnp\u202Eexe.mp4")]
    [InlineData("&lt;b&gt;.mp4")]
    public void HostileName_StaysText(string name)
    {
        var summary = Of(Entry(name, NightEnd.SetAside, 1, name));
        string html = NightHtml.Write(summary), markdown = NightMarkdown.Write(summary);

        Assert.Empty(Regex.Matches(html, "<(script|img|b)\\b"));
        Assert.Equal(Regex.Count(NightHtml.Write(Of(Entry("x.mp4", NightEnd.SetAside, 1, "x.mp4"))), "<[^>]*>"), Regex.Count(html, "<[^>]*>"));
        var rows = markdown.Split('\n').Where(l => l.StartsWith('|')).ToList();
        Assert.Equal(NightMarkdown.Write(Of(Entry("x.mp4", NightEnd.SetAside, 1, "x.mp4"))).Split('\n').Length, markdown.Split('\n').Length);
        Assert.All(rows, r => Assert.Contains(Regex.Count(r, @"(?<!\\)\|"), new[] { 3, 4, 5 }));
        Assert.DoesNotMatch(@"(?<!\\)[\[\]<`]", markdown);
        Assert.DoesNotContain('\u202E', markdown + html);
    }

    [Fact]
    public void EmptyNight_SaysSo() => Assert.Contains("No clip was flagged.", NightHtml.Write(Of()), StringComparison.Ordinal);

    private static NightSummary Of(params NightEntry[] entries) =>
        NightSummary.Of(new(2026, 11, 24), _evening.AddHours(8), "22:00-06:00 (UTC)", "Spring", entries, 2, []);

    private static NightEntry Entry(string file, NightEnd end, double seconds, string? reason = null, string[]? flags = null, int retries = 0, int after = 0) =>
        new(_evening.AddSeconds(after), "m-1", file, end, reason, reason, 100, 10, flags ?? [], seconds, retries);
}
