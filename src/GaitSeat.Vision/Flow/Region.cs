using GaitSeat.Model;

namespace GaitSeat.Vision.Flow;

/// <summary>A part of the picture: one box with others cut out of it, working px.</summary>
internal sealed record Region(BoxPx Inside, BoxPx[] CutOut)
{
    public bool Contains(double x, double y)
    {
        var p = new PointPx(x, y);
        if (!Inside.Contains(p)) return false;
        foreach (var box in CutOut)
        {
            if (box.Contains(p)) return false;
        }

        return true;
    }
}
