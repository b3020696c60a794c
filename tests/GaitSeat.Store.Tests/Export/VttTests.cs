using System.Globalization;
using System.Text.RegularExpressions;

namespace GaitSeat.Store.Tests.Export;

/// <summary>Held against the W3C's WebVTT: header, blocks parted by blank lines, times, escaped text.</summary>
public sealed partial class VttTests(RiddenSeason season) : IClassFixture<RiddenSeason>
{
    [Fact]
    public void Cues_AreTheStridesAndFindingsInOrder()
    {
        var blocks = Blocks();
        Assert.Equal("WEBVTT", blocks[0]);
        Assert.StartsWith("NOTE\nFindings are prompts", blocks[1], StringComparison.Ordinal);
        var cues = blocks.Skip(2).Select(Cue).ToList();
        Assert.Equal(["stride-1-1", "stride-1-2", "stride-2-1", "finding-1"], cues.Select(c => c.Id));
        Assert.Equal(cues.Select(c => c.Start).Order(), cues.Select(c => c.Start));
        Assert.All(cues, c => Assert.True(c.End > c.Start));
        Assert.Equal((0, 0.58, "stride 1, rise 8.5 ± 2.0 cm, thigh at sit 47.0 deg"), (cues[0].Start, cues[0].End, cues[0].Text));
        Assert.Equal("pressing the stirrup: The foot swings forward 6.5 cm.", cues[3].Text);
    }

    [Fact]
    public void TextOfACue_IsEscaped()
    {
        var (text, _) = VttFile.Make([], [new(1, 2, "small_rise", "a --> b & <c>\n\nd")]);
        Assert.EndsWith("\nsmall rise: a --&gt; b &amp; &lt;c&gt;  d\n", text, StringComparison.Ordinal);
    }

    private string[] Blocks()
    {
        using var export = DatasetExport.Open(season.Dataset, null, null);
        var file = export.Vtt(season.Out("vtt")).Files.Single(f => Path.GetFileName(f) == RiddenSeason.Agreed[..16] + ".vtt");
        return File.ReadAllText(file).TrimEnd('\n').Split("\n\n");
    }

    private static (string Id, double Start, double End, string Text) Cue(string block)
    {
        var lines = block.Split('\n');
        Assert.Equal(3, lines.Length);
        var times = Times().Match(lines[1]);
        Assert.True(times.Success, lines[1]);
        static double Seconds(string t) => TimeSpan.Parse(t, CultureInfo.InvariantCulture).TotalSeconds;
        return (lines[0], Seconds(times.Groups[1].Value), Seconds(times.Groups[2].Value), lines[2]);
    }

    [GeneratedRegex(@"^(\d{2}:\d{2}:\d{2}\.\d{3}) --> (\d{2}:\d{2}:\d{2}\.\d{3})$")]
    private static partial Regex Times();
}
