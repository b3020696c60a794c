using GaitSeat.Model;
using GaitSeat.Vision.Flow;
using GaitSeat.Vision.Sight;

namespace GaitSeat.Pipeline.Clips;

/// <summary>What the workers of the second pass find, by frame number. Safe for several workers.</summary>
internal sealed class FollowedFrames
{
    private readonly Lock _lock = new();
    private readonly List<double> _timeSeconds = [];
    private readonly List<FlowStep> _flow = [];
    private readonly List<RawPose?> _poses = [];

    public int Add(double timeSeconds)
    {
        lock (_lock)
        {
            _timeSeconds.Add(timeSeconds);
            _flow.Add(default);
            _poses.Add(null);
            return _timeSeconds.Count - 1;
        }
    }

    public void SetFlow(int number, FlowStep step)
    {
        lock (_lock) _flow[number] = step;
    }

    public void SetPose(int number, RawPose pose)
    {
        lock (_lock) _poses[number] = pose;
    }

    public SeenClip Collect(ClipInfo clip, RiderPath people, int widthPx, int heightPx)
    {
        var (trunk, surroundings, cuts) = PatchMotions.Collect(_flow);
        return new()
        {
            Info = clip,
            People = people,
            TimeSeconds = [.. _timeSeconds],
            Poses = [.. _poses],
            Trunk = trunk,
            Surroundings = surroundings,
            CutBefore = cuts,
            WidthPx = widthPx,
            HeightPx = heightPx,
        };
    }
}
