using GaitSeat.Model;
using GaitSeat.Motion.Signals;

namespace GaitSeat.Motion.View;

/// <summary>Reads the windows of one stretch: one facing, no cut.</summary>
internal sealed class PassReader
{
    /// <summary>Errors of the models hang together over about this long, s.</summary>
    private const double TogetherSeconds = 0.15;

    /// <summary>Ear to hip and knee to ankle, upright, over a leg (0.936 - 0.530 and 0.246 over 0.245 + 0.246 of stature; Drillis and Contini 1966).</summary>
    private const double TallOfLeg = 1.33;

    private readonly ViewSettings _settings;
    private readonly double[] _seconds;
    private readonly double[] _logTall;
    private readonly double[] _across;
    private readonly double[] _logZoom;
    private readonly double[] _panStretch;
    private readonly double[] _seen;

    public PassReader(Sightings sightings, int first, int count, int sign, ViewSettings settings)
    {
        _settings = settings;
        _seconds = sightings.TimeSeconds[first..(first + count)];
        (_logTall, _across, _logZoom, _panStretch) = (new double[count], new double[count], new double[count], new double[count]);
        _seen = sightings.ViewTurnDeg is { } turn ? turn[first..(first + count)] : [.. Enumerable.Repeat(double.NaN, count)];
        double ground = 0, zoom = 0, stretch = PanStretch(sightings, settings);
        for (var i = 0; i < count; i++)
        {
            var k = first + i;
            PointPx ear = sightings[BodyPoint.Ear][k], hip = sightings[BodyPoint.Hip][k], knee = sightings[BodyPoint.Knee][k], ankle = sightings[BodyPoint.Ankle][k];
            double step = i == 0 ? 0 : sightings.Surroundings.XPx[k], growth = i == 0 ? 1 : sightings.Surroundings.Zoom[k];
            ground += double.IsFinite(step) ? step : 0;
            zoom += double.IsFinite(growth) && growth > 0 ? Math.Log(growth) : 0;
            // What stays upright keeps its length in a turn; the knee between them, which opens with every rise, is left out.
            _logTall[i] = Math.Log(hip.Y - ear.Y + ankle.Y - knee.Y);
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
        if (Line(_logTall, at) is not { } tall || Line(_across, at) is not { } across) return null;
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

    private LocalLine? Line(double[] values, double at) => LocalLine.Through(_seconds, values, at, _settings.WindowHalfSeconds, TogetherSeconds);
}
