using GaitSeat.Cli.Watching;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>The host around the program, as far as it can be tried without a service manager: the work's end ends the host, and its code comes through.</summary>
public sealed class WindowsServiceTests
{
    [Fact]
    public async Task WorkThatEnds_EndsTheHost_WithItsCode() =>
        Assert.Equal(7, await WindowsService.RunAsync(_ => Task.FromResult(7)).WaitAsync(TimeSpan.FromMinutes(1)));

    [Fact]
    public void OutsideAServiceManager_ItIsNotAsked() => Assert.False(WindowsService.IsAsked);
}
