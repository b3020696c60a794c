using GaitSeat.Model;

namespace GaitSeat.Motion;

/// <summary>Refuses sightings whose arrays do not belong together.</summary>
internal static class SightingsCheck
{
    public static void Check(Sightings sightings)
    {
        ArgumentNullException.ThrowIfNull(sightings);
        var n = sightings.Count;
        Length(sightings.Rider.Length, n, "Rider");
        Length(sightings.Horse.Length, n, "Horse");
        Length(sightings.Facing.Length, n, "Facing");
        if (sightings.ViewTurnDeg is { } turn) Length(turn.Length, n, "ViewTurnDeg");
        if (sightings.KnownTurnDeg is { } known) Length(known.Length, n, "KnownTurnDeg");
        Length(sightings.Reason.Length, n, "Reason");
        Length(sightings.CutBefore.Length, n, "CutBefore");
        var points = Enum.GetValues<BodyPoint>().Length;
        if (sightings.Points.Length != points)
            throw new ArgumentException($"Points has {sightings.Points.Length} tracks; expected {points}, one for each body point.");
        foreach (var point in Enum.GetValues<BodyPoint>())
        {
            var track = sightings[point];
            Length(track.XPx.Length, n, $"Points[{point}].XPx");
            Length(track.YPx.Length, n, $"Points[{point}].YPx");
            Length(track.Confidence.Length, n, $"Points[{point}].Confidence");
            Length(track.SpreadPx.Length, n, $"Points[{point}].SpreadPx");
        }

        Patch(sightings.Trunk, n, "Trunk");
        Patch(sightings.Surroundings, n, "Surroundings");
        Times(sightings.TimeSeconds);
    }

    private static void Patch(PatchMotion patch, int n, string name)
    {
        Length(patch.XPx.Length, n, name + ".XPx");
        Length(patch.YPx.Length, n, name + ".YPx");
        Length(patch.RotationRad.Length, n, name + ".RotationRad");
        Length(patch.Zoom.Length, n, name + ".Zoom");
        Length(patch.Points.Length, n, name + ".Points");
        Length(patch.ResidualPx.Length, n, name + ".ResidualPx");
    }

    private static void Length(int found, int expected, string name)
    {
        if (found != expected)
            throw new ArgumentException($"{name} has {found} entries; expected {expected}, one for each frame time.");
    }

    private static void Times(double[] seconds)
    {
        for (var i = 0; i < seconds.Length; i++)
        {
            if (!double.IsFinite(seconds[i]))
                throw new ArgumentException($"Frame {i} has the time {seconds[i]}; expected a finite number of seconds.");
            if (i > 0 && seconds[i] <= seconds[i - 1])
                throw new ArgumentException($"Frame {i} has the time {seconds[i]} s, the frame before {seconds[i - 1]} s; expected strictly increasing presentation times.");
        }
    }
}
