using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>The motion of the horse's trunk at the seat. Knows the step before, to begin the next search from it.</summary>
internal sealed class TrunkFollower(FlowSettings settings)
{
    // The trunk may be matched one level above its own: a window then spans a quarter of the rider's height and still shows mostly horse.
    private const int LevelsAbove = 1;

    private const double EdgeShare = 0.1;

    private readonly TrunkSettings _trunk = settings.Trunk;
    private readonly PointPicker _picker = new(settings.Match.MinGradient, EdgeShare);
    private readonly PointFollower _follower = new(settings.Match);
    private readonly BlockSearch _search = new();
    private readonly RobustFit _fit = new();
    private readonly List<PointPx> _places = [];
    private readonly List<FlowPoint> _points = [];
    private readonly List<MotionField> _trials = [];
    private (double X, double Y)? _lastStep;

    /// <summary>Forgets the speed: what follows is another scene.</summary>
    public void Forget() => _lastStep = null;

    /// <summary>Null where no trunk could be fitted; <paramref name="found"/> then tells how many windows were at hand.</summary>
    public FitResult? Next(GreyPyramid before, GreyPyramid now, Anatomy anatomy, MotionField? surroundings, Random random, out int found)
    {
        found = 0;
        if (anatomy.RiderHeight is not { } height)
        {
            _lastStep = null;
            return null;
        }

        var region = anatomy.Trunk();
        var level = Math.Clamp((int)Math.Floor(Math.Log2(height / _trunk.RiderAtLevelPx)), 0, before.Coarsest);
        _picker.Pick(before.Levels[level], level, region, _trunk.Cell * height, _places);
        var around = new MotionField(anatomy.Seat.X, anatomy.Seat.Y, height, default);
        FitResult? result = null;
        if (_lastStep is { } guess) result = Fit(before, now, around, level, guess, surroundings, random);
        result ??= Fit(before, now, around, level, _search.Find(before, now, region, height, _trunk.FarthestStep * height), surroundings, random);
        found = _points.Count;
        _lastStep = result is { } r ? (r.Field.P.ShiftX, r.Field.P.ShiftY) : null;
        return result;
    }

    private FitResult? Fit(
        GreyPyramid before, GreyPyramid now, MotionField around, int level, (double X, double Y) guess, MotionField? surroundings, Random random)
    {
        Follow(before, now, around, level, guess, surroundings);
        if (_points.Count < _trunk.MinPoints) return null;
        _trials.Clear();
        RobustFit.AddShifts(_points, around, _trials);
        RobustFit.AddPairs(_points, around, _trunk.Trials, random, _trials);
        return Accepted(around, 1) ?? Accepted(around, _trunk.LooserFactor);
    }

    private FitResult? Accepted(MotionField around, double looser)
    {
        var believed = new FitSettings(
            _trunk.ZoomSpread * around.Length, _trunk.TurnSpreadRad * around.Length, 0, _trunk.OutlierPx * looser, settings.Match.BestPrecisionPx);
        var fewest = Math.Max(_trunk.MinPoints, _trunk.MinShare * _places.Count);
        return _fit.Fit(_points, _trials, believed) is { } fit && fit.Points >= fewest && fit.ErrorPx <= _trunk.MaxErrorPx ? fit : null;
    }

    private void Follow(GreyPyramid before, GreyPyramid now, MotionField around, int level, (double X, double Y) guess, MotionField? surroundings)
    {
        _points.Clear();
        var seat = new PointPx(around.CentreX, around.CentreY);
        var coarse = Math.Min(level + LevelsAbove, before.Coarsest);
        var spread = _trunk.Nearness * around.Length;
        foreach (var place in _places)
        {
            if (!_follower.TryFollow(before, now, place, guess, coarse, level, rough: false, out var point)) continue;
            var near = place.DistanceTo(seat) / spread;
            _points.Add(point with { Weight = Math.Exp(-near * near / 2) * WeightAgainst(surroundings, point) });
        }
    }

    /// <summary>A window that moves like the surroundings may well show them. It keeps a little weight, for a standing horse does so too.</summary>
    private double WeightAgainst(MotionField? surroundings, in FlowPoint point)
    {
        if (surroundings is not { } field) return 1;
        var (dx, dy) = field.At(point.X, point.Y);
        var precision = settings.Match.BestPrecisionPx;
        var distance = precision * Math.Sqrt(point.SquaredDistance(dx, dy)) / _trunk.OutlierPx;
        var like = 1 / (1 + (distance * distance));
        return 1 - ((1 - _trunk.WeightLikeSurroundings) * like * like);
    }
}
