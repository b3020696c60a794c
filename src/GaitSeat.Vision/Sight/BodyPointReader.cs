using GaitSeat.Model;
using GaitSeat.Vision.Models;

namespace GaitSeat.Vision.Sight;

/// <summary>
/// Reads both models' points from a frame. N workers of one thread each on the same loaded models; calls with different worker numbers may run at once.
/// The answer depends on nothing but the frame and the box, so the order of frames does not matter.
/// </summary>
public sealed class BodyPointReader : IDisposable
{
    private readonly (IBoxPointReader First, BlazePoseReader? Second)[] _workers;
    private readonly bool _mirrorEveryOther;

    /// <param name="thunder">MoveNet Thunder.</param>
    /// <param name="heavy">BlazePose heavy; null to go without heel and toe.</param>
    /// <param name="workers">How many frames at once.</param>
    /// <param name="device">What to run on if it is there.</param>
    /// <exception cref="ModelException">A model cannot be loaded.</exception>
    public BodyPointReader(ModelFile thunder, ModelFile? heavy, BodyPointSettings settings, int workers, InferenceDevice device = InferenceDevice.Cpu)
        : this(thunder, session => new MoveNetReader(session, settings.BoxCropFactor), heavy, settings, workers, device)
    {
    }

    /// <param name="user">A user's own model in MoveNet's place.</param>
    /// <inheritdoc cref="BodyPointReader(ModelFile, ModelFile?, BodyPointSettings, int, InferenceDevice)"/>
    public BodyPointReader(UserModel user, ModelFile? heavy, BodyPointSettings settings, int workers, InferenceDevice device = InferenceDevice.Cpu)
        : this(user.File, session => new UserModelReader(user, session, settings.BoxCropFactor), heavy, settings, workers, device)
    {
    }

    private BodyPointReader(ModelFile first, Func<OnnxSession, IBoxPointReader> reader, ModelFile? heavy, BodyPointSettings settings, int workers, InferenceDevice device)
    {
        ArgumentNullException.ThrowIfNull(settings);
        ArgumentOutOfRangeException.ThrowIfLessThan(workers, 1);
        _mirrorEveryOther = settings.MirrorEveryOther;
        BlazePoseReader?[] second = heavy is null ? new BlazePoseReader?[workers] : [.. OnnxSession.Several(heavy, workers, device).Select(session => new BlazePoseReader(session, settings))];
        _workers = [.. OnnxSession.Several(first, workers, device).Select(reader).Zip(second)];
    }

    public int Workers => _workers.Length;

    /// <param name="worker">0-based; two calls at a time must not share one.</param>
    /// <param name="frame">The picture.</param>
    /// <param name="riderBox">Where the rider is, px of the picture.</param>
    /// <param name="secondTurn">Which reading of the second model this is, 0 for its first; null not to ask it.</param>
    public RawPose Read(int worker, Frame frame, BoxPx riderBox, int? secondTurn)
    {
        ArgumentNullException.ThrowIfNull(frame);
        var (firstReader, secondReader) = _workers[worker];
        var mirrored = IsMirrored(frame.Index);
        var first = SidesPutRight(firstReader.Read(frame, riderBox, mirrored), mirrored);
        if (secondReader is null || secondTurn is not { } turn) return new(riderBox, first, null);
        mirrored = IsMirrored(turn);
        return new(riderBox, first, secondReader.Read(frame, first, mirrored) is { } second ? SidesPutRight(second, mirrored) : null);
    }

    public void Dispose()
    {
        foreach (var (first, second) in _workers)
        {
            first.Dispose();
            second?.Dispose();
        }
    }

    /// <summary>Each model reads every other of its own pictures as a mirror shows it.</summary>
    private bool IsMirrored(int turn) => _mirrorEveryOther && turn % 2 != 0;

    private static RawPoints SidesPutRight(RawPoints points, bool mirrored) => mirrored ? MirroredReading.SidesChanged(points) : points;
}
