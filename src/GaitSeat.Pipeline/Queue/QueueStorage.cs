using System.Data.Common;
using System.Security.Cryptography;
using System.Text;
using GaitSeat.Pipeline.Season;
using GaitSeat.Pipeline.Watch;
using Hangfire;
using Hangfire.InMemory;
using Hangfire.PostgreSql;
using Hangfire.PostgreSql.Factories;

namespace GaitSeat.Pipeline.Queue;

/// <summary>Where Hangfire keeps its jobs.</summary>
public static class QueueStorage
{
    /// <summary>Memory: what waits is found again in the folder when the worker starts.</summary>
    public static JobStorage InMemory() => new InMemoryStorage();

    /// <summary>
    /// PostgreSQL, shared by any number of workers. The sliding invisibility timeout is on: a clip of a worker that gives no sign of life goes to another,
    /// one of a living worker stays, however long it takes.
    /// </summary>
    /// <exception cref="SeasonException">The connection string is none, or the server cannot be reached.</exception>
    public static JobStorage PostgreSql(string connection, QueueSettings settings)
    {
        ArgumentException.ThrowIfNullOrEmpty(connection);
        ArgumentNullException.ThrowIfNull(settings);
        try
        {
            var options = new PostgreSqlStorageOptions
            {
                SchemaName = "gaitseat_queue",
                QueuePollInterval = TimeSpan.FromSeconds(settings.PollSeconds),
                UseSlidingInvisibilityTimeout = true,
                InvisibilityTimeout = TimeSpan.FromSeconds(settings.InvisibilitySeconds),
                DistributedLockTimeout = TimeSpan.FromSeconds(settings.InvisibilitySeconds),
            };
            var factory = new NpgsqlConnectionFactory(connection, options);
            // Hangfire tries for half a minute to make its tables in a database that is not there, and then goes on without a word.
            using (var probe = factory.GetOrCreateConnection()) probe.Open();
            return new PostgreSqlStorage(factory, options);
        }
        catch (Exception e) when (e is DbException or ArgumentException or TimeoutException)
        {
            // The string may hold a password; it is not repeated.
            throw new SeasonException($"the queue cannot be opened: {e.Message}. Give --queue a PostgreSQL connection string, such as 'Host=db;Database=gaitseat;Username=gaitseat', and check that the server runs");
        }
    }

    /// <summary>
    /// Hangfire's name for a season's queue: small letters and digits. Other settings or models are another queue, so that workers that would
    /// write other rows do not take each other's clips.
    /// </summary>
    public static string NameOf(string season, string pipelineHash, string modelHash)
    {
        var hash = Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes($"{season}\n{pipelineHash}\n{modelHash}")));
        return "season_" + hash[..16];
    }
}
