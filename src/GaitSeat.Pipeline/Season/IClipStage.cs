using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;

namespace GaitSeat.Pipeline.Season;

/// <summary>What turns one clip into numbers and pictures, and the names under which its rows are kept.</summary>
public interface IClipStage
{
    string PipelineHash { get; }

    string ModelHash { get; }

    /// <inheritdoc cref="ClipMeasurer.MeasureAsync"/>
    Task<ClipMeasurement> MeasureAsync(string path, BodyLengths lengths, IProgress<int>? progress, CancellationToken ct);

    /// <summary>Makes the pictures that the settings ask for.</summary>
    /// <returns>Paths of the files made.</returns>
    Task<IReadOnlyList<string>> DrawAsync(ClipMeasurement measured, string clipKey, string folder, CancellationToken ct);
}
