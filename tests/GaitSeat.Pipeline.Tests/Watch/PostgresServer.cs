using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A real PostgreSQL on a free loopback port in a folder of its own, for one test or benchmark.</summary>
internal sealed class PostgresServer : IAsyncDisposable
{
    private readonly string _folder;
    private readonly string _programs;
    private readonly int _port;

    private PostgresServer(string folder, string programs, int port) => (_folder, _programs, _port) = (folder, programs, port);

    public const string Missing = "PostgreSQL is not installed (Debian: apt-get install postgresql), so nothing with a shared queue is run.";

    public static bool IsInstalled => Programs() is not null;

    public string Connection => $"Host=127.0.0.1;Port={_port};Username=gaitseat;Database=postgres";

    /// <exception cref="InvalidOperationException">It is not installed, or does not start.</exception>
    public static async Task<PostgresServer> StartAsync()
    {
        var programs = Programs() ?? throw new InvalidOperationException(Missing);
        var folder = Directory.CreateTempSubdirectory("gaitseat-pg-").FullName;
        var server = new PostgresServer(folder, programs, FreePort());
        if (IsRoot) await RunAsync("chown", "postgres", folder);
        await server.ProgramAsync("initdb", "-D", server.Data, "-A", "trust", "-U", "gaitseat", "-E", "UTF8", "--no-sync");
        await server.ResumeAsync();
        return server;
    }

    /// <summary>Ends it as a crash does, or a power cut: no connection is closed, nothing is written out.</summary>
    public Task KillAsync() => ProgramAsync("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");

    /// <summary>SIGKILL for the server's first process; the others notice and go.</summary>
    public async Task KillHardAsync()
    {
        var id = int.Parse((await File.ReadAllLinesAsync(Path.Combine(Data, "postmaster.pid")))[0], null);
        using var first = Process.GetProcessById(id);
        first.Kill();
    }

    /// <summary>Drops a schema with all that is in it.</summary>
    public async Task ForgetAsync(string schema)
    {
        await using var connection = new Npgsql.NpgsqlConnection(Connection);
        await connection.OpenAsync();
        await using var drop = new Npgsql.NpgsqlCommand($"DROP SCHEMA IF EXISTS {schema} CASCADE", connection);
        await drop.ExecuteNonQueryAsync();
    }

    /// <summary>The first column of an answer.</summary>
    public async Task<IReadOnlyList<string>> TextsAsync(string sql, Func<string, string> told)
    {
        await using var connection = new Npgsql.NpgsqlConnection(Connection);
        await connection.OpenAsync();
        await using var command = new Npgsql.NpgsqlCommand(sql, connection);
        await using var reader = await command.ExecuteReaderAsync();
        var texts = new List<string>();
        while (await reader.ReadAsync()) texts.Add(told(reader.GetString(0)));
        return texts;
    }

    /// <summary>Starts it again on the same port, with what it had written.</summary>
    public async Task ResumeAsync()
    {
        const int Tries = 50;
        var options = $"-p {_port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='{_folder}' -c fsync=off";
        // After a SIGKILL the other processes of the server take a moment to go; until then it does not start.
        for (var i = 1; await ExitCodeAsync("pg_ctl", "-D", Data, "-l", Path.Combine(_folder, "log"), "-w", "-o", options, "start") != 0; i++)
        {
            if (i == Tries) throw new InvalidOperationException($"PostgreSQL did not start in {Tries} tries");
            await Task.Delay(100);
        }
    }

    public async ValueTask DisposeAsync()
    {
        await ExitCodeAsync("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");
        Directory.Delete(_folder, recursive: true);
    }

    private string Data => Path.Combine(_folder, "data");

    private static bool IsRoot => Environment.UserName == "root";

    /// <summary>PostgreSQL refuses to run as root; Debian's package brings the user.</summary>
    private Task<int> ExitCodeAsync(string program, params string[] arguments) =>
        IsRoot ? RunAsync("runuser", ["-u", "postgres", "--", Path.Combine(_programs, program), .. arguments]) : RunAsync(Path.Combine(_programs, program), arguments);

    private async Task ProgramAsync(string program, params string[] arguments)
    {
        var code = await ExitCodeAsync(program, arguments);
        if (code != 0) throw new InvalidOperationException($"{program} {string.Join(' ', arguments)} ended with {code}");
    }

    private static async Task<int> RunAsync(string program, params string[] arguments)
    {
        // Nothing is redirected: the server would keep a pipe open for good.
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "cd / && exec \"$@\" >/dev/null", "sh", program, .. arguments]))!;
        await process.WaitForExitAsync();
        return process.ExitCode;
    }

    private static string? Programs()
    {
        var debian = new DirectoryInfo("/usr/lib/postgresql");
        var folders = (debian.Exists ? debian.EnumerateDirectories().OrderByDescending(d => d.Name, StringComparer.Ordinal).Select(d => Path.Combine(d.FullName, "bin")) : [])
            .Concat((Environment.GetEnvironmentVariable("PATH") ?? "").Split(Path.PathSeparator));
        return folders.FirstOrDefault(f => File.Exists(Path.Combine(f, "initdb")) && File.Exists(Path.Combine(f, "pg_ctl")));
    }

    private static int FreePort()
    {
        using var listener = new TcpListener(IPAddress.Loopback, 0);
        listener.Start();
        return ((IPEndPoint)listener.LocalEndpoint).Port;
    }
}
