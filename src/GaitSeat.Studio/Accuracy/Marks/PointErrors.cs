using System.Globalization;
using System.Text;
using GaitSeat.Model;

namespace GaitSeat.Studio.Accuracy.Marks;

/// <summary>One point of one picture: from the mark to where the pipeline has it.</summary>
/// <param name="Picture">The picture.</param>
/// <param name="Point">The point.</param>
/// <param name="Mark">Where it was marked.</param>
/// <param name="Read">Where the pipeline has it, px of the marked picture.</param>
public sealed record PointError(MarkedPicture Picture, BodyPoint Point, Mark Mark, PointPx Read)
{
    public Offset Offset => Picture.Offset(Mark.Px, Read);
}

/// <summary>Compares what the pipeline saw with the marks.</summary>
public static class PointErrors
{
    /// <summary>Every marked point that was also seen. Readings that cannot be compared give none.</summary>
    public static IReadOnlyList<PointError> Of(IEnumerable<PictureReading> readings)
    {
        ArgumentNullException.ThrowIfNull(readings);
        return
        [
            .. from r in readings
               where r.LeftOutReason is null
               from point in MarkedPicture.Points
               let mark = r.Picture.Marks[point]
               where mark.Visibility != MarkVisibility.Hidden && !r.Points[(int)point].IsMissing
               select new PointError(r.Picture, point, mark, r.Points[(int)point]),
        ];
    }

    /// <summary>One line a point, with a header.</summary>
    public static string ToCsv(IEnumerable<PointError> errors)
    {
        ArgumentNullException.ThrowIfNull(errors);
        var text = new StringBuilder("picture,time_s,view,point,visibility,mark_x_px,mark_y_px,read_x_px,read_y_px,forward_pct,up_pct\n");
        foreach (var e in errors)
            text.Append(CultureInfo.InvariantCulture, $"{e.Picture.Picture},{e.Picture.TimeSeconds},{e.Picture.View.ToTerm()},{e.Point.ToTerm()},{e.Mark.Visibility.ToTerm()},")
                .Append(CultureInfo.InvariantCulture, $"{e.Mark.Px.X:0.0},{e.Mark.Px.Y:0.0},{e.Read.X:0.0},{e.Read.Y:0.0},{e.Offset.ForwardPct:0.00},{e.Offset.UpPct:0.00}\n");
        return text.ToString();
    }
}
