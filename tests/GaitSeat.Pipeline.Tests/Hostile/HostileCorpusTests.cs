using System.Diagnostics;
using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using GaitSeat.Cli;
using GaitSeat.Footage;
using GaitSeat.Pipeline.Tests.Season;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>
/// Thousands of spoilt files and traps through the real program, all in one process of it, with the real FFmpeg and models: one file that brought it down would end the run. The host that
/// the playlists name is this machine, where somebody listens who must not hear a word; and where strace is there, nobody even asks for a socket of the internet.
/// </summary>
[Collection(nameof(SeasonFolder))]
public sealed class HostileCorpusTests(SeasonFolder season, ITestOutputHelper output) : IDisposable
{
    /// <summary>The goal for a worker is 1.5 GiB.</summary>
    private const long MostMegabytes = 1500;

    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-hostile-").FullName;

    private string Clips => Path.Combine(_folder, "clips");

    private SocketWatch Sockets => new(Path.Combine(_folder, "sockets.log"));

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task EachFile_IsMeasuredOrSetAside_AndNothingElseIsTouched()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        if (!OperatingSystem.IsLinux()) Assert.Skip("pipes, devices and memory are looked at as Linux has them");
        var spoilt = LongRun.IsOn ? 2100 : 24;
        Directory.CreateDirectory(Clips);
        var originals = await OriginalsAsync();
        var chance = new Random(4);
        for (var i = 0; i < spoilt; i++)
        {
            var (name, make) = Mutations.All[i % Mutations.All.Count];
            await File.WriteAllBytesAsync(Path.Combine(Clips, $"{i:0000}-{name}.mp4"), make(originals, chance));
        }

        var elsewhere = Path.Combine(_folder, "elsewhere.txt");
        await File.WriteAllTextAsync(elsewhere, "not for you");
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        var traps = await Traps.LayAsync(Clips, originals[0], elsewhere, ((IPEndPoint)listener.LocalEndpoint).Port);
        var before = Outside();

        var begun = Stopwatch.GetTimestamp();
        var (code, text, error, peakMegabytes) = await ProcessAsync();
        var took = Stopwatch.GetElapsedTime(begun);

        Assert.True(code is ExitCodes.SomeSetAside or ExitCodes.NoneMeasured, $"ended with {code}: {error[Math.Max(0, error.Length - 2000)..]}");
        using var json = JsonDocument.Parse(text);
        var ends = json.RootElement.GetProperty("clips").EnumerateArray().ToDictionary(c => c.GetProperty("clip_file").GetString()!, c => c);
        Assert.Equal(Directory.GetFiles(Clips).Count(f => !Path.GetFileName(f).StartsWith('.')), ends.Count);
        // Links that lead nowhere cannot be keyed; the next run looks again.
        string[] nowhere = ["link-to-nothing.mp4", "link-to-itself.mp4"];
        Assert.All(ends, e => Assert.Contains(e.Value.GetProperty("status").GetString(), nowhere.Contains(e.Key) ? ["put_off"] : new[] { "measured", "set_aside", "already_done" }));
        Assert.All(ends.Where(e => e.Value.GetProperty("status").GetString() == "set_aside"), e => Assert.Matches("^[a-z_]+$", e.Value.GetProperty("reason").GetString()));
        Assert.Equal(before, Outside());
        Assert.False(listener.Pending(), "somebody called the host that a playlist names");
        if (SocketWatch.IsPossible) Assert.Empty(Sockets.Kinds().Except([SocketWatch.Local]));
        Assert.DoesNotContain(Directory.EnumerateFileSystemEntries(Directory.GetCurrentDirectory()), f => Path.GetFileName(f) == "pwned");
        Assert.True(peakMegabytes is > 0 and < MostMegabytes, $"a process held {peakMegabytes} MB");
        output.WriteLine(FormattableString.Invariant($"{spoilt} spoilt files and {traps} traps in {took.TotalSeconds:0} s, largest process {peakMegabytes} MB:"));
        foreach (var group in ends.Values.GroupBy(c => $"{c.GetProperty("status")} {c.GetProperty("reason")}").OrderByDescending(g => g.Count())) output.WriteLine($"  {group.Count(),5} {group.Key}");
    }

    /// <summary>Small whole clips in several containers and codecs; one with a rider in it.</summary>
    private async Task<IReadOnlyList<byte[]>> OriginalsAsync()
    {
        const string Bars = "-f lavfi -i testsrc2=s=160x120:r=15:d=1";
        var trot = Path.Combine(season.Clips, SeasonFolder.Trot);
        string[] recipes =
        [
            $"{Bars} -c:v libx264 -preset ultrafast -pix_fmt yuv420p a.mp4", $"{Bars} -c:v libx264 -preset ultrafast -pix_fmt yuv420p -movflags +faststart b.mp4",
            $"{Bars} -c:v libx264 -preset ultrafast -pix_fmt yuv420p -movflags frag_keyframe+empty_moov c.mp4", $"{Bars} -c:v libx264 -preset ultrafast -pix_fmt yuv420p d.mkv",
            $"{Bars} -c:v mpeg4 e.avi", $"{Bars} -c:v mpeg2video f.mpg", $"{Bars} -c:v libx264 -preset ultrafast -pix_fmt yuv420p g.ts",
            $"-i {trot} -t 0.6 -vf scale=480:-2 -c:v libx264 -preset ultrafast -pix_fmt yuv420p h.mp4",
        ];
        var files = new List<byte[]>();
        foreach (var recipe in recipes)
        {
            using var process = Process.Start(new ProcessStartInfo(FfmpegTools.Locate().FfmpegPath, "-nostdin -v error -y " + recipe) { WorkingDirectory = _folder })!;
            await process.WaitForExitAsync();
            Assert.Equal(0, process.ExitCode);
            files.Add(await File.ReadAllBytesAsync(Path.Combine(_folder, recipe.Split(' ')[^1])));
        }

        return files;
    }

    /// <summary>Everything but the dataset, by name, size and time.</summary>
    private string[] Outside() =>
    [
        .. Directory.EnumerateFileSystemEntries(_folder).Concat(Directory.EnumerateFileSystemEntries(Clips))
            .Where(f => Path.GetFileName(f) is not ("dataset" or "p.yaml" or "sockets.log"))
            .Select(f => $"{f} {(File.Exists(f) && new FileInfo(f).LinkTarget is null ? $"{new FileInfo(f).Length} {File.GetLastWriteTimeUtc(f):O}" : "")}").Order(StringComparer.Ordinal),
    ];

    private async Task<(int Code, string Out, string Error, long PeakMegabytes)> ProcessAsync()
    {
        var pipeline = Path.Combine(_folder, "p.yaml");
        await File.WriteAllTextAsync(pipeline, "output:\n  overlay: false\n  plot: false\nrun:\n  retry_pause_seconds: 0.01\n");
        var dotnet = Environment.GetEnvironmentVariable("DOTNET_HOST_PATH") ?? "dotnet";
        string[] words = [typeof(CommandLine).Assembly.Location, "process", Clips, "--dataset", Path.Combine(_folder, "dataset"), "--pipeline", pipeline, "--json"];
        var start = SocketWatch.IsPossible ? Sockets.Around(dotnet, words) : new ProcessStartInfo(dotnet, words);
        (start.RedirectStandardOutput, start.RedirectStandardError) = (true, true);
        using var process = Process.Start(start)!;
        var error = process.StandardError.ReadToEndAsync();
        var text = process.StandardOutput.ReadToEndAsync();
        var peakMegabytes = await PeakMemory.OfMegabytesAsync(process);
        await process.WaitForExitAsync();
        return (process.ExitCode, await text, await error, peakMegabytes);
    }
}
