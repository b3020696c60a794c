using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// Follows the trunk and the surroundings of one clip from frame to frame. Frames come in order, all of one size; not for use by two threads at once.
/// </summary>
public sealed class PatchFlow(FlowSettings settings)
{
    private const int PyramidLevels = 5;

    private readonly FlowSettings _settings = settings ?? throw new ArgumentNullException(nameof(settings));
    private readonly Random _random = new(settings.Seed);
    private readonly TrunkFollower _trunk = new(settings);
    private readonly SurroundingsFollower _surroundings = new(settings);
    private readonly CutFinder _cuts = new(settings.Cut);
    private (int Width, int Height)? _size;
    private GreyReducer? _reducer;
    private GreyPyramid? _before;
    private GreyPyramid? _spare;
    private FlowHints _hintsBefore = FlowHints.None;

    /// <summary>The motion since the frame given before; still for the first frame. The frame is read, not kept.</summary>
    /// <exception cref="ArgumentException">The frame has another size than the one before.</exception>
    public FlowStep Next(Frame frame, FlowHints hints)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(hints);
        var reducer = ReducerFor(frame);
        var now = _spare ?? new GreyPyramid(reducer, PyramidLevels);
        now.Fill(frame);
        var step = _before is { } before ? Compare(before, now, _hintsBefore.Rider is null ? hints : _hintsBefore) : new(false, MotionStep.Still, MotionStep.Still);
        (_spare, _before, _hintsBefore) = (_before, now, hints);
        return step;
    }

    private FlowStep Compare(GreyPyramid before, GreyPyramid now, FlowHints hints)
    {
        var factor = _reducer!.Factor;
        var anatomy = new Anatomy(hints, _settings, factor, _reducer.Width, _reducer.Height);
        var surroundings = _surroundings.Next(before, now, anatomy, _random, out var foundAround);
        if (_cuts.IsCut(before, now, _surroundings.FoundShare, _surroundings.Looked, _settings.Surroundings.MinPoints))
        {
            _surroundings.Forget();
            _trunk.Forget();
            return new(true, MotionStep.Still, MotionStep.Still);
        }

        var trunk = _trunk.Next(before, now, anatomy, surroundings?.Field, _random, out var foundOnTrunk);
        return new(false, Step(trunk, factor, foundOnTrunk), Step(surroundings, factor, foundAround));
    }

    private static MotionStep Step(FitResult? fit, int factor, int found) => fit is not { } f
        ? MotionStep.NotFitted(found)
        : new(f.Field.P.ShiftX * factor, f.Field.P.ShiftY * factor, f.Field.RotationRad, f.Field.Zoom, f.Points, f.ResidualPx * factor);

    private GreyReducer ReducerFor(Frame frame)
    {
        var size = (frame.WidthPx, frame.HeightPx);
        if (_size is { } known && known != size)
        {
            throw new ArgumentException(
                $"frame {frame.Index} is {size.WidthPx}x{size.HeightPx} px, the frames before it were {known.Width}x{known.Height} px; "
                + "one PatchFlow follows pictures of one size: decode the clip to one size or start a new PatchFlow", nameof(frame));
        }

        _size = size;
        return _reducer ??= new GreyReducer(size.WidthPx, size.HeightPx, _settings.WorkingWidthPx);
    }
}
