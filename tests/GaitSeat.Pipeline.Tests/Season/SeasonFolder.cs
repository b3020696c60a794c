using System.Diagnostics;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Model;
using GaitSeat.Studio;
using Spectre.Console;
using Spectre.Console.Testing;

namespace GaitSeat.Pipeline.Tests.Season;

/// <summary>A folder with two made clips (a rising trot, a walk) and everything that must be set aside, made once for all tests.</summary>
public sealed class SeasonFolder : IAsyncLifetime
{
    public const string Trot = "trot.mp4";
    public const string Walk = "walk.mp4";

    public string Folder { get; } = Directory.CreateTempSubdirectory("gaitseat-season-").FullName;

    public string Clips => Path.Combine(Folder, "clips");

    public async ValueTask InitializeAsync()
    {
        Directory.CreateDirectory(Clips);
        var renderer = new StudioRenderer(FfmpegTools.Locate());
        await renderer.RenderAsync(new ClipScript { Seed = 11, Gait = Gait.RisingTrot, DurationSeconds = 4 }, Folder, "trot", CancellationToken.None);
        await renderer.RenderAsync(new ClipScript { Seed = 12, Gait = Gait.Walk, DurationSeconds = 4 }, Folder, "walk", CancellationToken.None);
        foreach (var name in new[] { Trot, Walk }) File.Move(Path.Combine(Folder, name), Path.Combine(Clips, name));
        await File.WriteAllBytesAsync(Path.Combine(Clips, "empty.mp4"), []);
        await File.WriteAllTextAsync(Path.Combine(Clips, "text.mp4"), "This is not a film.");
        await File.WriteAllTextAsync(Path.Combine(Clips, "session-sheet.csv"),
            "clip_file,session_date,rider,horse,rider_stature_cm,consent,yard\n" +
            $"{Trot},2026-04-01,Amber,Drum,168,yes,north\n{Walk},2026-04-01,Amber,Drum,168,yes,north\ntext.mp4,2026-04-01,Slate,Drum,170,yes,north\nempty.mp4,2026-04-01,Slate,Drum,170,yes,north\n");
    }

    public ValueTask DisposeAsync()
    {
        Directory.Delete(Folder, recursive: true);
        return ValueTask.CompletedTask;
    }

    /// <summary>Codes the trot anew, small and with some noise, so that every frame has something to spoil.</summary>
    /// <param name="path">The new clip.</param>
    /// <param name="filter">Between scaling and noise; with a comma at its end if there is one.</param>
    /// <param name="coding">FFmpeg's options for the new clip.</param>
    public async Task CodeAnewAsync(string path, string filter, params IEnumerable<string> coding)
    {
        string[] words = ["-nostdin", "-v", "error", "-y", "-i", Path.Combine(Clips, Trot), "-vf", $"scale=640:-2,{filter}noise=alls=4:allf=t", "-c:v", "libx264", "-preset", "ultrafast", .. coding, path];
        using var process = Process.Start(FfmpegTools.Locate().FfmpegPath, words);
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
    }

    /// <summary>Runs the program in this process as a user would call it.</summary>
    public static async Task<(int Code, string Out, string Error)> RunAsync(CancellationToken ct, params string[] args)
    {
        using TestConsole output = new(), error = new();
        output.Profile.Width = error.Profile.Width = 200;
        using var raw = new StringWriter();
        var code = await CommandLine.RunAsync(args, new AnsiConsoles(output, error, raw), ct);
        return (code, raw + output.Output, error.Output);
    }
}

[CollectionDefinition(nameof(SeasonFolder))]
public sealed class SharedSeasonFolder : ICollectionFixture<SeasonFolder>;
