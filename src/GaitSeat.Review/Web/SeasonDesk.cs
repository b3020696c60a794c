using System.Globalization;
using GaitSeat.Faults.Flags;
using GaitSeat.Review.Pictures;
using GaitSeat.Review.Questions;
using GaitSeat.Review.Seasons;
using Microsoft.AspNetCore.Http;

namespace GaitSeat.Review.Web;

/// <summary>Puts together the season screen.</summary>
internal sealed class SeasonDesk(SeasonBook book, QuestionBook questions, ShownLog log)
{
    private const string NoRider = "Rider not in the sheet";

    /// <summary>Weeks and heights that all riders share, as they are when first asked for.</summary>
    private readonly Lazy<IReadOnlyList<SeasonPicture.Frame>> _frames = new(() =>
    {
        RiderSeason[] riders = [.. book.All().Select(r => r.Rider)];
        var weeks = SeasonWeek.Span(riders.SelectMany(r => r.Days));
        return [.. SeasonBook.Measures.Select(m => SeasonPicture.FrameOf(weeks, riders.SelectMany(r => r.Of(m.Measure))))];
    });

    internal SeasonPage Page()
    {
        var riders = book.All();
        var weeks = _frames.Value[0].Weeks;
        return new(
            [.. SeasonBook.Measures.Select(m => $"{Labels.Of(m)}, {Labels.Unit(m)}")],
            weeks.Count == 0 ? null : $"{Day(weeks[0])} to {Day(weeks[^1].AddDays(6))}", weeks.Count, book.Hidden,
            [.. riders.Select(r => new SeasonRider(r.Number, r.Rider.Rider ?? NoRider, r.Rider.Clips, r.Rider.Spells, r.Rider.Strides))]);
    }

    internal Task RiderAsync(HttpContext context, int number, int widthPx)
    {
        if (book.Rider(number) is not { Clips: > 0 } rider) return Guard.RefuseAsync(context, StatusCodes.Status404NotFound, "There is no such rider, or none of their clips may be shown.");
        log.TellSeason(rider);
        return context.Response.WriteAsJsonAsync(Shown(rider, widthPx));
    }

    private ShownRider Shown(RiderSeason rider, int widthPx)
    {
        var changes = rider.Changes();
        var faults = rider.Faults();
        return new(
            [
                .. SeasonBook.Measures.Zip(_frames.Value, (m, frame) =>
                {
                    var points = rider.Of(m.Measure);
                    return new SeasonPanel($"{Labels.Of(m)}, {Labels.Unit(m)}", SeasonPicture.Draw(frame, points, changes, widthPx), SeasonPicture.Words(m, points));
                }),
                new("Faults flagged", FaultsPicture.Draw(_frames.Value[0].Weeks, faults, changes, widthPx), FaultsPicture.Words(faults)),
            ],
            [.. changes.Select(c => $"{Day(c.Day)}: {c.Text}")],
            [.. rider.LeftOut().Select(l => $"{l.Count} {l.Scope}{(l.Count == 1 ? "" : "s")}, {l.Reason.Replace('_', ' ')}: {l.Detail}")],
            [.. rider.Flags.Select(Finding)]);
    }

    private OtherFinding Finding(Flag flag) => new(
        Labels.Of(flag.Score.Fault), $"{(flag.Spell.SessionDate is { } day ? Day(day) : "no day")}, {Reasons.Of(flag)}", questions.Find(new Question(flag.Spell, Model.Drawn.Ranked, flag.Score, flag).Id)?.Id);

    private static string Day(DateOnly day) => day.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture);
}
