using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Watch;
using GaitSeat.Pipeline.Watch.Children;
using GaitSeat.Pipeline.Watch.Policies;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A clip's process as the worker sees it; the process is a shell that behaves as told.</summary>
public sealed class ChildWorkerTests
{
    private readonly Frames _frames = new();

    [Fact]
    public async Task Report_ComesThrough_WithTheFramesBefore()
    {
        var report = await DoAsync(
            """
            echo '{"frames":10}'; echo 'a stray line'; echo '{"frames":20}'
            echo '{"report":{"end":"measured","reason":null,"detail":null,"frames":25,"strides":3,"flags":["heel up"]}}'
            """);

        Assert.Equal((ClipEnd.Measured, 25, 3, "heel up"), (report.End, report.Frames, report.Strides, Assert.Single(report.Flags)));
        Assert.Equal([10, 20], _frames.Seen);
    }

    [Theory]
    [InlineData("kill -SEGV $$", "139")]
    [InlineData("echo 'out of memory' >&2; exit 7", "code 7: out of memory")]
    [InlineData("echo '{\"frames\":10}'", "code 0")]
    public async Task ProcessThatEndsWithoutAWord_IsACrash_AndTheWorkerLives(string script, string told) =>
        Assert.Contains(told, (await Assert.ThrowsAsync<ClipCrashException>(() => DoAsync(script))).Message, StringComparison.Ordinal);

    [Theory]
    [InlineData("kill -KILL $$", "137")]
    [InlineData("kill -TERM $$", "143")]
    public async Task ProcessEndedFromOutside_IsNoCrash(string script, string told) =>
        Assert.Contains(told, (await Assert.ThrowsAsync<ClipKilledException>(() => DoAsync(script))).Message, StringComparison.Ordinal);

    [Fact]
    public async Task Request_GoesInAsOneLine_WithTheRowOfTheSheet()
    {
        var heard = Path.GetTempFileName();
        var session = new Session("a.mp4", new(2026, 5, 31), null, "R07", "H3", new(171.5), 9, null, "left", true, "wind; \"gusts\"", new Dictionary<string, string> { ["arena"] = "süd" });

        await Assert.ThrowsAsync<ClipCrashException>(() => DoAsync($"head -1 > '{heard}'", session: session));

        var request = JsonLines.Parse<ChildRequest>((await File.ReadAllLinesAsync(heard)).Single())!;
        File.Delete(heard);
        Assert.Equal(new("a.mp4", "key", 1, 1), request.Clip);
        Assert.Equal(session with { Extra = request.Session!.Extra }, request.Session);
        Assert.Equal(session.Extra, request.Session.Extra);
    }

    [Fact]
    public async Task Faults_ComeThroughByKind()
    {
        Assert.Equal("no room", (await Assert.ThrowsAsync<IOException>(() => DoAsync("""echo '{"fault":{"kind":"input_output","message":"no room"}}'"""))).Message);
        await Assert.ThrowsAsync<ClipElsewhereException>(() => DoAsync("""echo '{"fault":{"kind":"elsewhere","message":"x"}}'"""));
        await Assert.ThrowsAsync<ClipKilledException>(() => DoAsync("""echo '{"fault":{"kind":"tool_killed","message":"x"}}'"""));
        await Assert.ThrowsAsync<CanPassException>(() => DoAsync("exit 130"));
    }

    [Fact]
    public async Task Stop_EndsTheInput_AndTheProcessEndsByItself()
    {
        var witness = Path.GetTempFileName();
        using var stop = new CancellationTokenSource();
        var work = DoAsync($"echo '{{\"frames\":10}}'; cat >/dev/null; echo stopped > '{witness}'", ct: stop.Token);
        while (_frames.Seen.Count == 0) await Task.Delay(10);

        await stop.CancelAsync();
        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);

        Assert.Equal("stopped\n", await File.ReadAllTextAsync(witness));
        File.Delete(witness);
    }

    [Fact]
    public async Task ProcessThatDoesNotStop_IsEnded()
    {
        using var stop = new CancellationTokenSource();
        var work = DoAsync("echo '{\"frames\":10}'; while true; do sleep 1; done", 0.3, ct: stop.Token);
        while (_frames.Seen.Count == 0) await Task.Delay(10);

        await stop.CancelAsync();

        await Assert.ThrowsAnyAsync<OperationCanceledException>(() => work);
    }

    private Task<ClipReport> DoAsync(string script, double stopSeconds = 20, Session? session = null, CancellationToken ct = default)
    {
        if (OperatingSystem.IsWindows()) Assert.Skip("needs a Unix shell");
        return new ChildWorker(new("/bin/sh", ["-c", script, "clip"]), 5, TimeSpan.FromSeconds(stopSeconds)).DoAsync(new("a.mp4", "key", 1, 1), session, _frames, ct);
    }

    private sealed class Frames : IProgress<int>
    {
        public List<int> Seen { get; } = [];

        public void Report(int value) => Seen.Add(value);
    }
}
