using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy;

/// <summary>Sightings with parts of them replaced by the truth, frame by frame; frames the truth does not know stay as they are.</summary>
internal sealed class TrueSightings
{
    private static readonly (BodyPoint Point, string Name)[] Known =
    [
        (BodyPoint.Ear, "ear"), (BodyPoint.Shoulder, "shoulder"), (BodyPoint.Elbow, "elbow"), (BodyPoint.Wrist, "wrist"), (BodyPoint.Hip, "hip"),
        (BodyPoint.Knee, "knee"), (BodyPoint.Ankle, "ankle"), (BodyPoint.Heel, "heel"), (BodyPoint.Toe, "toe"),
    ];

    private readonly ClipTruth _truth;
    private readonly Sightings _seen;
    private readonly FrameTruth?[] _rows;
    private readonly double _perPx;

    public TrueSightings(ClipTruth truth, Sightings seen)
    {
        (_truth, _seen) = (truth, seen);
        _perPx = seen.WidthPx / (double)truth.Width;
        _rows = Array.ConvertAll(seen.TimeSeconds, Nearest);
    }

    public Sightings With(Swap swap)
    {
        var sightings = _seen;
        if (swap.HasFlag(Swap.Points)) sightings = sightings with { Points = Points(), PointsAreJoints = true };
        if (swap.HasFlag(Swap.Anchor)) sightings = sightings with { Trunk = Trunk(), Surroundings = Surroundings() };
        if (swap.HasFlag(Swap.Yaw)) sightings = WithYaw(sightings);
        return sightings;
    }

    private FrameTruth? Nearest(double seconds)
    {
        var row = _truth.FrameRows.MinBy(r => Math.Abs(r.TimeSeconds - seconds));
        return row is not null && Math.Abs(row.TimeSeconds - seconds) < 0.5 / _truth.Fps ? row : null;
    }

    private PointTrack[] Points()
    {
        var points = _seen.Points.ToArray();
        foreach (var (point, name) in Known)
        {
            var seen = _seen[point];
            double[] x = [.. seen.XPx], y = [.. seen.YPx];
            for (var i = 0; i < x.Length; i++)
            {
                if (_rows[i] is not { } row || seen[i].IsMissing) continue;
                (x[i], y[i]) = (_perPx * row[name].Px.X, _perPx * row[name].Px.Y);
            }

            points[(int)point] = seen with { XPx = x, YPx = y };
        }

        return points;
    }

    /// <summary>Each direction by the place its truth is told from: rise over the saddle seat, tread forward of the stirrup bar.</summary>
    private PatchMotion Trunk() => _seen.Trunk with
    {
        XPx = Steps(_seen.Trunk.XPx, r => _perPx * r["bar"].Px.X),
        YPx = Steps(_seen.Trunk.YPx, r => _perPx * r["saddle"].Px.Y),
    };

    /// <summary>The ground under the horse moves in the picture as the saddle does, less the trunk's own bounce.</summary>
    private PatchMotion Surroundings() => _seen.Surroundings with
    {
        YPx = Steps(_seen.Surroundings.YPx, r => _perPx * (r["saddle"].Px.Y + r.BounceCm / 100 * r.PxPerM)),
    };

    private double[] Steps(double[] seen, Func<FrameTruth, double> place)
    {
        double[] steps = [.. seen];
        for (var i = 1; i < steps.Length; i++)
            if (_rows[i - 1] is { } before && _rows[i] is { } here) steps[i] = place(here) - place(before);
        return steps;
    }

    private Sightings WithYaw(Sightings sightings)
    {
        var turn = new double[_rows.Length];
        for (var i = 0; i < turn.Length; i++)
        {
            var known = _rows[i] is { } row ? TrueTurn.Of(row, _truth.FacingTerm) : double.NaN;
            turn[i] = double.IsFinite(known) ? known : i > 0 ? turn[i - 1] : 0;
        }

        return sightings with { KnownTurnDeg = turn };
    }
}
