using System.Text.Json;
using GaitSeat.Cli;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>The main job as a user calls it: real FFmpeg, real models, real Parquet read back by DuckDB.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class ProcessTests(SeasonFolder season)
{
    [Fact]
    public async Task Folder_BecomesADataset_AndASecondRunDoesNothing()
    {
        NeedsWeights();
        var dataset = Path.Combine(season.Folder, "dataset");

        var (code, text, _) = await SeasonFolder.RunAsync(default, "process", season.Clips, "--dataset", dataset, "--json");

        Assert.Equal(ExitCodes.SomeSetAside, code);
        using var json = JsonDocument.Parse(text);
        var clips = json.RootElement.GetProperty("clips").EnumerateArray().ToDictionary(c => c.GetProperty("clip_file").GetString()!);
        Assert.Equal("measured", clips[SeasonFolder.Trot].GetProperty("status").GetString());
        Assert.Equal("not_a_video", clips["text.mp4"].GetProperty("reason").GetString());
        Assert.Equal("file_empty", clips["empty.mp4"].GetProperty("reason").GetString());
        Assert.InRange(clips[SeasonFolder.Trot].GetProperty("strides").GetInt32(), 3, 6);
        Assert.Equal(0, clips[SeasonFolder.Walk].GetProperty("strides").GetInt32());
        foreach (var picture in clips[SeasonFolder.Trot].GetProperty("pictures").EnumerateArray()) Assert.True(new FileInfo(picture.GetString()!).Length > 1000);

        using (var query = new DatasetQuery(dataset))
        {
            var strides = query.Query("select rider, gait, rise_height_cm, rise_height_cm_se, thigh_angle_sit_deg, clip_key, pipeline_hash from strides");
            Assert.Equal(clips[SeasonFolder.Trot].GetProperty("strides").GetInt32(), strides.Count);
            Assert.All(strides, s => Assert.Equal("Amber", s["rider"]));
            Assert.All(strides, s => Assert.InRange(Convert.ToDouble(s["rise_height_cm"]!, null), 4, 15));
            Assert.All(strides, s => Assert.True(Convert.ToDouble(s["rise_height_cm_se"]!, null) > 0));
            Assert.Equal(2L, Convert.ToInt64(query.Query("select count(*) as n from clips where status = 'set_aside'")[0]["n"], null));
        }

        var before = FilesIn(dataset);
        var (again, _, error) = await SeasonFolder.RunAsync(default, "process", season.Clips, "--dataset", dataset);
        Assert.Equal(ExitCodes.Done, again);
        Assert.Contains("already done", error, StringComparison.Ordinal);
        Assert.Equal(before, FilesIn(dataset));
    }

    [Fact]
    public async Task ChangedSetting_MakesNewRows_BesideTheOldOnes()
    {
        NeedsWeights();
        var (clips, dataset) = (OneClip("changed", SeasonFolder.Walk, "rising"), Path.Combine(season.Folder, "dataset-changed"));
        var pipeline = Path.Combine(season.Folder, "slower.yaml");
        await File.WriteAllTextAsync(pipeline, "scout:\n  rate_hz: 3\noutput:\n  overlay: false\n  plot: false\n");

        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "process", clips, "--dataset", dataset)).Code);
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "process", clips, "--dataset", dataset, "--pipeline", pipeline)).Code);

        using var query = new DatasetQuery(dataset);
        Assert.Equal(2, query.Query("select distinct pipeline_hash from clips").Count);
        Assert.Single(query.Query("select distinct clip_key from clips"));
    }

    [Fact]
    public async Task NoConsent_IsNotProcessed_AndLeavesNoRow()
    {
        NeedsWeights();
        var (clips, dataset) = (OneClip("no-consent", SeasonFolder.Walk, "w"), Path.Combine(season.Folder, "dataset-no-consent"));
        await File.WriteAllTextAsync(Path.Combine(clips, SessionSheet.FileName), "clip_file,rider,consent\nw.mp4,Onyx,no\n");

        var (code, text, _) = await SeasonFolder.RunAsync(default, "process", clips, "--dataset", dataset);

        Assert.Equal(ExitCodes.Done, code);
        Assert.Contains("1 without consent", text, StringComparison.Ordinal);
        var left = Directory.EnumerateFiles(dataset, "*", SearchOption.AllDirectories).ToList();
        // How far a rider's consent reaches is kept, for commands that see the dataset alone.
        var consent = Path.Combine(dataset, ConsentRecord.FileName);
        Assert.Contains("Onyx", await File.ReadAllTextAsync(consent), StringComparison.Ordinal);
        Assert.All(left.Where(f => f != consent), f => Assert.StartsWith(Path.Combine(dataset, "worker"), f, StringComparison.Ordinal));
        var key = await ClipKey.OfFileAsync(Path.Combine(clips, "w.mp4"), CancellationToken.None);
        foreach (var said in left.Select(f => f + File.ReadAllText(f))) Assert.False(said.Contains("w.mp4", StringComparison.Ordinal) || said.Contains(key[..8], StringComparison.Ordinal), said);
    }

    [Fact]
    public async Task Stop_LeavesNoTornFile_AndTheNextRunGoesOn()
    {
        NeedsWeights();
        var (clips, dataset) = (OneClip("stopped", SeasonFolder.Walk, "w"), Path.Combine(season.Folder, "dataset-stopped"));
        using var stop = new CancellationTokenSource(TimeSpan.FromSeconds(1.5));

        var stopped = await SeasonFolder.RunAsync(stop.Token, "process", clips, "--dataset", dataset);

        Assert.Equal(ExitCodes.Stopped, stopped.Code);
        Assert.DoesNotContain(FilesIn(dataset), f => f.EndsWith(".parquet", StringComparison.Ordinal));
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "process", clips, "--dataset", dataset)).Code);
        Assert.Contains(FilesIn(dataset), f => f.Contains("clips", StringComparison.Ordinal));
    }

    private static void NeedsWeights()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
    }

    private string OneClip(string folder, string clip, string name)
    {
        var path = Directory.CreateDirectory(Path.Combine(season.Folder, folder)).FullName;
        File.Copy(Path.Combine(season.Clips, clip), Path.Combine(path, name + ".mp4"), overwrite: true);
        return path;
    }

    private static string[] FilesIn(string folder) =>
        [.. Directory.EnumerateFiles(folder, "*", SearchOption.AllDirectories).Select(f => $"{f} {File.GetLastWriteTimeUtc(f):O}").Order(StringComparer.Ordinal)];
}
