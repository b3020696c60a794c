namespace GaitSeat.Studio.Tests;

public sealed class TruthFileTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-truth-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void WrittenTruth_ReadsBackTheSame()
    {
        var made = TruthOfARideTests.TruthOf(new ClipScript { Seed = 3, DurationSeconds = 3 });
        var truth = made with
        {
            Conditions = new Dictionary<string, string> { ["camera"] = "pan-zoom", ["horse"] = "pony" },
            Spells = [new(0, 1.25, "walk"), new(1.5, 3, "rising")],
            StirrupChanges = [1.375],
            Strides = [.. made.Strides.Select((s, i) => i == 0 ? s with { Fault = "double-bounce" } : s)],
        };
        var path = TruthFile.PathFor(_folder, "clip");
        TruthFile.Write(path, truth);
        var read = TruthFile.Read(path);
        Assert.Equal(Plain(truth), Plain(read));
        Assert.Equal(truth.Conditions, read.Conditions);
        Assert.Equal(truth.Spells, read.Spells);
        Assert.Equal(Model.Gait.RisingTrot, read.Spells[1].GaitTerm);
        Assert.Equal(truth.StirrupChanges, read.StirrupChanges);
        Assert.Equal(truth.Strides, read.Strides);
        Assert.Equal(truth.Frames, read.FrameRows.Count);
        foreach (var (wrote, got) in truth.FrameRows.Zip(read.FrameRows))
        {
            Assert.Equal(wrote["knee"].Px.X, got["knee"].Px.X, 0.0006);
            Assert.Equal(wrote["bar"].Visibility, got["bar"].Visibility);
            Assert.Equal(wrote["tread"].Metres!.Value.Up, got["tread"].Metres!.Value.Up, 0.000006);
            Assert.Equal(wrote.RiseCm, got.RiseCm, 0.00006);
            Assert.Equal(wrote.YawDeg, got.YawDeg, 0.0006);
            Assert.Equal(Model.Facing.Right, got.Facing);
        }
    }

    [Fact]
    public void OlderFile_IsOneSpellWithoutConditions()
    {
        var path = TruthFile.PathFor(_folder, "clip");
        TruthFile.Write(path, TruthOfARideTests.TruthOf(new ClipScript { DurationSeconds = 1, Gait = Model.Gait.Walk }));
        string[] newer = ["conditions", "spells", "stirrup_changes"];
        var json = System.Text.Json.Nodes.JsonNode.Parse(File.ReadAllText(path))!.AsObject();
        foreach (var key in newer) Assert.True(json.Remove(key), key);
        File.WriteAllText(path, json.ToJsonString());
        var csv = path.Replace(".json", ".csv", StringComparison.Ordinal);
        File.WriteAllText(csv, File.ReadAllText(csv).Replace(",facing,", ",other,", StringComparison.Ordinal));

        var read = TruthFile.Read(path);
        Assert.Equal([new TruthSpell(0, 1, "walk")], read.Spells);
        Assert.Empty(read.Conditions);
        Assert.Empty(read.StirrupChanges);
        Assert.All(read.FrameRows, r => Assert.Null(r.Facing));
    }

    [Theory]
    [InlineData("c02_pan_n45_r10_d3", "rising", 8, 0.4043)]
    [InlineData("c11_static_s58_r10_60fps", "rising", 8, null)]
    [InlineData("c16_walk", "walk", 7, null)]
    public void TruthOfAnotherRenderer_IsReadWithTheSameReader(string clip, string gait, int strides, double? thighM)
    {
        var truth = TruthFile.Read(Path.Combine(SharedFolder.Find("footage/truth"), clip + ".truth.json"));
        Assert.Equal(gait, truth.Gait);
        Assert.Equal(strides, truth.Strides.Count);
        Assert.Equal(truth.Frames, truth.FrameRows.Count);
        if (thighM is { } expected) Assert.Equal(expected, truth.ThighLenM!.Value, 1e-4);
        // The file gives the offset from the bar only; ours is worked out from the points in space.
        Assert.All(truth.Strides, s => Assert.InRange(s.DriftOffsetHipCm!.Value, 0, 25));
        Assert.Equal([new TruthSpell(0, truth.DurationS, gait)], truth.Spells);
        Assert.Contains(truth.FrameRows, r => r.YawDeg != 0);
    }

    // Lists compare by reference in a record.
    private static ClipTruth Plain(ClipTruth truth) =>
        truth with { Strides = [], FrameRows = [], Spells = [], StirrupChanges = [], Conditions = NoConditions };

    private static readonly Dictionary<string, string> NoConditions = [];

    [Fact]
    public void FileThatIsNoTruth_SaysWhatIsMissing()
    {
        var path = TruthFile.PathFor(_folder, "bad");
        File.WriteAllText(path, """{ "clip": "bad" }""");
        var e = Assert.Throws<InvalidDataException>(() => TruthFile.Read(path));
        Assert.Contains("fps", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void BadCell_NamesLineAndColumn()
    {
        var path = TruthFile.PathFor(_folder, "clip");
        TruthFile.Write(path, TruthOfARideTests.TruthOf(new ClipScript { DurationSeconds = 1 }));
        var csv = path.Replace(".json", ".csv", StringComparison.Ordinal);
        var lines = File.ReadAllLines(csv);
        lines[2] = "x" + lines[2];
        File.WriteAllLines(csv, lines);
        var e = Assert.Throws<InvalidDataException>(() => TruthFile.Read(path));
        Assert.Contains("line 3, column 'frame'", e.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void NoFile_NamesIt() =>
        Assert.Contains("gone.truth.json", Assert.Throws<FileNotFoundException>(() => TruthFile.Read(Path.Combine(_folder, "gone.truth.json"))).Message, StringComparison.Ordinal);
}
