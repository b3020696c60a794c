using System.Collections.Concurrent;
using System.Diagnostics.Metrics;
using GaitSeat.Pipeline.Watch.Night;

namespace GaitSeat.Pipeline.Watch;

/// <summary>What a worker counts, for OpenTelemetry under the meter <see cref="MeterName"/> and for the health page. Counts begin with the process.</summary>
public sealed class WatchMetrics : IDisposable
{
    public const string MeterName = "GaitSeat.Worker";

    private readonly Meter _meter = new(MeterName);
    private readonly TimeProvider _time;
    private readonly long _begun;
    private readonly ConcurrentDictionary<NightEnd, long> _clips = new();
    private readonly ConcurrentDictionary<string, long> _setAside = new(StringComparer.Ordinal);
    private readonly ConcurrentDictionary<string, long> _retries = new(StringComparer.Ordinal);
    private readonly Histogram<double> _duration;
    private long _frames;

    public WatchMetrics(TimeProvider time)
    {
        ArgumentNullException.ThrowIfNull(time);
        (_time, _begun) = (time, time.GetTimestamp());
        _meter.CreateObservableCounter("gaitseat.clips", () => Counts(_clips, "end"), "{clip}", "Clips that left the worker's hands, by how.");
        _meter.CreateObservableCounter("gaitseat.set_aside", () => Counts(_setAside, "reason"), "{clip}", "Clips set aside, by reason.");
        _meter.CreateObservableCounter("gaitseat.retries", () => Counts(_retries, "policy"), "{retry}", "Tries again, by policy.");
        _meter.CreateObservableCounter("gaitseat.frames", () => Frames, "{frame}", "Frames followed.");
        _meter.CreateObservableGauge("gaitseat.frame_rate", () => FramesPerSecond, "{frame}/s", "Frames followed per second since the worker began, pauses included.");
        _meter.CreateObservableGauge("gaitseat.queue.length", () => Waiting, "{clip}", "Clips of the folder that are not done yet.");
        _meter.CreateObservableGauge("gaitseat.paused", () => Paused is null ? 0 : 1, "1", "1 while the storage is gone or full.");
        _duration = _meter.CreateHistogram<double>("gaitseat.clip.duration", "s", "Wall clock of a clip, waiting included.");
    }

    public long Frames => Interlocked.Read(ref _frames);

    public double FramesPerSecond => Frames / Math.Max(1, _time.GetElapsedTime(_begun).TotalSeconds);

    public TimeSpan Running => _time.GetElapsedTime(_begun);

    public int Waiting { get; set; }

    /// <summary>Why the worker pauses; null while it does not.</summary>
    public string? Paused { get; set; }

    public IReadOnlyDictionary<string, long> Clips => _clips.ToDictionary(c => Term(c.Key), c => c.Value);

    public IReadOnlyDictionary<string, long> SetAside => new Dictionary<string, long>(_setAside);

    public IReadOnlyDictionary<string, long> Retries => new Dictionary<string, long>(_retries);

    public void AddFrames(int more) => Interlocked.Add(ref _frames, more);

    public void AddRetry(string policy) => _retries.AddOrUpdate(policy, 1, (_, n) => n + 1);

    public void AddClip(NightEntry entry)
    {
        ArgumentNullException.ThrowIfNull(entry);
        _clips.AddOrUpdate(entry.End, 1, (_, n) => n + 1);
        if (entry.End == NightEnd.SetAside) _setAside.AddOrUpdate(entry.Reason ?? "unknown", 1, (_, n) => n + 1);
        _duration.Record(entry.Seconds, new KeyValuePair<string, object?>("end", Term(entry.End)));
    }

    public void Dispose() => _meter.Dispose();

    private static IEnumerable<Measurement<long>> Counts<T>(ConcurrentDictionary<T, long> counts, string tag)
        where T : notnull =>
        counts.Select(c => new Measurement<long>(c.Value, new KeyValuePair<string, object?>(tag, c.Key is NightEnd end ? Term(end) : c.Key)));

    private static string Term(NightEnd end) => Settings.SettingNames.Snake(end.ToString());
}
