using System.Globalization;
using Serilog;
using Serilog.Core;
using Serilog.Events;
using Serilog.Extensions.Logging;
using Serilog.Formatting.Compact;
using Serilog.Formatting.Display;
using Spectre.Console;

namespace GaitSeat.Cli.Watching;

/// <summary>The worker's log: one JSON object a line, a new file each day and at a size, old ones taken away; and the same for people on standard error.</summary>
internal sealed class WatchLogs : IDisposable
{
    private const long FileLimitBytes = 50_000_000;
    private readonly Logger _serilog;
    private readonly SerilogLoggerFactory _factory;

    private WatchLogs(Logger serilog)
    {
        _serilog = serilog;
        _factory = new(serilog);
        Logger = _factory.CreateLogger("GaitSeat.Worker");
    }

    public Microsoft.Extensions.Logging.ILogger Logger { get; }

    /// <param name="folder">Where log files go; each process writes its own.</param>
    public static WatchLogs Open(IAnsiConsole console, string folder, int days)
    {
        var file = Path.Combine(folder, $"{Environment.MachineName}-{Environment.ProcessId}-.jsonl");
        return new(new LoggerConfiguration()
            .MinimumLevel.Information()
            .WriteTo.File(
                new CompactJsonFormatter(), file, rollingInterval: RollingInterval.Day, fileSizeLimitBytes: FileLimitBytes, rollOnFileSizeLimit: true,
                retainedFileCountLimit: null, retainedFileTimeLimit: TimeSpan.FromDays(days))
            .WriteTo.Sink(new ForPeople(console))
            .CreateLogger());
    }

    public void Dispose()
    {
        _factory.Dispose();
        _serilog.Dispose();
    }

    private sealed class ForPeople(IAnsiConsole console) : ILogEventSink
    {
        private readonly MessageTemplateTextFormatter _line = new("{Timestamp:HH:mm:ss} {Message:lj}", CultureInfo.InvariantCulture);

        public void Emit(LogEvent logEvent)
        {
            using var text = new StringWriter(CultureInfo.InvariantCulture);
            _line.Format(logEvent, text);
            console.WriteLine(text.ToString().ReplaceLineEndings(" "));
        }
    }
}
