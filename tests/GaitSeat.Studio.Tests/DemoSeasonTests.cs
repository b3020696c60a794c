using GaitSeat.Model;

namespace GaitSeat.Studio.Tests;

public sealed class DemoSeasonTests : IDisposable
{
    private const string Tiny = """
        {
          "name": "tiny", "seed": 1,
          "riders": [
            { "name": "Plover", "horse": "Moth", "stature_cm": 165,
              "sessions": [
                { "date": "2026-03-01", "stirrup_hole": 8, "note": "short, \"windy\"",
                  "clip": { "width_px": 320, "height_px": 180, "rider_height_px": 70, "duration_seconds": 0.2, "frame_rate_hz": 25 } },
                { "date": "2026-03-02", "consent": false,
                  "clip": { "width_px": 320, "height_px": 180, "rider_height_px": 70, "duration_seconds": 0.2, "frame_rate_hz": 25, "facing": "left" } }
              ] }
          ]
        }
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-season-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void SeasonOfTheRepository_IsWhatTheCardSays()
    {
        var season = DemoSeason.Load(SeasonPath());
        Assert.True(season.Riders.Count >= 6);
        Assert.All(season.Riders, r => Assert.True(r.Sessions.Count >= 3, r.Name));
        Assert.Equal(season.Clips.Count, season.Clips.Select(c => c.Name).Distinct().Count());
        Assert.InRange(season.Clips.Sum(c => c.Script.DurationSeconds), 60, 90);
        Assert.Single(season.Clips, c => !c.Session.Consent);
        Assert.Single(season.Clips, c => c.Script.Gait == Gait.Walk);
        Assert.Single(season.Clips, c => c.Script.Gait == Gait.SittingTrot);
        Assert.Equal(2, season.Clips.Count(c => c.Script.FrameRateHz == 50));
        Assert.Equal(season.Clips.Count, season.Clips.Select(c => c.Script.Seed).Distinct().Count());
    }

    [Fact]
    public async Task MadeTwice_DoesNothingTheSecondTime()
    {
        var season = DemoSeason.Load(Written(Tiny));
        var clips = Path.Combine(_folder, "clips");
        var (first, second) = (new Heard(), new Heard());
        await season.MakeAsync(clips, first, CancellationToken.None);
        var stamps = Stamps(clips);
        await season.MakeAsync(clips, second, CancellationToken.None);
        Assert.Equal([true, true], first.Steps.Select(s => s.Made));
        Assert.Equal([false, false], second.Steps.Select(s => s.Made));
        Assert.Equal(stamps, Stamps(clips));
        Assert.Equal(["plover-2026-03-01.mp4", "plover-2026-03-02.mp4"], Directory.GetFiles(clips, "*.mp4").Select(Path.GetFileName).Order());
        Assert.True(File.Exists(Path.Combine(clips, "truth", "plover-2026-03-01.truth.csv")));
    }

    [Fact]
    public async Task Sheet_HasARowForEveryClip()
    {
        var season = DemoSeason.Load(Written(Tiny));
        await season.MakeAsync(_folder, null, CancellationToken.None);
        var lines = await File.ReadAllLinesAsync(Path.Combine(_folder, "session-sheet.csv"));
        Assert.Equal("clip_file,session_date,rider,horse,rider_stature_cm,stirrup_hole,leather_cm,rein,consent,note", lines[0]);
        var leather = Math.Round(200 * new Ride(season.Clips[0].Script).LeatherM) / 2;
        Assert.Equal(FormattableString.Invariant($"plover-2026-03-01.mp4,2026-03-01,Plover,Moth,165,8,{leather},right,yes,\"short, \"\"windy\"\"\""), lines[1]);
        Assert.EndsWith(",left,no,", lines[2], StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("\"seed\": 1,", "\"seed\": 1, \"colour\": 2,", "colour")]
    [InlineData("\"stature_cm\": 165", "\"stature_cm\": 16", "stature_cm is 16, allowed 120 to 210")]
    [InlineData("\"facing\": \"left\"", "\"facing\": \"up\"", "line")]
    public void WrongDefinition_SaysWhereAndWhat(string right, string wrong, string expected)
    {
        var path = Written(Tiny.Replace(right, wrong, StringComparison.Ordinal));
        var e = Assert.Throws<InvalidDataException>(() => DemoSeason.Load(path));
        Assert.Contains(path, e.Message, StringComparison.Ordinal);
        Assert.Contains(expected, e.Message, StringComparison.Ordinal);
    }

    private string Written(string text)
    {
        var path = Path.Combine(_folder, "season.json");
        File.WriteAllText(path, text);
        return path;
    }

    private static string[] Stamps(string folder) =>
        [.. Directory.GetFiles(folder, "*", SearchOption.AllDirectories).Order(StringComparer.Ordinal).Select(f => $"{f} {File.GetLastWriteTimeUtc(f).Ticks}")];

    internal static string SeasonPath()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            var path = Path.Combine(folder.FullName, "datasets", "demo-season.json");
            if (File.Exists(path)) return path;
        }

        throw new FileNotFoundException("datasets/demo-season.json is not above the test's folder.");
    }

    private sealed class Heard : IProgress<DemoProgress>
    {
        public List<DemoProgress> Steps { get; } = [];

        public void Report(DemoProgress value) => Steps.Add(value);
    }
}
