using System.ComponentModel.DataAnnotations;

namespace GaitSeat.Pipeline.Watch.Policies;

/// <summary>Trying again what can pass, with growing pauses: a file that cannot be read just now, a process or FFmpeg ended for want of memory.</summary>
public sealed record RetrySettings
{
    /// <summary>Further tries; after them the clip is put off, not set aside. Where its process or FFmpeg was ended from outside in all of them, that counts as one crash.</summary>
    [Range(1, 100)]
    public int Attempts { get; init; } = 5;

    /// <summary>First pause, s; doubled each time.</summary>
    [Range(0.01, 3600)]
    public double PauseSeconds { get; init; } = 5;

    /// <summary>Longest pause, s.</summary>
    [Range(0.01, 86400)]
    public double PauseMaximumSeconds { get; init; } = 300;

    /// <summary>Whether pauses are varied by chance, so that many workers do not come back all at once.</summary>
    public bool Jitter { get; init; } = true;
}

/// <summary>A bound on the time a clip may take; when it is over, the clip's process is ended, which counts as a crash.</summary>
public sealed record TimeOutSettings
{
    /// <summary>What every clip may take, s: start, models, pictures.</summary>
    [Range(1, 86400)]
    public double BaseSeconds { get; init; } = 600;

    /// <summary>What it may take besides for each second of its length, s. A 2-core machine needs about 3 for 1080p that is trot throughout; 60 leaves room for a shared one (a choice).</summary>
    [Range(0.1, 10000)]
    public double SecondsPerSecond { get; init; } = 60;

    /// <summary>The length taken for a clip that does not tell its own, s. Two hours.</summary>
    [Range(1, 1000000)]
    public double UnknownLengthSeconds { get; init; } = 7200;
}

/// <summary>Clips that bring their process down.</summary>
public sealed record CrashSettings
{
    /// <summary>How often a clip may bring its process down before it is set aside. Counted over nights and machines.</summary>
    [Range(1, 100)]
    public int Maximum { get; init; } = 3;

    /// <summary>Pause after a crash, s. What took the memory may be gone then.</summary>
    [Range(0, 3600)]
    public double PauseSeconds { get; init; } = 5;
}

/// <summary>The circuit breaker of the storage: folder and dataset.</summary>
public sealed record StorageSettings
{
    /// <summary>How often storage that was gone is tried, s.</summary>
    [Range(0.01, 3600)]
    public double ProbeSeconds { get; init; } = 30;

    /// <summary>Room below which the worker pauses, MB. The largest clip's tables and overlay take about a tenth of it (a choice).</summary>
    [Range(0, 1000000)]
    public int FreeMinimumMb { get; init; } = 1000;
}
