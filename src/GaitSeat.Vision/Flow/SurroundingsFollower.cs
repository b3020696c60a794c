using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>The motion of what stands still in the world: the camera's, as it shows at the seat.</summary>
internal sealed class SurroundingsFollower(FlowSettings settings)
{
    // Windows are picked on a quarter-size picture and followed down to half size: hundreds of px of context need no finer.
    private const int PickLevel = 2;
    private const int FinestLevel = 1;

    private const double EdgeShare = 0.02;

    // At the first, coarse pass a motion is known to a fraction of a coarse px only.
    private const double CoarseOutlierFactor = 4;

    private readonly SurroundingsSettings _around = settings.Surroundings;
    private readonly PointPicker _picker = new(settings.Match.MinGradient, EdgeShare);
    private readonly PointFollower _follower = new(settings.Match);
    private readonly RobustFit _fit = new();
    private readonly List<PointPx> _places = [];
    private readonly List<FlowPoint> _points = [];
    private readonly List<MotionField> _trials = [];
    private MotionField? _last;

    /// <summary>Share of the windows that were found again and agree with the fit; 0 without a fit.</summary>
    public double FoundShare { get; private set; }

    /// <summary>How many windows were looked for.</summary>
    public int Looked => _places.Count;

    public void Forget() => _last = null;

    public FitResult? Next(GreyPyramid before, GreyPyramid now, Anatomy anatomy, Random random, out int found)
    {
        var pick = Math.Min(PickLevel, before.Coarsest);
        var fine = Math.Min(FinestLevel, before.Coarsest);
        _picker.Pick(before.Levels[pick], pick, anatomy.Surroundings(), anatomy.Picture.Width / _around.CellsAcross, _places);
        var around = new MotionField(anatomy.Seat.X, anatomy.Seat.Y, anatomy.Picture.Width / 2, default);
        var guess = _last?.AsSeenFrom(anatomy.Seat.X, anatomy.Seat.Y) ?? around;
        if (before.Coarsest > pick && Pass(before, now, guess, before.Coarsest, pick + 1, CoarseOutlierFactor, random) is { } rough) guess = rough.Field;
        var result = Pass(before, now, guess, pick, fine, 1, random);
        found = _points.Count;
        FoundShare = result is { } r && _places.Count > 0 ? r.Points / (double)_places.Count : 0;
        if (result is { } fitted && fitted.Points < Math.Max(_around.MinPoints, _around.MinShare * _places.Count)) result = null;
        _last = result?.Field;
        return result;
    }

    private FitResult? Pass(GreyPyramid before, GreyPyramid now, MotionField guess, int coarse, int fine, double outlierFactor, Random random)
    {
        Follow(before, now, guess, coarse, fine, outlierFactor > 1);
        if (_points.Count < _around.MinPoints) return null;
        _trials.Clear();
        _trials.Add(guess);
        RobustFit.AddShifts(_points, guess, _trials);
        RobustFit.AddPairs(_points, guess, _around.Trials, random, _trials);
        var believed = new FitSettings(
            _around.ZoomSpread * guess.Length, _around.TurnSpreadRad * guess.Length, _around.BendSpread * guess.Length,
            _around.OutlierPx * outlierFactor, settings.Match.BestPrecisionPx);
        return _fit.Fit(_points, _trials, believed);
    }

    private void Follow(GreyPyramid before, GreyPyramid now, MotionField guess, int coarse, int fine, bool rough)
    {
        _points.Clear();
        var spread = _around.Nearness * 2 * guess.Length;
        foreach (var place in _places)
        {
            if (!_follower.TryFollow(before, now, place, guess.At(place.X, place.Y), coarse, fine, rough, out var point)) continue;
            var (x, y) = ((place.X - guess.CentreX) / spread, (place.Y - guess.CentreY) / spread);
            _points.Add(point with { Weight = Math.Exp(-((x * x) + (y * y)) / 2) });
        }
    }
}
