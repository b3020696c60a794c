using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.View;

/// <summary>Reads the windows of one stretch: one facing, no cut.</summary>
internal sealed class PassReader
{
    /// <summary>Errors of the models hang together over about this long, s.</summary>
    private const double TogetherSeconds = 0.15;

    /// <summary>Ear to ankle in the saddle over a leg: 0.936 - 0.530, the upright part of a thigh of 0.245 at some 45 deg, and 0.246, over 0.245 + 0.246 of stature (Drillis and Contini 1966).</summary>
    private const double TallOfLeg = 1.7;

    /// <summary>
    /// How much of the slope's standard error, into which the rise goes as if it were scatter, the rise really makes: in a full window, and for each whole window that is missing.
    /// Sines of 1.2 to 1.5 Hz through the same fit: 0 to 0.04 in a full window, 0.2 to 0.5 in the middle half of one, 0.6 to 0.7 where it is cut off at one side.
    /// </summary>
    private const double RiseInSlope = 0.1, RiseOfMissing = 1.6;

    private readonly ViewSettings _settings;
    private readonly double[] _seconds;
    private readonly double[] _logTall;
    private readonly double[] _thighShare;
    private readonly double[] _across;
    private readonly double[] _logZoom;
    private readonly double[] _panStretch;
    private readonly double[] _seen;

    public PassReader(Sightings sightings, int first, int count, int sign, ViewSettings settings)
    {
        _settings = settings;
        _seconds = sightings.TimeSeconds[first..(first + count)];
        (_logTall, _thighShare, _across, _logZoom, _panStretch) = (new double[count], new double[count], new double[count], new double[count], new double[count]);
        _seen = sightings.ViewTurnDeg is { } turn ? turn[first..(first + count)] : [.. Enumerable.Repeat(double.NaN, count)];
        double ground = 0, zoom = 0, stretch = PanStretch(sightings, settings);
        for (var i = 0; i < count; i++)
        {
            var k = first + i;
            PointPx ear = sightings[BodyPoint.Ear][k], hip = sightings[BodyPoint.Hip][k], knee = sightings[BodyPoint.Knee][k], ankle = sightings[BodyPoint.Ankle][k];
            double step = i == 0 ? 0 : sightings.Surroundings.XPx[k], growth = i == 0 ? 1 : sightings.Surroundings.Zoom[k];
            ground += double.IsFinite(step) ? step : 0;
            zoom += double.IsFinite(growth) && growth > 0 ? Math.Log(growth) : 0;
            // What stays upright keeps its length in a turn.
            _logTall[i] = Math.Log(ankle.Y - ear.Y);
            _thighShare[i] = (knee.Y - hip.Y) / (ankle.Y - ear.Y);
            _across[i] = sign * (hip.X - ground);
            _logZoom[i] = zoom;
            _panStretch[i] = i == 0 ? double.NaN : stretch * (hip.X - sightings.WidthPx / 2.0) * step / (_seconds[i] - _seconds[i - 1]);
        }
    }

    public List<PassView> Windows()
    {
        var (from, to) = (_seconds[0], _seconds[^1]);
        var count = 1 + (int)((to - from) / _settings.StepSeconds);
        var spare = to - from - (count - 1) * _settings.StepSeconds;
        return [.. Enumerable.Range(0, count).Select(k => from + spare / 2 + k * _settings.StepSeconds).Select(At).OfType<PassView>()];
    }

    private PassView? At(double at)
    {
        if (Tall(at) is not { } tall || Line(_across, at) is not { } across) return null;
        double zoom = Line(_logZoom, at)?.Slope ?? double.NaN, seen = Line(_seen, at)?.Level ?? double.NaN;
        var panStretch = Robust.Mean(_panStretch.AsSpan(Instants.Near(_seconds, at, _settings.WindowHalfSeconds)));
        return new(at, tall.Slope, tall.SlopeSe, across.Slope, zoom, panStretch, Math.Exp(tall.Level) / TallOfLeg, seen);
    }

    /// <summary>
    /// Growth that a pan shows at a distance x from the middle of the picture, over x times its speed there over f²: 2 across, 1 up (closed form), and a fit of one growth weighs
    /// them by the square of how far its windows reach.
    /// </summary>
    private static double PanStretch(Sightings sightings, ViewSettings settings)
    {
        double wide = Math.Pow(sightings.WidthPx, 2), high = Math.Pow(settings.SurroundingsHighOfWide * sightings.HeightPx, 2);
        return (2 * wide + high) / (wide + high);
    }

    /// <summary>
    /// The height from ear to ankle, of which what the thigh adds and takes with every rise is taken off. Not its slow change: that hip and knee seem to lie higher or lower in a turned
    /// body cancels in the height as a whole. In a window cut short that change is hardly told from the rise; there little of it is believed.
    /// </summary>
    private LocalLine? Tall(double at)
    {
        if (Line(_thighShare, at) is not { } share) return null;
        var window = Instants.Near(_seconds, at, _settings.WindowHalfSeconds);
        var seconds = _seconds.AsSpan(window);
        var missing = Math.Max(0, 1 - (seconds[^1] - seconds[0]) / (2 * _settings.WindowHalfSeconds));
        double usual = Math.Pow(_settings.ThighShareSlopePerSecond, 2), error = Math.Pow((RiseInSlope + RiseOfMissing * missing) * share.SlopeSe, 2), slope = share.Slope * usual / (usual + error);
        var steady = new double[seconds.Length];
        for (var i = 0; i < steady.Length; i++)
        {
            var k = window.Start.Value + i;
            steady[i] = _logTall[k] - (_thighShare[k] - share.Level - slope * (_seconds[k] - at)) / (1 - share.Level);
        }

        if (LocalLine.Through(seconds, steady, at, _settings.WindowHalfSeconds, TogetherSeconds) is not { } tall) return null;
        var left = Math.Sqrt(usual * error / (usual + error)) / (1 - share.Level);
        return tall with { SlopeSe = double.Hypot(tall.SlopeSe, left) };
    }

    private LocalLine? Line(double[] values, double at) => LocalLine.Through(_seconds, values, at, _settings.WindowHalfSeconds, TogetherSeconds);
}
