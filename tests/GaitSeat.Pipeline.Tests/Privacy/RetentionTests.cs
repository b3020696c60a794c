using GaitSeat.Cli;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>How long things are kept, by the pipeline file: a dry run that changes nothing, then sessions, pictures and copies, each by its own days.</summary>
public sealed class RetentionTests
{
    [Fact]
    public async Task PipelineFile_SaysHowLong_KindByKind()
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        var (old, young) = (Copy(season, season.Key, days: 8), Copy(season, season.OtherKey, days: 2));
        var picture = Path.Combine(SeasonRun.PictureFolder(season.Folder), $"{season.Key[..16]}-aaaaaaaa-top.jpg");
        var file = season.PathOf("keep.yaml");
        // The sessions are of May 2026: pictures are kept for two days, rows for a century.
        await File.WriteAllTextAsync(file, "retention:\n  session_days: 36500\n  picture_days: 2\n  review_copy_days: 7\n");
        string[] command = ["retention", "--dataset", season.Folder, "--pipeline", file];

        var dry = await SeasonFolder.RunAsync(default, command);
        Assert.Equal(ExitCodes.Done, dry.Code);
        Assert.Contains("No session before", dry.Out, StringComparison.Ordinal);
        Assert.Contains("2 picture files are older than they are kept. Nothing was changed.", dry.Out, StringComparison.Ordinal);
        Assert.Contains("1 review copy files are older than they are kept.", dry.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(old) && File.Exists(picture));

        var done = await SeasonFolder.RunAsync(default, [.. command, "--yes", "--by", "C2"]);
        Assert.Contains("2 picture files: erased.", done.Out, StringComparison.Ordinal);
        Assert.Equal((false, false, true), (File.Exists(picture), File.Exists(old), File.Exists(young)));
        Assert.Equal(2, season.Dataset.Clips().Count);
        Assert.Equal(2, new AuditLog(season.Folder).Read().Count(e => e is { Who: "C2", Act: "erased old files" }));
    }

    [Fact]
    public async Task Flag_MeansSessionsAlone_AndWithoutBothTheDefaultsHold()
    {
        using var season = await TracedSeason.MakeAsync(compact: false);
        var copy = Copy(season, season.Key, days: 31);
        var byFlag = await SeasonFolder.RunAsync(default, "retention", "--dataset", season.Folder, "--keep-days", "36500");
        Assert.DoesNotContain("review copy", byFlag.Out, StringComparison.Ordinal);
        var byDefault = await SeasonFolder.RunAsync(default, "retention", "--dataset", season.Folder);
        Assert.Contains("1 review copy files are older", byDefault.Out, StringComparison.Ordinal);
        Assert.DoesNotContain("session", byDefault.Out, StringComparison.Ordinal);
        Assert.True(File.Exists(copy));
    }

    private static string Copy(TracedSeason season, string key, int days)
    {
        var path = Path.Combine(Directory.CreateDirectory(ReviewCopies.FolderOf(season.Folder)).FullName, ReviewCopies.NameOf(key));
        File.WriteAllText(path, "a film");
        File.SetLastWriteTime(path, TimeProvider.System.GetLocalNow().DateTime.AddDays(-days));
        return path;
    }
}
