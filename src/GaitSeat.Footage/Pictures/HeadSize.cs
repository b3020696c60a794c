using GaitSeat.Model;

namespace GaitSeat.Footage.Pictures;

/// <summary>How large a helmeted head is in the picture.</summary>
internal static class HeadSize
{
    /// <summary>Helmet to chin over hip to shoulder: about 0.14 of stature (head 0.13, helmet added) over 0.288 (0.818 - 0.530, Drillis and Contini 1966); from memory.</summary>
    private const double OverTrunk = 0.49;

    /// <summary>Over the height of a mounted rider's box: 0.14 of stature over some 0.8 of stature from helmet to sole, by the same fractions with the thigh at 45 deg.</summary>
    private const double OverRiderBox = 0.175;

    /// <summary>Over the height of the picture where nothing else is known: a rider of 60 % of the picture.</summary>
    private const double OverPicture = 0.105;

    /// <summary>Side of the head, px; the larger where body points and box disagree.</summary>
    public static double Px(MotionTrace trace, int index, BoxPx? rider, int pictureHeightPx)
    {
        var fromBox = rider is { } box ? box.Height * OverRiderBox : 0;
        var fromTrunk = index < 0 ? double.NaN
            : trace.Points[(int)BodyPoint.Shoulder][index].DistanceTo(trace.Points[(int)BodyPoint.Hip][index]) * OverTrunk;
        var side = double.IsNaN(fromTrunk) ? fromBox : Math.Max(fromBox, fromTrunk);
        return side > 0 ? side : pictureHeightPx * OverPicture;
    }
}
