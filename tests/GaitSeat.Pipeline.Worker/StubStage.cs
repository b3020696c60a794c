using GaitSeat.Model;
using GaitSeat.Pipeline.Clips;
using GaitSeat.Pipeline.Season;

namespace GaitSeat.Pipeline.Worker;

/// <summary>A measuring step without video or models: waits, tells, and sets every clip aside, which writes the same tables as measuring one.</summary>
/// <param name="begins">Told of each clip begun.</param>
public sealed class StubStage(TimeSpan wait, Action<string> begins, Action<string> ends) : IClipStage
{
    public const string Reason = "made_for_a_test";

    public string PipelineHash { get; } = new('a', 64);

    public string ModelHash { get; } = new('b', 64);

    public async Task<ClipMeasurement> MeasureAsync(string path, BodyLengths lengths, IProgress<int>? progress, CancellationToken ct)
    {
        begins(Path.GetFileName(path));
        await Task.Delay(wait, ct);
        ends(Path.GetFileName(path));
        throw new ClipSetAsideException(Reason, $"{Path.GetFileName(path)} is no clip");
    }

    public Task<IReadOnlyList<string>> DrawAsync(ClipMeasurement measured, string clipKey, string folder, CancellationToken ct) => Task.FromResult<IReadOnlyList<string>>([]);
}
