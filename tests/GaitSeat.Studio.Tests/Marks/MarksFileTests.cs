using System.Security.Cryptography;
using GaitSeat.Model;
using GaitSeat.Studio.Accuracy.Marks;

namespace GaitSeat.Studio.Tests.Marks;

/// <summary>The table in the repository, and what is said of a table that is wrong.</summary>
public sealed class MarksFileTests
{
    private const string Header = "picture,sha256,time_s,width_px,height_px,facing,view,rider_top_px,rider_bottom_px,pass,point,x_px,y_px,visibility";
    private static readonly string Folder = Path.Combine(Root(), "datasets", "marks");
    private static readonly string Hash = new('a', 64);

    // The reader has refused marks outside the picture, unknown words and pictures without all nine points.
    [Fact]
    public void TheTable_HoldsSixtyPicturesAndFifteenMarkedTwice()
    {
        var all = MarksFile.Read(Path.Combine(Folder, "marks.csv"));
        Assert.True(all.Count(p => p.Pass == 1) >= 60, $"{all.Count(p => p.Pass == 1)} pictures");
        Assert.Equal(15, new MarkerRepeat(all).Pictures);
        Assert.Equal(all.Count(p => p.Pass == 2), new MarkerRepeat(all).Pictures);
        Assert.All(all.GroupBy(p => p.Picture), g => Assert.Single(g.Select(p => p.Sha256).Distinct()));
        Assert.True(all.SelectMany(p => p.Marks.Values).Count(m => m.Visibility == MarkVisibility.Clear) > 200);
    }

    [Fact]
    public void MarksOfRenderedFrames_LieNearTheTruth()
    {
        var folder = SharedFolder.Find("footage/truth");
        var readings = (from clip in MarksFile.Read(Path.Combine(Folder, "rendered.csv")).GroupBy(p => p.Picture)
                        let truth = TruthFile.Read(TruthFile.PathFor(folder, Path.GetFileNameWithoutExtension(clip.Key)))
                        from picture in clip
                        select TruthReading.Of(picture, truth.FrameRows, truth.Fps)).ToList();
        Assert.All(readings, r => Assert.Null(r.LeftOutReason));
        // A wrong frame, mirror or shift would put points a tenth of the rider and more away; what a joint is taken to be, up to 4 %.
        Assert.All(PointErrors.Of(readings).GroupBy(e => e.Point), g => Assert.InRange(g.Select(e => e.Offset.LengthPct).Order().ElementAt(g.Count() / 2), 0, 5));
    }

    [Fact]
    public void TheFolder_HoldsNoFootage() => Assert.Equal(["README.md", "marks.csv", "rendered.csv"], Directory.EnumerateFiles(Folder, "*", SearchOption.AllDirectories).Select(p => Path.GetFileName(p)!).Order(StringComparer.Ordinal));

    [Fact]
    public void MarkedStills_AreTheFilesOfTheSharedFolder()
    {
        var stills = SharedFolder.Find("footage/stills");
        var marked = MarksFile.Read(Path.Combine(Folder, "marks.csv")).Where(p => p.IsStill && p.Pass == 1).ToList();
        Assert.All(marked, p => Assert.Equal(p.Sha256, Convert.ToHexStringLower(SHA256.HashData(File.ReadAllBytes(Path.Combine(stills, p.Picture))))));
    }

    [Theory]
    [InlineData("hip,10,20,clear", "begins a picture with 1 points")]
    [InlineData("nose,10,20,clear", "allowed are ear, shoulder")]
    [InlineData("hip,10,500,clear", "outside the picture")]
    [InlineData("hip,10,x,clear", "a number is needed")]
    [InlineData("hip,10,20,hidden", "gives a place to a hidden point")]
    [InlineData("hip,10,20,seen", "allowed are clear, judged, hidden")]
    [InlineData("hip,10,20", "14 are needed")]
    public void WrongRow_IsRefusedWithItsLine(string end, string said)
    {
        var path = Path.Combine(Path.GetTempPath(), Path.GetRandomFileName());
        File.WriteAllText(path, $"{Header}\na.jpg,{Hash},,100,200,left,side,5,190,1,{end}\n");
        try
        {
            var message = Assert.Throws<InvalidDataException>(() => MarksFile.Read(path)).Message;
            Assert.Contains("line 2", message, StringComparison.Ordinal);
            Assert.Contains(said, message, StringComparison.Ordinal);
        }
        finally
        {
            File.Delete(path);
        }
    }

    private static string Root()
    {
        var folder = new DirectoryInfo(AppContext.BaseDirectory);
        while (folder is not null && !File.Exists(Path.Combine(folder.FullName, "GaitSeat.sln"))) folder = folder.Parent;
        return folder?.FullName ?? throw new DirectoryNotFoundException($"No GaitSeat.sln above {AppContext.BaseDirectory}.");
    }
}
