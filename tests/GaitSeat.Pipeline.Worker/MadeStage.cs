using System.Security.Cryptography;
using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;
using GaitSeat.Store.Tests;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Worker;

/// <summary>A measuring step without video or models that gives full tables: made-up strides and tracks that hang on the clip's bytes alone. Clips that begin with 'no' are set aside.</summary>
/// <param name="wait">How long a clip takes.</param>
/// <param name="pipelineHash">Null for one that no real pipeline has.</param>
/// <param name="modelHash">Null for one that no real models have.</param>
public sealed class MadeStage(TimeSpan wait, string? pipelineHash = null, string? modelHash = null) : IClipStage
{
    public const string Reason = "made_for_a_test";

    public string PipelineHash { get; } = pipelineHash ?? new('a', 64);

    public string ModelHash { get; } = modelHash ?? new('b', 64);

    public async Task<ClipMeasurement> MeasureAsync(string path, BodyLengths lengths, IProgress<int>? progress, CancellationToken ct)
    {
        var bytes = await File.ReadAllBytesAsync(path, ct);
        await Task.Delay(wait, ct);
        if (bytes.AsSpan().StartsWith("no"u8)) throw new ClipSetAsideException(Reason, $"{Path.GetFileName(path)} is no clip");
        progress?.Report(Made.Frames);
        var record = Made.Measured();
        var chance = SHA256.HashData(bytes);
        var strides = record.Motion!.Strides.Select((s, i) => Made.Stride(s.Number, 60 + chance[i] / 10.0, 40 + chance[i + 8] / 10.0)).ToArray();
        return new(record.Info!, Nobody, record.Sightings!, record.Motion with { Strides = strides }, record.Findings, record.LeftOut);
    }

    public Task<IReadOnlyList<string>> DrawAsync(ClipMeasurement measured, string clipKey, string folder, CancellationToken ct) => Task.FromResult<IReadOnlyList<string>>([]);

    private static RiderPath Nobody => new() { TimeSeconds = [], Rider = [], Horse = [], WidthPx = 2, HeightPx = 2, Spans = [], Notes = [], HorseSeenShare = 0, RiderSeenShare = 0 };
}
