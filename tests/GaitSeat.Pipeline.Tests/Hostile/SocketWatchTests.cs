using System.Diagnostics;

namespace GaitSeat.Pipeline.Tests.Hostile;

/// <summary>A watch that heard nothing would be no proof: it hears a call when there is one, also of a grandchild.</summary>
public sealed class SocketWatchTests : IDisposable
{
    private readonly string _log = Path.GetTempFileName();

    public void Dispose() => File.Delete(_log);

    [Theory]
    [InlineData("bash -c 'echo hello > /dev/tcp/127.0.0.1/9' 2>/dev/null; true", true)]
    [InlineData("bash -c 'echo hello'", false)]
    public async Task Call_IsHeard(string script, bool calls)
    {
        if (!SocketWatch.IsPossible) Assert.Skip("needs strace (Debian: apt-get install strace) and the right to use it");
        var watch = new SocketWatch(_log);

        using var process = Process.Start(watch.Around("/bin/bash", "-c", script))!;
        await process.WaitForExitAsync();

        Assert.Equal(0, process.ExitCode);
        Assert.Equal(calls, watch.Kinds().Contains("AF_INET"));
    }
}
