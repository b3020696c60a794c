using System.Diagnostics;
using System.Text;
using System.Text.RegularExpressions;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Privacy;

/// <summary>The pupil's page from a real clip that carries where and with what it was filmed.</summary>
[Collection(nameof(SeasonFolder))]
public sealed class ReportTests(SeasonFolder season) : IDisposable
{
    private const string Clip = "Anna_Berg.mp4";
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-report-").FullName;

    private string Clips => Path.Combine(_folder, "clips");

    private string Dataset => Path.Combine(_folder, "dataset");

    private string Page => Path.Combine(_folder, "out.html");

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Page_ShowsTheWeek_AndTellsOfNobodyAndNoPlace()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        await FilmAsync();
        var source = await TagsAsync(Path.Combine(Clips, Clip));
        Assert.Contains("+48.1371+011.5754", source, StringComparison.Ordinal);
        Assert.Contains("Anna's phone", source, StringComparison.Ordinal);
        WriteSheet("yes");
        Assert.Equal(ExitCodes.Done, (await SeasonFolder.RunAsync(default, "process", Clips, "--dataset", Dataset)).Code);

        var pdf = File.Exists("/usr/bin/chromium");
        var (code, output, error) = await SeasonFolder.RunAsync(default, ["report", "Amber", "--dataset", Dataset, "--clips", Clips, "--out", Page, "--by", "coach-2", .. pdf ? new[] { "--pdf" } : []]);

        Assert.True(code == ExitCodes.Done, output + error);
        var html = await File.ReadAllTextAsync(Page);
        Assert.Contains("Amber, 1 April 2026", html, StringComparison.Ordinal);
        Assert.Contains("1 clip on 1 day", html, StringComparison.Ordinal);
        Assert.Equal(2, Regex.Count(html, "data:image/jpeg;base64,"));
        Assert.Single(Regex.Matches(html, "data:image/svg\\+xml;base64,"));
        Assert.Contains("Stop at any pain", html, StringComparison.Ordinal);
        Assert.DoesNotMatch("<script|https?://", html);
        foreach (var other in new[] { "Anna", "Berg", "Slate", "Drum", "48.1371" }) Assert.DoesNotContain(other, Words(html), StringComparison.Ordinal);
        if (pdf) Assert.Equal("%PDF-"u8.ToArray(), (await File.ReadAllBytesAsync(Path.ChangeExtension(Page, ".pdf")))[..5]);

        var film = Path.Combine(_folder, "film.mp4");
        await File.WriteAllBytesAsync(film, Convert.FromBase64String(Regex.Match(html, "data:video/mp4;base64,([^\"]+)").Groups[1].Value));
        AssertNoTags(await TagsAsync(film));
        // The dataset's own pictures: none carries the file's name or its tags.
        foreach (var picture in Directory.EnumerateFiles(Path.Combine(Dataset, "pictures")))
        {
            Assert.DoesNotContain("Anna", picture, StringComparison.Ordinal);
            if (picture.EndsWith(".svg", StringComparison.Ordinal)) Assert.DoesNotContain("Anna", await File.ReadAllTextAsync(picture), StringComparison.Ordinal);
            else AssertNoTags(await TagsAsync(picture));
        }

        var logged = Assert.Single(new AuditLog(Dataset).Read());
        Assert.Equal(("coach-2", "reported", Page), (logged.Who, logged.Act, logged.Where));
        Assert.Equal(["Amber"], logged.Riders);

        // What comes of a consent that does not go so far, is over, or of a rider who is not there.
        File.WriteAllText(Path.Combine(Clips, ConsentFile.FileName), "rider,scope,until\nAmber,measure show export,\n");
        await AssertRefusedAsync("Amber", "does not cover 'report'");
        File.WriteAllText(Path.Combine(Clips, ConsentFile.FileName), "rider,scope,until\nAmber,all,2026-05-01\n");
        await AssertRefusedAsync("Amber", "the consent of rider Amber ended with 2026-05-01");
        File.Delete(Path.Combine(Clips, ConsentFile.FileName));
        await AssertRefusedAsync("Nobody", "no rider 'Nobody'");
        WriteSheet("no");
        await AssertRefusedAsync("Amber", "the sheet says no consent");
        Assert.Single(new AuditLog(Dataset).Read());
    }

    private async Task AssertRefusedAsync(string rider, string why)
    {
        File.Delete(Page);
        var (code, _, error) = await SeasonFolder.RunAsync(default, "report", rider, "--dataset", Dataset, "--clips", Clips, "--out", Page, "--no-pictures");
        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains(why, error, StringComparison.Ordinal);
        Assert.False(File.Exists(Page));
    }

    private void WriteSheet(string consent) =>
        File.WriteAllText(Path.Combine(Clips, SessionSheet.FileName), $"clip_file,session_date,rider,horse,rider_stature_cm,consent\n{Clip},2026-04-01,Amber,Drum,168,{consent}\n");

    /// <summary>A clip as a phone writes it: place, device and the owner's name in its metadata.</summary>
    private async Task FilmAsync()
    {
        Directory.CreateDirectory(Clips);
        await RunAsync(FfmpegTools.Locate().FfmpegPath,
        [
            "-v", "error", "-i", Path.Combine(season.Clips, SeasonFolder.Trot), "-c", "copy", "-movflags", "use_metadata_tags", "-metadata", "location=+48.1371+011.5754/", "-metadata", "com.apple.quicktime.location.ISO6709=+48.1371+011.5754/",
            "-metadata", "make=Phone", "-metadata", "model=Anna's phone", "-metadata", "title=Anna Berg", "-metadata", "creation_time=2026-04-01T10:00:00Z", Path.Combine(Clips, Clip),
        ]);
    }

    /// <summary>What can be read on the page, the drawing's words too. Megabytes of Base64 spell any short name by chance.</summary>
    private static string Words(string html) => Regex.Replace(
        html, "data:([a-z/+0-9]+);base64,([^\"]+)", m => m.Groups[1].Value.StartsWith("image/svg", StringComparison.Ordinal) ? Encoding.UTF8.GetString(Convert.FromBase64String(m.Groups[2].Value)) : "");

    private static void AssertNoTags(string tags)
    {
        foreach (var told in new[] { "48.1371", "Anna", "Phone", "location", "2026-04-01", "title" }) Assert.DoesNotContain(told, tags, StringComparison.OrdinalIgnoreCase);
    }

    /// <summary>Every tag of file and streams, as ffprobe tells them.</summary>
    private static Task<string> TagsAsync(string path) => RunAsync(FfmpegTools.Locate().FfprobePath, ["-v", "error", "-show_entries", "format_tags:stream_tags:stream_side_data", path]);

    private static async Task<string> RunAsync(string program, string[] arguments)
    {
        var start = new ProcessStartInfo(program) { RedirectStandardOutput = true };
        foreach (var argument in arguments) start.ArgumentList.Add(argument);
        using var process = Process.Start(start)!;
        var text = await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Assert.Equal(0, process.ExitCode);
        return text;
    }
}
