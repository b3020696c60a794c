using System.Globalization;
using GaitSeat.Model;
using GaitSeat.Review.Clips;
using GaitSeat.Review.Questions;
using GaitSeat.Review.Web;
using GaitSeat.Store;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Marks;

/// <summary>Shows and takes one judge's marks on still frames. Each act is on the disk before it is acknowledged; nothing is changed, a later mark counts.</summary>
internal sealed class MarkDesk(ReviewSeason season, Desk desk, string judge, TimeProvider time) : IDisposable
{
    /// <summary>How far before and after its spell a frame may be marked, s.</summary>
    private const double RoomSeconds = 1;

    private readonly SemaphoreSlim _guard = new(1);
    private readonly MarkStore _store = new(season.Dataset);
    private List<HandMark>? _own;
    private DateTimeOffset _last;

    internal async Task ShowAsync(HttpContext context, Question question)
    {
        if (!double.TryParse(context.Request.Query["time"], NumberStyles.Float, CultureInfo.InvariantCulture, out var seconds) || Problem(question, seconds) is not null)
            await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, Problem(question, seconds) ?? "Give the time of the frame, s.");
        else await context.Response.WriteAsJsonAsync(await ShownAsync(question, seconds, null, context.RequestAborted));
    }

    internal async Task SaveAsync(HttpContext context)
    {
        if (await Body.ReadAsync<GivenMarks>(context) is not { } given) return;
        if (desk.Find(given.Id ?? "") is not { } question)
        {
            await desk.RefuseAsync(context, given.Id ?? "");
            return;
        }

        if (Problem(question, given.TimeSeconds) is { } problem || (problem = Problem(given)) is not null)
        {
            await Guard.RefuseAsync(context, StatusCodes.Status400BadRequest, problem);
            return;
        }

        var points = given.Points!.Select(p => (Point: PointOf(p.Point)!.Value, p.X, p.Y)).ToArray();
        await AppendAsync(question, given, points);
        var (marked, back) = (points.Count(p => p.X is not null), points.Count(p => p.X is null));
        var said = string.Join(" ", new[] { marked > 0 ? $"Saved: {marked} point{(marked == 1 ? "" : "s")} marked." : null, back > 0 ? $"{back} taken back." : null }.OfType<string>());
        await context.Response.WriteAsJsonAsync(await ShownAsync(question, given.TimeSeconds, said, CancellationToken.None));
    }

    public void Dispose() => _guard.Dispose();

    private async Task AppendAsync(Question question, GivenMarks given, IReadOnlyList<(HandPoint Point, double? X, double? Y)> points)
    {
        var facts = FactsOf(question);
        var tool = ToolOf(question, facts, given.TimeSeconds);
        await _guard.WaitAsync();
        try
        {
            // Acts are kept a millisecond apart, which is what the table's times tell apart.
            var now = time.GetUtcNow();
            var at = now > _last.AddMilliseconds(1) ? now : _last.AddMilliseconds(1);
            HandMark[] marks =
            [
                .. points.Select(p => new HandMark(
                    facts.ClipKey, facts.ClipFile, Math.Round(tool.TimeSeconds, 4), facts.WidthPx, facts.HeightPx, p.Point, p.X * facts.WidthPx ?? double.NaN, p.Y * facts.HeightPx ?? double.NaN,
                    given.Began == "tool", judge, at, tool.At(p.Point).X, tool.At(p.Point).Y, season.Run.PipelineHash, season.Run.ModelHash)),
            ];
            await _store.AppendAsync(marks, CancellationToken.None);
            Own().AddRange(marks);
            _last = at;
        }
        finally
        {
            _guard.Release();
        }
    }

    private async Task<ShownMarks> ShownAsync(Question question, double seconds, string? said, CancellationToken cancellationToken)
    {
        var facts = FactsOf(question);
        var tool = ToolOf(question, facts, seconds);
        HandMark[] own;
        await _guard.WaitAsync(cancellationToken);
        try
        {
            own = [.. HandMark.Standing(Own().Where(m => m.ClipKey == facts.ClipKey && Math.Abs(m.TimeSeconds - tool.TimeSeconds) < 1e-3))];
        }
        finally
        {
            _guard.Release();
        }

        var hand = own.ToDictionary(m => m.Point, m => new PointPx(m.XPx, m.YPx));
        var facing = question.Spell.Spell.Facing;
        return new(
            tool.TimeSeconds,
            [.. Enum.GetValues<HandPoint>().Select(p => new ShownMark(p.ToTerm(), p.ToTerm().Replace('_', ' '), Share(tool.At(p), facts), Share(hand.GetValueOrDefault(p, PointPx.Missing), facts)))],
            Compared(HandAngles.Of(p => hand.GetValueOrDefault(p, PointPx.Missing), facing), HandAngles.Of(tool.At, facing)), said);
    }

    private static IReadOnlyList<string> Compared(HandAngles hand, HandAngles tool)
    {
        (string Name, Func<HandAngles, double> Of)[] angles = [("Thigh angle", a => a.Thigh), ("Shank angle", a => a.Shank), ("Knee angle", a => a.Knee), ("Foot pitch", a => a.FootPitch), ("Trunk lean", a => a.TrunkLean)];
        return [.. angles.Where(a => double.IsFinite(a.Of(hand))).Select(a => string.Create(CultureInfo.InvariantCulture, $"{a.Name} by hand {a.Of(hand):0.0} deg{(double.IsFinite(a.Of(tool)) ? $", by the tool {a.Of(tool):0.0}" : "")}."))];
    }

    private static string? Problem(Question question, double seconds) =>
        seconds >= question.Spell.Spell.StartSeconds - RoomSeconds && seconds <= question.Spell.Spell.EndSeconds + RoomSeconds ? null : "That frame is not of this spell.";

    private static string? Problem(GivenMarks given) => given switch
    {
        { Began: not ("tool" or "blind") } => "Say whether marking began from the tool's points ('tool') or without them ('blind').",
        { Points: null or { Count: 0 } } => "Mark at least one point.",
        _ when given.Points.Any(p => p is null || PointOf(p.Point) is null) => $"Points are {string.Join(", ", Enum.GetValues<HandPoint>().Select(p => p.ToTerm()))}.",
        _ when given.Points.DistinctBy(p => p.Point).Count() != given.Points.Count => "A point is marked twice.",
        _ when given.Points.Any(p => p.X is null != p.Y is null || p.X is < 0 or > 1 || p.Y is < 0 or > 1) => "A point lies outside the picture.",
        _ => null,
    };

    private static HandPoint? PointOf(string? term) => Enum.GetValues<HandPoint>().Where(p => p.ToTerm() == term).Select(p => (HandPoint?)p).FirstOrDefault();

    private List<HandMark> Own() => _own ??= [.. _store.All().Where(m => m.Judge == judge)];

    private ClipFacts FactsOf(Question question) => desk.Shelf.Facts(question.Spell.Provenance.ClipKey)!;

    private ToolPoints ToolOf(Question question, ClipFacts facts, double seconds) => new(desk.TraceOf(question.Spell), facts, season.Read, seconds);

    private static SharePoint? Share(PointPx point, ClipFacts facts) => point.IsMissing ? null : new(Math.Round(point.X / facts.WidthPx, 5), Math.Round(point.Y / facts.HeightPx, 5));
}
