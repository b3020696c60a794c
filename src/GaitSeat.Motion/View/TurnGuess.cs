namespace GaitSeat.Motion.View;

/// <summary>The turns of a stretch's windows if the camera stood at one distance, and how likely that is.</summary>
/// <param name="TurnDeg">By window; NaN where growth does not tell.</param>
/// <param name="SeDeg">By window.</param>
/// <param name="LogLikelihood">Of the distance, up to a constant.</param>
internal sealed record TurnGuess(double[] TurnDeg, double[] SeDeg, double LogLikelihood)
{
    private const double DegPerRad = 180 / Math.PI;

    /// <param name="distanceLegs">Distance at the middle size of the stretch.</param>
    public static TurnGuess At(double distanceLegs, IReadOnlyList<PassView> views, double middleLegPx, ViewSettings settings)
    {
        // The lens stays the same through the stretch (zoom is taken off the growth); the distance does not.
        var focalPx = distanceLegs * middleLegPx;
        double[] turn = new double[views.Count], se = new double[views.Count];
        for (var i = 0; i < turn.Length; i++) (turn[i], se[i]) = Turn(views[i], focalPx, settings);
        var told = Enumerable.Range(0, turn.Length).Where(i => double.IsFinite(turn[i])).ToArray();
        return new(turn, se, Log(Math.Log(distanceLegs / settings.DistanceLegs), settings.DistanceSpread) + Mean(told, turn, se, views, settings) + Change(told, turn, se, views, focalPx, settings) + NoZoom(told, views, focalPx, settings));
    }

    /// <summary>Zoom of the surroundings a second, the stretch that a pan shows away from the middle of the picture taken off: the shorter the lens, the larger that stretch.</summary>
    private static double Zoom(PassView view, double focalPx) =>
        view.ZoomPerSecond - view.PanStretchPx2PerSecond / (focalPx * focalPx);

    /// <summary>Most stretches are filmed without a zoom: a lens that would need one to explain what the surroundings do is the less likely.</summary>
    private static double NoZoom(int[] told, IReadOnlyList<PassView> views, double focalPx, ViewSettings settings)
    {
        var zooms = told.Select(i => Zoom(views[i], focalPx)).Where(double.IsFinite).ToArray();
        if (zooms.Length == 0) return 0;
        var zoom = zooms.Average();
        return Math.Log((1 - settings.ZoomShare) * Math.Exp(Log(zoom, settings.ZoomBelievedPerSecond)) + settings.ZoomShare * Math.Exp(Log(zoom, settings.ZoomUsualPerSecond)));
    }

    private static (double Deg, double Se) Turn(PassView view, double focalPx, ViewSettings settings)
    {
        if (!view.Tells(settings)) return (double.NaN, double.NaN);
        var zoom = Zoom(view, focalPx);
        var believed = double.IsFinite(zoom) ? zoom * zoom * zoom / (zoom * zoom + settings.ZoomBelievedPerSecond * settings.ZoomBelievedPerSecond) : 0;
        var rate = view.AcrossPxPerSecond / focalPx;
        var tangent = -(view.GrowthPerSecond - believed) / rate;
        var se = Math.Sqrt(view.GrowthSe * view.GrowthSe + settings.GrowthSePerSecond * settings.GrowthSePerSecond) / rate / (1 + tangent * tangent);
        return (Math.Atan(tangent) * DegPerRad, se * DegPerRad);
    }

    /// <summary>How far from side-on the stretch lies, by what people film and by what the body shows.</summary>
    private static double Mean(int[] told, double[] turn, double[] se, IReadOnlyList<PassView> views, ViewSettings settings)
    {
        if (told.Length == 0) return 0;
        double mean = told.Average(i => turn[i]), meanSe = told.Average(i => se[i]) / Math.Sqrt(told.Length);
        var log = Log(mean, double.Hypot(settings.UsualTurnDeg, meanSe));
        var seen = told.Where(i => double.IsFinite(views[i].SeenDeg)).ToArray();
        if (seen.Length == 0) return log;
        var steady = seen.Average(i => views[i].SeenDeg - settings.SeenGain * turn[i]);
        return log + Log(steady, double.Hypot(settings.SeenSteadySeDeg, settings.SeenGain * meanSe));
    }

    /// <summary>A rider on a straight line turns against the camera by the angle she covers in its view; in a bend by the horse's own turning besides.</summary>
    private static double Change(int[] told, double[] turn, double[] se, IReadOnlyList<PassView> views, double focalPx, ViewSettings settings)
    {
        if (told.Length < 2) return 0;
        var middle = told.Average(i => views[i].AtSeconds);
        var spread = told.Sum(i => Math.Pow(views[i].AtSeconds - middle, 2));
        double Slope(Func<int, double> value) => told.Sum(i => (views[i].AtSeconds - middle) * value(i)) / spread;
        double change = Slope(i => turn[i]), changeSe = told.Average(i => se[i]) / Math.Sqrt(spread);
        var horse = change - told.Average(i => views[i].AcrossPxPerSecond) / focalPx * DegPerRad;
        var log = Math.Log(
            settings.StraightShare * Math.Exp(Log(horse, double.Hypot(settings.WanderDegPerSecond, changeSe)))
            + (1 - settings.StraightShare) * Math.Exp(Log(horse, double.Hypot(settings.BendDegPerSecond, changeSe))) + double.Epsilon);
        var seen = Slope(i => views[i].SeenDeg);
        return double.IsFinite(seen) ? log + Log(seen - settings.SeenGain * change, double.Hypot(settings.SeenChangeSeDegPerSecond, settings.SeenGain * changeSe)) : log;
    }

    /// <summary>Logarithm of a normal density of mean zero.</summary>
    private static double Log(double value, double sd) => -(value * value / (2 * sd * sd)) - Math.Log(sd);
}
