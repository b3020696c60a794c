using GaitSeat.Pipeline.Privacy;
using GaitSeat.Pipeline.Queue;
using GaitSeat.Pipeline.Tests.Watch;
using GaitSeat.Pipeline.Watch;

namespace GaitSeat.Pipeline.Tests.Privacy;

public sealed class QueueErasureTests
{
    [Fact]
    public async Task JobsOfAClip_GoFromEveryTable_AndOthersStay()
    {
        if (!PostgresServer.IsInstalled) Assert.Skip(PostgresServer.Missing);
        await using var server = await PostgresServer.StartAsync();
        using var jobs = new SeasonJobs(QueueStorage.PostgreSql(server.Connection, new()), "season_x", "m-1", new(), TimeProvider.System, (_, _) => Task.CompletedTask);
        ClipTicket[] clips = [new("a ü.mp4", 8, 1), new("xa ü.mp4", 9, 2), new("a+(b).mp4", 7, 3)];
        Assert.Equal(3, jobs.Offer(clips).Count);
        Assert.True(QueueErasure.Count(server.Connection, ["a ü.mp4"]) >= 2);
        Assert.True(QueueErasure.Count(server.Connection, ["a+(b).mp4"]) >= 2);
        var others = QueueErasure.Count(server.Connection, ["xa ü.mp4"]);

        Assert.True(QueueErasure.Erase(server.Connection, ["a ü.mp4", "a+(b).mp4"]) >= 4);

        Assert.Equal(0, QueueErasure.Count(server.Connection, ["a ü.mp4", "a+(b).mp4"]));
        Assert.Equal(others, QueueErasure.Count(server.Connection, ["xa ü.mp4"]));
        Assert.Equal(["xa ü.mp4"], await server.TextsAsync("SELECT DISTINCT j.arguments::text FROM gaitseat_queue.jobqueue q JOIN gaitseat_queue.job j ON j.id = q.jobid", a => a.Contains("xa", StringComparison.Ordinal) ? "xa ü.mp4" : a));
        // Nothing in any other column of any table tells of the clip either.
        Assert.Empty(await server.TextsAsync("SELECT table_name FROM information_schema.tables WHERE table_schema = 'gaitseat_queue' AND query_to_xml('SELECT * FROM gaitseat_queue.\"' || table_name || '\"', true, true, '')::text ~ '[^x]a (ü|\\\\\\\\u00FC)'", t => t));
    }
}
