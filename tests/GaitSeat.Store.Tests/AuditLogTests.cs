namespace GaitSeat.Store.Tests;

public sealed class AuditLogTests : IDisposable
{
    private static readonly DateTimeOffset At = new(2026, 6, 1, 12, 0, 0, TimeSpan.FromHours(2));
    private readonly TemporaryFolder _folder = new();

    private string File => _folder.File(AuditLog.FileName);

    [Fact]
    public void Lines_ReadBack_InOrder_AndAreOnlyAddedTo()
    {
        var log = new AuditLog(_folder.Path);
        log.Add(At, "coach", "exported", "csv", ["R08", "R07", null, "R07"], [new('a', 64)], "/out");
        var before = System.IO.File.ReadAllText(File);
        log.Add(At, "coach", "shown", "clip", ["R07"], [], null);
        Assert.StartsWith(before, System.IO.File.ReadAllText(File), StringComparison.Ordinal);
        var entries = log.Read();
        Assert.Equal(["exported", "shown"], entries.Select(e => e.Act));
        Assert.Equal(["R07", "R08"], entries[0].Riders);
        Assert.Equal([new string('a', 16)], entries[0].Clips);
        Assert.Equal(TimeSpan.Zero, entries[0].At.Offset);
    }

    [Fact]
    public void TornLine_IsPassedOver_AndTheNextIsWhole()
    {
        System.IO.File.WriteAllText(File, "{\"at\":\"2026");
        var log = new AuditLog(_folder.Path);
        log.Add(At, "coach", "shown", "clip", [], [], null);
        Assert.Equal("shown", Assert.Single(log.Read()).Act);
    }

    [Fact]
    public void ManyAtOnce_LoseNoLine()
    {
        Parallel.For(0, 40, i => new AuditLog(_folder.Path).Add(At, $"judge-{i}", "shown", "clip", [], [], null));
        Assert.Equal(40, new AuditLog(_folder.Path).Read().Select(e => e.Who).Distinct().Count());
    }

    public void Dispose() => _folder.Dispose();
}
