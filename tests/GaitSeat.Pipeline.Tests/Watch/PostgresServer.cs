using System.Diagnostics;
using System.Net;
using System.Net.Sockets;

namespace GaitSeat.Pipeline.Tests.Watch;

/// <summary>A real PostgreSQL on a free loopback port in a folder of its own, for one test.</summary>
internal sealed class PostgresServer : IAsyncDisposable
{
    private readonly string _folder;
    private readonly string _programs;
    private readonly int _port;

    private PostgresServer(string folder, string programs, int port) => (_folder, _programs, _port) = (folder, programs, port);

    public string Connection => $"Host=127.0.0.1;Port={_port};Username=gaitseat;Database=postgres";

    /// <summary>Starts one, or skips the test where PostgreSQL is not installed.</summary>
    public static async Task<PostgresServer> StartAsync()
    {
        if (Programs() is not { } programs)
        {
            Assert.Skip("PostgreSQL is not installed (Debian: apt-get install postgresql), so the shared queue is not tested.");
            return null!;
        }

        var folder = Directory.CreateTempSubdirectory("gaitseat-pg-").FullName;
        var server = new PostgresServer(folder, programs, FreePort());
        if (IsRoot) await RunAsync("chown", "postgres", folder);
        await server.ProgramAsync("initdb", "-D", server.Data, "-A", "trust", "-U", "gaitseat", "-E", "UTF8", "--no-sync");
        await server.ResumeAsync();
        return server;
    }

    /// <summary>Ends it as a crash does, or a power cut: no connection is closed, nothing is written out.</summary>
    public Task KillAsync() => ProgramAsync("pg_ctl", "-D", Data, "-m", "immediate", "-w", "stop");

    /// <summary>Starts it again on the same port, with what it had written.</summary>
    public Task ResumeAsync()
    {
        var options = $"-p {_port} -c listen_addresses=127.0.0.1 -c unix_socket_directories='{_folder}' -c fsync=off";
        return ProgramAsync("pg_ctl", "-D", Data, "-l", Path.Combine(_folder, "log"), "-w", "-o", options, "start");
    }

    public async ValueTask DisposeAsync()
    {
        await KillAsync();
        Directory.Delete(_folder, recursive: true);
    }

    private string Data => Path.Combine(_folder, "data");

    private static bool IsRoot => Environment.UserName == "root";

    /// <summary>PostgreSQL refuses to run as root; Debian's package brings the user.</summary>
    private Task ProgramAsync(string program, params string[] arguments) =>
        IsRoot ? RunAsync("runuser", ["-u", "postgres", "--", Path.Combine(_programs, program), .. arguments]) : RunAsync(Path.Combine(_programs, program), arguments);

    private static async Task RunAsync(string program, params string[] arguments)
    {
        // Nothing is redirected: the server would keep a pipe open for good.
        using var process = Process.Start(new ProcessStartInfo("/bin/sh", ["-c", "cd / && exec \"$@\" >/dev/null", "sh", program, .. arguments]))!;
        await process.WaitForExitAsync();
        Assert.True(process.ExitCode == 0, $"{program} {string.Join(' ', arguments)} ended with {process.ExitCode}");
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
