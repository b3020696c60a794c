using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>Where trunk and surroundings are, worked out from the hints; working px.</summary>
internal sealed class Anatomy
{
    // A rider seen from the side, box to box: the horse reaches this far (in rider heights) to either side of the seat and below the box. Common practice, no source.
    private const double HorseReach = 1.25;
    private const double HorseBelowRider = 0.75;
    private const double HorseHeadAbove = 0.35;

    private readonly FlowSettings _settings;
    private readonly BoxPx? _rider;
    private readonly BoxPx? _horse;

    public Anatomy(FlowHints hints, FlowSettings settings, int factor, int width, int height)
    {
        _settings = settings;
        _rider = Reduced(hints.Rider, factor);
        _horse = Reduced(hints.Horse, factor);
        Picture = new BoxPx(0, 0, width, height);
        Seat = SeatOf(hints.Seat, factor);
    }

    public BoxPx Picture { get; }

    /// <summary>The place motions are told for; the middle of the picture where there is nothing to go by.</summary>
    public PointPx Seat { get; }

    /// <summary>The unit of length of the trunk; null without rider: then no trunk is fitted.</summary>
    public double? RiderHeight => _rider?.Height;

    public Region Trunk()
    {
        var (t, h) = (_settings.Trunk, _rider!.Value.Height);
        var top = Seat.Y + (t.Top * h);
        var bottom = Seat.Y + (t.Bottom * h);
        if (_horse is { } horse) bottom = Math.Min(bottom, Math.Max(top + (t.Cell * h), horse.Y + (t.HorseLegsBelow * horse.Height)));
        var inside = new BoxPx(Seat.X - (t.Reach * h), top, 2 * t.Reach * h, bottom - top);
        return new Region(inside, [Leg()]);
    }

    public Region Surroundings()
    {
        var margin = _settings.Surroundings.Margin * (_rider?.Height ?? (_horse?.Height ?? 0) / 3);
        List<BoxPx> cutOut = [];
        if (_rider is { } rider)
        {
            cutOut.Add(Grown(rider, margin));
            if (_horse is null) cutOut.Add(GuessedHorse(rider));
        }

        if (_horse is { } horse) cutOut.Add(Grown(horse, margin));
        return new Region(Picture, [.. cutOut]);
    }

    private BoxPx Leg()
    {
        var rider = _rider!.Value;
        var half = Math.Min(rider.Width / 2, _settings.Trunk.LegHalfWidth * rider.Height);
        return new BoxPx(rider.Centre.X - half, rider.Y, 2 * half, 2 * rider.Height);
    }

    private BoxPx GuessedHorse(BoxPx rider)
    {
        var h = rider.Height;
        return new BoxPx(Seat.X - (HorseReach * h), rider.Y + (HorseHeadAbove * h), 2 * HorseReach * h, h * (1 + HorseBelowRider - HorseHeadAbove));
    }

    private PointPx SeatOf(PointPx? hint, int factor)
    {
        if (hint is { IsMissing: false } seat) return new PointPx(seat.X / factor, seat.Y / factor);
        if (_rider is { } rider) return new PointPx(rider.Centre.X, rider.Y + (_settings.Trunk.SeatDownBox * rider.Height));
        return _horse is { } horse ? horse.Centre : Picture.Centre;
    }

    private static BoxPx? Reduced(BoxPx? box, int factor) =>
        box is { Width: > 0, Height: > 0 } b ? new BoxPx(b.X / factor, b.Y / factor, b.Width / factor, b.Height / factor) : null;

    private static BoxPx Grown(BoxPx box, double margin) =>
        new(box.X - margin, box.Y - margin, box.Width + (2 * margin), box.Height + (2 * margin));
}
