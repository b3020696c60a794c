using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>
/// Follows the trunk and the surroundings of one clip from frame to frame. Frames come in order, all of one size; not for use by two threads at once.
/// </summary>
public sealed class PatchFlow(FlowSettings settings)
{
    private readonly FlowSettings _settings = settings ?? throw new ArgumentNullException(nameof(settings));
    private (int Width, int Height)? _size;

    /// <summary>The motion since the frame given before; still for the first frame. The frame is read, not kept.</summary>
    /// <exception cref="ArgumentException">The frame has another size than the one before.</exception>
    public FlowStep Next(Frame frame, FlowHints hints)
    {
        ArgumentNullException.ThrowIfNull(frame);
        ArgumentNullException.ThrowIfNull(hints);
        var first = _size is null;
        CheckSize(frame);
        if (first) return new(false, MotionStep.Still, MotionStep.Still);
        return new(false, MotionStep.NotFitted(0), MotionStep.NotFitted(0));
    }

    private void CheckSize(Frame frame)
    {
        var size = (frame.WidthPx, frame.HeightPx);
        if (_size is { } known && known != size)
        {
            throw new ArgumentException(
                $"frame {frame.Index} is {size.WidthPx}x{size.HeightPx} px, the frames before it were {known.Width}x{known.Height} px; "
                + "one PatchFlow follows pictures of one size: decode the clip to one size or start a new PatchFlow", nameof(frame));
        }

        _size = size;
    }
}
