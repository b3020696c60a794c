using System.ComponentModel.DataAnnotations;
using GaitSeat.Pipeline.Watch.Policies;

namespace GaitSeat.Pipeline.Watch;

/// <summary>How the worker that watches a folder behaves.</summary>
public sealed record WatchSettings
{
    /// <summary>When clips may be worked on, by the wall clock, such as '22:00-06:00'; null = at all times. Where the clocks change, the wall clock counts.</summary>
    public string? Window { get; init; }

    /// <summary>The time zone of the window, by its IANA name, such as 'Europe/Berlin'; null = that of the machine.</summary>
    public string? TimeZone { get; init; }

    /// <summary>How long the clip under way may go on when the window closes, min; then it is stopped and done again in the next. A choice: longer than a lesson clip takes, shorter than a coach waits.</summary>
    [Range(0, 1440)]
    public double WindowGraceMinutes { get; init; } = 20;

    /// <summary>How often the folder is looked through, s.</summary>
    [Range(0.05, 3600)]
    public double ScanSeconds { get; init; } = 10;

    /// <summary>How long size and time of a clip must stand still before it is taken, s. A copy over a slow network writes at least every few seconds; 30 leaves room (a choice).</summary>
    [Range(0, 86400)]
    public double SettleSeconds { get; init; } = 30;

    /// <summary>Clips worked on at once by this worker, each in its own process with the threads of 'run'.</summary>
    [Range(1, 64)]
    public int ClipsAtOnce { get; init; } = 1;

    /// <summary>By how much the work gives way to everything else: the nice value on Unix; on Windows anything above 0 is 'below normal'. 10 is what 'nice' itself takes.</summary>
    [Range(0, 19)]
    public int Niceness { get; init; } = 10;

    /// <summary>How long a clip that was put off (see the retry policy) is left alone, min.</summary>
    [Range(0, 1440)]
    public double PutOffMinutes { get; init; } = 30;

    /// <summary>How long the process of a clip may take to stop when asked, s; then it is ended. Between two frames lie under 1 s, the write of a clip's tables a few.</summary>
    [Range(0.1, 600)]
    public double StopSeconds { get; init; } = 15;

    /// <summary>Address the health page listens on. Any but the loopback address asks for a password, which comes in the variable GAITSEAT_HEALTH_PASSWORD.</summary>
    public string HealthAddress { get; init; } = "127.0.0.1";

    /// <summary>Port of the health page; 0 = none.</summary>
    [Range(0, 65535)]
    public int HealthPort { get; init; } = 5211;

    /// <summary>Days of log files that are kept.</summary>
    [Range(1, 3650)]
    public int LogDays { get; init; } = 31;

    /// <summary>Policy for what can pass: a file still being copied, a share away for a moment, a process or FFmpeg ended by the system for want of memory.</summary>
    public RetrySettings Retry { get; init; } = new();

    /// <summary>Policy for clips that take for ever.</summary>
    public TimeOutSettings TimeOut { get; init; } = new();

    /// <summary>Policy for clips that bring their process down.</summary>
    public CrashSettings Crash { get; init; } = new();

    /// <summary>Policy for a full disk or a share that is gone: pause, say so, go on when it is back.</summary>
    public StorageSettings Storage { get; init; } = new();

    /// <summary>The queue that several machines share.</summary>
    public QueueSettings Queue { get; init; } = new();
}

/// <summary>The queue that several machines share.</summary>
public sealed record QueueSettings
{
    /// <summary>How often a free worker asks PostgreSQL for a clip, s.</summary>
    [Range(0.05, 600)]
    public double PollSeconds { get; init; } = 5;

    /// <summary>How long a clip stays with a worker that gives no sign of life, s; a living one renews it all the time. Far above a hiccup of the network, far below a night.</summary>
    [Range(2, 86400)]
    public double InvisibilitySeconds { get; init; } = 300;
}
