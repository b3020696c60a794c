using System.Diagnostics;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>The systemd unit that docs/worker.md recommends, judged by systemd itself.</summary>
public sealed class UnitFileTests
{
    private const string Judge = "/usr/bin/systemd-analyze";

    [Fact]
    public async Task Systemd_AcceptsTheUnitOfTheDocs()
    {
        if (!File.Exists(Judge)) Assert.Skip("systemd is not installed");
        var text = await File.ReadAllTextAsync(Path.Combine(Repository.Root, "docs", "worker.md"));
        var from = text.IndexOf("```ini\n", StringComparison.Ordinal) + "```ini\n".Length;
        var unit = text[from..text.IndexOf("```", from, StringComparison.Ordinal)];
        var folder = Directory.CreateTempSubdirectory("gaitseat-unit-").FullName;
        var path = Path.Combine(folder, "gaitseat.service");
        // It also looks whether the program is there.
        await File.WriteAllTextAsync(path, unit.Replace("/opt/gaitseat/gaitseat", "/bin/true", StringComparison.Ordinal));

        using var process = Process.Start(new ProcessStartInfo(Judge, ["verify", path]) { RedirectStandardError = true, RedirectStandardOutput = true })!;
        var said = await process.StandardError.ReadToEndAsync() + await process.StandardOutput.ReadToEndAsync();
        await process.WaitForExitAsync();
        Directory.Delete(folder, recursive: true);

        Assert.True(process.ExitCode == 0 && !said.Contains("gaitseat.service:", StringComparison.Ordinal), said);
        Assert.Contains("gaitseat watch", unit, StringComparison.Ordinal);
    }
}
