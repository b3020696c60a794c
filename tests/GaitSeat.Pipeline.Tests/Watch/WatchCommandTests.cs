using System.Net;
using System.Net.Sockets;
using System.Text.Json;
using GaitSeat.Cli;
using GaitSeat.Pipeline.Tests.Season;
using GaitSeat.Store;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>The worker as a user calls it, with real child processes, on files that are no videos.</summary>
public sealed class WatchCommandTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("gaitseat-watchcmd-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public async Task Watch_SetsAsideWhatIsNoVideo_TellsItsHealth_AndStopsWhenAsked()
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        string clips = Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName, dataset = Path.Combine(_folder, "dataset"), pipeline = Path.Combine(_folder, "p.yaml");
        var port = FreePort();
        await File.WriteAllTextAsync(pipeline, $"watch:\n  scan_seconds: 0.2\n  settle_seconds: 0\n  health_port: {port}\n  storage:\n    free_minimum_mb: 0\n");
        await File.WriteAllTextAsync(Path.Combine(clips, "text.mp4"), "no film");
        await File.WriteAllBytesAsync(Path.Combine(clips, "empty.mp4"), []);
        using var stop = new CancellationTokenSource();

        var run = Task.Run(() => SeasonFolder.RunAsync(stop.Token, "watch", clips, "--dataset", dataset, "--pipeline", pipeline));
        using var web = new HttpClient { BaseAddress = new($"http://localhost:{port}") };
        var health = await HealthAsync(web, run, h => h.GetProperty("clips").TryGetProperty("set_aside", out var n) && n.GetInt32() == 2);

        Assert.Equal(1, health.GetProperty("set_aside").GetProperty("not_a_video").GetInt32());
        Assert.Equal("well", health.GetProperty("status").GetString());
        using var foreign = new HttpRequestMessage(HttpMethod.Get, "/health") { Headers = { Host = "elsewhere.example" } };
        Assert.Equal(HttpStatusCode.Forbidden, (await web.SendAsync(foreign)).StatusCode);
        Assert.Contains("Dashboard", await web.GetStringAsync("/queue"), StringComparison.Ordinal);

        await stop.CancelAsync();
        Assert.Equal(ExitCodes.Done, (await run).Code);
        Assert.Equal(["file_empty", "not_a_video"], Dataset.Open(dataset).Clips().Select(c => c.Reason!).Order());
        Assert.Contains("file\\_empty", await File.ReadAllTextAsync(Directory.GetFiles(Path.Combine(dataset, "worker", "summaries"), "*.md").Single()), StringComparison.Ordinal);
        Assert.Contains("\"Clip\":\"text.mp4\"", await File.ReadAllTextAsync(Directory.GetFiles(Path.Combine(dataset, "worker", "logs")).Single()), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("nonsense")]
    [InlineData("Host=127.0.0.1;Port=1;Username=x;Password=secret;Timeout=2")]
    public async Task QueueThatCannotBeOpened_IsWrongUsage_AndSaysWhatIsAllowed(string connection)
    {
        if (!Repository.HasWeights) Assert.Skip(Repository.WeightsMissing);
        var clips = Directory.CreateDirectory(Path.Combine(_folder, "clips")).FullName;

        var (code, _, error) = await SeasonFolder.RunAsync(default, "watch", clips, "--dataset", Path.Combine(_folder, "dataset"), "--queue", connection);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("the queue cannot be opened", error, StringComparison.Ordinal);
        Assert.DoesNotContain("secret", error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task HealthPageOpenToAll_WithoutAPassword_IsWrongUsage()
    {
        var pipeline = Path.Combine(_folder, "open.yaml");
        await File.WriteAllTextAsync(pipeline, "watch:\n  health_address: 0.0.0.0\n");

        var (code, _, error) = await SeasonFolder.RunAsync(default, "watch", _folder, "--dataset", Path.Combine(_folder, "dataset"), "--pipeline", pipeline);

        Assert.Equal(ExitCodes.WrongUsage, code);
        Assert.Contains("GAITSEAT_HEALTH_PASSWORD", error, StringComparison.Ordinal);
    }

    private static async Task<JsonElement> HealthAsync(HttpClient web, Task run, Func<JsonElement, bool> holds)
    {
        for (var i = 0; i < 600 && !run.IsCompleted; i++)
        {
            try
            {
                using var json = JsonDocument.Parse(await web.GetStringAsync("/health"));
                if (holds(json.RootElement)) return json.RootElement.Clone();
            }
            catch (HttpRequestException)
            {
                // Not up yet.
            }

            await Task.Delay(100);
        }

        Assert.Fail("the worker did not come to that within a minute");
        return default;
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
